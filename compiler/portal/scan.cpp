#include "compiler/portal/scan.hpp"

#include "compiler/base/file_kinds.hpp"
#include "compiler/base/given_file.hpp"
#include "compiler/portal/faults.hpp"
#include "compiler/portal/limited_process.hpp"

#include <fmt/format.h>
#include <sys/mman.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <system_error>

namespace quoin::portal {

namespace {

namespace fs = std::filesystem;

constexpr double white = 0.8;                 // lightness
constexpr const char* no_fonts = "/dev/null"; // for a PDF of ours, which carries its own

std::optional<std::string> read_whole(const fs::path& file, std::string& bytes) {
    return fault_reading({file, most_pdf_bytes, "a PDF file", "a PDF file"}, bytes);
}

std::optional<std::string> not_a_pdf(std::string_view bytes) {
    if (has_pdf_header(bytes)) return std::nullopt;
    const bool zip = bytes.starts_with("PK\x03\x04");
    const bool old = bytes.starts_with("\xD0\xCF\x11\xE0");
    if (zip || old) return fill<messages::other_format>();
    return fill<messages::no_pdf>();
}

// The PDF as the tools see it: the bytes that were checked, not what the file may become meanwhile.
class SharedBytes {
public:
    explicit SharedBytes(std::string_view bytes) : number_(::memfd_create("pdf", MFD_CLOEXEC)) {
        if (number_ < 0) refuse();
        while (!bytes.empty()) {
            const ssize_t written = ::write(number_, bytes.data(), bytes.size());
            if (written < 0 && errno == EINTR) continue;
            if (written < 0) refuse();
            bytes.remove_prefix(static_cast<std::size_t>(written));
        }
    }
    ~SharedBytes() {
        if (number_ >= 0) ::close(number_);
    }
    SharedBytes(const SharedBytes&) = delete;
    SharedBytes& operator=(const SharedBytes&) = delete;

    // An absolute path, so that no file's name can be taken for an option.
    std::string path() const { return fmt::format("/proc/{}/fd/{}", ::getpid(), number_); }

private:
    [[noreturn]] void refuse() {
        const int error = errno;
        if (number_ >= 0) ::close(number_);
        throw std::system_error(error, std::generic_category(), "cannot hold the PDF in memory");
    }

    int number_;
};

struct Fault { // of a tool, as a message
    std::string text;
};

std::string last_page() {
    return std::to_string(most_pages_read);
}

std::string fault_of(const ToolResult& result, const Tool& tool) {
    switch (result.end) {
    case ToolEnd::missing:
        return fill<messages::no_reader>(tool.name);
    case ToolEnd::unlimited:
        return fill<messages::not_limited>(tool.name);
    case ToolEnd::too_long:
        return fill<messages::too_slow>(tool.name);
    case ToolEnd::too_large:
        return fill<messages::too_much>(tool.name);
    case ToolEnd::no_memory:
        return fill<messages::no_memory>(tool.name);
    case ToolEnd::broken:
        return fill<messages::broke_off>(tool.name, result.code);
    default:
        return fill<messages::damaged>(tool.name);
    }
}

// Poppler's tools, all on one PDF.
class Readers {
public:
    Readers(std::string_view pdf, const fs::path& font_configuration)
        : pdf_(pdf), environment_{"FONTCONFIG_FILE=" + fs::absolute(font_configuration).string()} {}

    std::string path() const { return pdf_.path(); }
    std::vector<ToolResult> run(std::vector<Tool> tools) const {
        for (Tool& tool : tools)
            tool.environment = environment_;
        return run_limited(tools);
    }

private:
    SharedBytes pdf_;
    std::vector<std::string> environment_;
};

std::vector<ToolResult> run_all(const Readers& readers, const std::vector<Tool>& tools) {
    std::vector<ToolResult> results = readers.run(tools);
    for (std::size_t i = 0; i < tools.size(); ++i)
        if (results[i].end != ToolEnd::done && results[i].end != ToolEnd::not_run)
            throw Fault{fault_of(results[i], tools[i])};
    return results;
}

Tool words_by_place(const std::string& path) {
    return {"pdftotext", {"-q", "-enc", "UTF-8", "-l", last_page(), "-bbox-layout", path, "-"}};
}

Tool words_by_file(const std::string& path) {
    return {"pdftotext", {"-q", "-enc", "UTF-8", "-l", last_page(), "-raw", "-bbox", path, "-"}};
}

Tool looks_of_words(const std::string& path) {
    return {"pdftohtml",
            {"-q", "-enc", "UTF-8", "-xml", "-i", "-zoom", "3", "-nodrm", "-l", last_page(),
             "-stdout", path}};
}

Tool pictures_within(const std::string& path) {
    return {"pdfimages", {"-list", "-l", last_page(), path}};
}

// Text that is drawn without colour or in white may be there for portals alone.
bool may_be_invisible(const Evidence& evidence) {
    const std::size_t all = letters_of(evidence.by_place);
    const bool not_drawn = evidence.looks.letters + few_letters / 2 < all;
    return all > 0 && (not_drawn || std::ranges::any_of(evidence.looks.texts, [](const auto& text) {
                           return text.lightness > white;
                       }));
}

// A page header stands in the margin, half an inch from the edge or nearer.
bool may_have_header(const Evidence& evidence) {
    constexpr double margin = 50; // pt
    return std::ranges::any_of(evidence.by_place.lines, [&](const ReadLine& line) {
        return line.box.top < margin ||
               line.box.bottom > evidence.by_place.pages[line.page].height - margin;
    });
}

// What costs more, or is seldom asked. If a tool is stopped, all else that is known still stands.
void look_closer(const Readers& readers, Evidence& evidence) {
    const std::string path = readers.path();
    const bool invisible = may_be_invisible(evidence);
    std::vector<Tool> tools;
    std::vector<void (*)(Evidence&, const std::string&)> takers;
    if (evidence.facts.tagged && !evidence.names.all_text_marked && may_have_header(evidence)) {
        tools.push_back({"pdfinfo", {"-enc", "UTF-8", "-struct-text", path}});
        takers.push_back([](Evidence& to, const std::string& output) {
            to.tagged_text = structure_text(output);
        });
    }
    if (invisible || letters_of(evidence.by_place) < few_letters) {
        tools.push_back(pictures_within(path));
        takers.push_back(
            [](Evidence& to, const std::string& output) { to.images = count_images(output); });
    }
    if (invisible) {
        tools.push_back({"pdftoppm", {"-q", "-gray", "-scale-to", "1000", "-l", "4", path}});
        takers.push_back(
            [](Evidence& to, const std::string& output) { to.pictures = read_pictures(output); });
    }
    const std::vector<ToolResult> results = readers.run(tools);
    for (std::size_t i = 0; i < results.size(); ++i)
        if (results[i].end == ToolEnd::done) takers[i](evidence, results[i].output);
}

void refuse_locked_and_damaged(const ToolResult& info, const ToolResult& text) {
    constexpr int copying_forbidden = 3; // poppler's code; Debian's reads on
    if (info.messages.find("Incorrect password") != std::string::npos)
        throw Fault{fill<messages::needs_password>()};
    if (info.code != 0) throw Fault{fault_of({}, {"pdfinfo", {}})};
    if (text.code != 0 && text.code != copying_forbidden)
        throw Fault{fault_of({}, {"pdftotext", {}})};
}

// The slow ones first: two run at a time.
Evidence gather(std::string_view bytes, const Readers& readers) {
    const std::string path = readers.path();
    Evidence evidence;
    evidence.names = read_names(bytes);
    std::vector<Tool> tools = {{"pdfinfo", {"-enc", "UTF-8", path}},
                               words_by_place(path),
                               words_by_file(path),
                               looks_of_words(path),
                               {"pdffonts", {"-l", last_page(), path}}};
    const std::vector<ToolResult> results = run_all(readers, tools);
    refuse_locked_and_damaged(results[0], results[1]);
    evidence.facts = read_facts(results[0].output);
    evidence.by_place = read_boxes(results[1].output);
    evidence.by_file = read_boxes(results[2].output);
    evidence.looks = read_looks(results[3].output);
    evidence.styles = read_styles(results[3].output);
    evidence.fonts = read_fonts(results[4].output);
    look_closer(readers, evidence);
    return evidence;
}

// A number of a PGM header, with the blank after it.
std::size_t take_number(std::string_view& pgm) {
    std::size_t number = 0;
    const auto read = std::from_chars(pgm.data(), pgm.data() + pgm.size(), number);
    pgm.remove_prefix(static_cast<std::size_t>(read.ptr - pgm.data()));
    if (!pgm.empty()) pgm.remove_prefix(1);
    return read.ec == std::errc() ? number : 0;
}

}

std::vector<PagePicture> read_pictures(std::string_view pgm) {
    constexpr std::size_t most = 4096;
    std::vector<PagePicture> pictures;
    while (pgm.starts_with("P5\n")) {
        pgm.remove_prefix(3);
        PagePicture picture;
        picture.width = take_number(pgm);
        picture.height = take_number(pgm);
        take_number(pgm); // the greatest grey, 255
        const std::size_t size = picture.width * picture.height;
        if (picture.width > most || picture.height > most || size == 0 || size > pgm.size()) break;
        picture.greys = pgm.substr(0, size);
        pgm.remove_prefix(size);
        pictures.push_back(std::move(picture));
    }
    return pictures;
}

std::variant<Scan, std::string> scan_pdf(const fs::path& file, const fs::path& font_configuration,
                                         const PageLanguages& languages) {
    std::string bytes;
    if (auto fault = read_whole(file, bytes)) return *fault;
    if (auto fault = not_a_pdf(bytes)) return *fault;
    try {
        Scan scan;
        scan.evidence = gather(bytes, Readers(bytes, font_configuration));
        scan.found = find_all(scan.evidence.by_place, languages, scan.evidence.styles);
        scan.faults = find_faults(scan.evidence, scan.found);
        return scan;
    } catch (const Fault& fault) {
        return fault.text;
    }
}

std::variant<StyledReading, std::string> read_styled_file(const fs::path& file,
                                                          const fs::path& font_configuration) {
    std::string bytes;
    if (auto fault = read_whole(file, bytes)) return *fault;
    return read_styled_pdf(bytes, font_configuration);
}

std::variant<StyledReading, std::string> read_styled_pdf(std::string_view pdf,
                                                         const fs::path& font_configuration) {
    if (auto fault = not_a_pdf(pdf)) return *fault;
    try {
        const Readers readers(pdf, font_configuration);
        const std::string path = readers.path();
        const std::vector<Tool> tools = {{"pdfinfo", {"-enc", "UTF-8", path}},
                                         words_by_place(path),
                                         looks_of_words(path),
                                         pictures_within(path)};
        const std::vector<ToolResult> results = run_all(readers, tools);
        refuse_locked_and_damaged(results[0], results[1]);
        return StyledReading{read_boxes(results[1].output), read_styles(results[2].output),
                             count_images(results[3].output), read_facts(results[0].output).pages};
    } catch (const Fault& fault) {
        return fault.text;
    }
}

std::variant<Readings, std::string> read_pdf(std::string_view pdf) {
    try {
        const Readers readers(pdf, no_fonts);
        const std::string path = readers.path();
        const std::vector<Tool> tools = {words_by_place(path), words_by_file(path)};
        const std::vector<ToolResult> results = run_all(readers, tools);
        if (results[0].code != 0) return fault_of({}, tools[0]);
        return Readings{read_boxes(results[0].output), read_boxes(results[1].output)};
    } catch (const Fault& fault) {
        return fault.text;
    }
}

}

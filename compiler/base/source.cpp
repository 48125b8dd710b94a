// Reading source files: bounded, checked as UTF-8, line ends made LF, brought to NFC.
#include "compiler/base/source.hpp"

#include "compiler/base/descriptor.hpp"
#include "compiler/base/encoding.hpp"
#include "compiler/base/file_kinds.hpp"
#include "compiler/base/messages.hpp"
#include "compiler/base/printable.hpp"
#include "compiler/base/strange_signs.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/base/whole_file_place.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h> // read

#include <algorithm>
#include <array>
#include <cerrno>
#include <limits>
#include <system_error>
#include <utility>

namespace quoin {

static_assert(3 * Sources::most_bytes < std::numeric_limits<std::uint32_t>::max(),
              "places count bytes in 32 bits, and NFC makes a text at most three times as long");

namespace {

struct ReadBytes { // the bytes, or why there are none
    std::string bytes;
    std::string fault;
};

std::string open_fault(int error) {
    switch (error) {
    case ENOENT:
        return fill<messages::no_file>();
    case ENOTDIR:
        return fill<messages::no_file_in_file>();
    case EACCES:
        return fill<messages::may_not_be_read>();
    default:
        return fill<messages::unreadable>(std::generic_category().message(error));
    }
}

// Reads one byte more than the limit at most, so that pipes and devices without an end are bounded
// as well.
ReadBytes read_bounded(int descriptor, TextOf text) {
    ReadBytes reading;
    std::array<char, 65536> buffer;
    while (reading.bytes.size() <= Sources::most_bytes) {
        const ssize_t count = ::read(descriptor, buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) return {{}, open_fault(errno)};
        if (count == 0) break;
        reading.bytes.append(buffer.data(), static_cast<std::size_t>(count));
    }
    if (text == TextOf::elsewhere && reading.bytes.starts_with("%PDF-"))
        return {{}, fill<messages::is_pdf_from_elsewhere>()};
    const bool read_as_page = text == TextOf::elsewhere && is_web_page(reading.bytes);
    if (std::string other = other_kind(reading.bytes); !other.empty() && !read_as_page)
        return {{}, other};
    if (reading.bytes.size() <= Sources::most_bytes) return reading;
    return {{},
            text == TextOf::elsewhere ? fill<messages::too_large_from_elsewhere>()
                                      : fill<messages::too_large>()};
}

// A pipe that nobody writes to would be waited for without end, and what a file names is not to be.
ReadBytes read_file(const std::filesystem::path& path, TextOf text, NamedBy named_by) {
    const int waits = named_by == NamedBy::user ? 0 : O_NONBLOCK;
    const Descriptor descriptor(open_calmly(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOCTTY | waits));
    if (descriptor.number() < 0) return {{}, open_fault(errno)};
    struct stat status {};
    if (::fstat(descriptor.number(), &status) != 0) return {{}, open_fault(errno)};
    if (S_ISDIR(status.st_mode)) return {{}, fill<messages::folder>()};
    if (named_by != NamedBy::user && !S_ISREG(status.st_mode))
        return {{}, fill<messages::no_regular_file>()};
    return read_bounded(descriptor.number(), text);
}

std::vector<std::size_t> starts_of_lines(std::string_view text) {
    std::vector<std::size_t> starts{0};
    for (std::size_t at = 0; at + 1 < text.size(); ++at)
        if (text[at] == '\n') starts.push_back(at + 1);
    return starts;
}

constexpr std::size_t most_told = 20; // in one file

std::string invisible_text(const InvisibleSigns& signs) {
    const auto code = static_cast<std::uint32_t>(signs.first);
    const std::string before = signs.before.empty() ? "the line's end" : in_quotes(signs.before);
    if (signs.separates) return fill<messages::separating_sign>(code, before);
    if (signs.count > 1) return fill<messages::invisible_signs>(code, signs.count - 1, before);
    return fill<messages::invisible_sign>(code, before);
}

// Every line in its plain signs; what was invisible is told.
std::string plain_lines(std::string_view text, std::uint32_t file, TextOf of,
                        Diagnostics& diagnostics) {
    if (all_ascii(text)) return std::string(text);
    std::string plain;
    std::size_t told = 0;
    for (std::uint32_t line = 1;; ++line) {
        const std::string_view own = text.substr(0, text.find('\n'));
        const KeptSigns kept = kept_signs(own);
        for (const InvisibleSigns& signs : invisible_signs(own, kept)) {
            if (of == TextOf::elsewhere) break;
            const Place place{file, line, static_cast<std::uint32_t>(signs.offset + 1),
                              signs.separates ? static_cast<std::uint32_t>(signs.count) : 0U};
            if (++told <= most_told)
                diagnostics.warning(place, invisible_text(signs),
                                    {{place, signs.separates ? " " : ""}});
        }
        plain += plain_signs(own, kept);
        if (own.size() == text.size()) break;
        plain += '\n';
        text.remove_prefix(own.size() + 1);
    }
    if (told > most_told)
        diagnostics.warning(whole_file(file), fill<messages::more_invisible>(told - most_told));
    return plain;
}

// Takes the bytes of a file that holds nothing but its name yet.
bool take(SourceFile& file, std::uint32_t index, std::string bytes, TextOf text,
          Diagnostics& diagnostics) {
    if (bytes.size() > Sources::most_bytes) {
        diagnostics.error({.file = index}, fill<messages::too_large>());
        return false;
    }
    file.bytes = std::move(bytes);
    Decoded decoded = decode(file.bytes);
    file.text = std::move(decoded.text);
    if (decoded.faults.empty()) {
        std::string normal = plain_lines(file.text, index, text, diagnostics);
        if (normal.size() > Sources::most_bytes)
            decoded.faults.push_back({{}, fill<messages::too_large>()});
        else
            file.text = std::move(normal);
    }
    file.line_starts = starts_of_lines(file.text);
    for (EncodingFault& fault : decoded.faults) {
        fault.place.file = index;
        diagnostics.error(fault.place, std::move(fault.text));
    }
    return decoded.faults.empty();
}

}

std::string_view SourceFile::line(std::uint32_t number) const {
    if (number == 0 || number > line_starts.size()) return {};
    const std::size_t begin = line_starts[number - 1];
    std::size_t end = number < line_starts.size() ? line_starts[number] : text.size();
    if (end > begin && text[end - 1] == '\n') --end;
    return std::string_view(text).substr(begin, end - begin);
}

std::optional<std::string> Sources::held(const std::filesystem::path& path) const {
    if (const auto found = held_.find(path); found != held_.end()) return found->second;
    return keeper_ ? keeper_(path) : std::nullopt;
}

std::optional<std::uint32_t> Sources::read(const std::filesystem::path& path,
                                           Diagnostics& diagnostics, TextOf text,
                                           NamedBy named_by) {
    std::optional<std::string> kept = held(path);
    const std::string name = path.string() + (kept ? aside_ : "");
    ReadBytes reading = kept ? ReadBytes{*std::move(kept), {}} : read_file(path, text, named_by);
    if (reading.fault.empty()) {
        const auto index = add(name, std::move(reading.bytes), diagnostics, text);
        files_.back().path = path;
        return index;
    }
    refuse(name, std::move(reading.fault), diagnostics);
    files_.back().path = path;
    return std::nullopt;
}

void Sources::hold(const std::filesystem::path& path, std::string bytes) {
    held_.insert_or_assign(path, std::move(bytes));
}

void Sources::read_by(Keeper keeper, std::string aside) {
    keeper_ = std::move(keeper);
    aside_ = std::move(aside);
}

bool Sources::holds(const std::filesystem::path& path) const {
    return held(path).has_value();
}

std::optional<std::uint32_t> Sources::read_standard_input(Diagnostics& diagnostics, TextOf text) {
    const std::string name(standard_input);
    ReadBytes reading = read_bounded(STDIN_FILENO, text);
    if (reading.fault.empty()) return add(name, std::move(reading.bytes), diagnostics, text);
    refuse(name, std::move(reading.fault), diagnostics);
    return std::nullopt;
}

std::optional<std::uint32_t> Sources::read_input(const std::string& named, Diagnostics& diagnostics,
                                                 TextOf text) {
    return named == "-" ? read_standard_input(diagnostics, text)
                        : read(named, diagnostics, text, NamedBy::user);
}

// A file that cannot be read stays in the list by its name, so that its diagnostics can show it.
void Sources::refuse(std::string name, std::string fault, Diagnostics& diagnostics) {
    const auto index = static_cast<std::uint32_t>(files_.size());
    files_.emplace_back().name = printable_name(name);
    diagnostics.error({.file = index}, std::move(fault));
}

std::optional<std::uint32_t> Sources::add(std::string name, std::string bytes,
                                          Diagnostics& diagnostics, TextOf text) {
    const auto index = static_cast<std::uint32_t>(files_.size());
    SourceFile& file = files_.emplace_back();
    file.name = printable_name(name);
    if (!take(file, index, std::move(bytes), text, diagnostics)) return std::nullopt;
    return index;
}

std::uint32_t Sources::display_column(const Place& place) const {
    if (place.line == 0 || place.column == 0) return 0;
    std::string_view before = file(place.file).line(place.line).substr(0, place.column - 1);
    const bool goes_on = counted_.file == place.file && counted_.line == place.line &&
                         counted_.bytes <= before.size();
    std::uint32_t columns = goes_on ? counted_.columns : 0;
    const std::size_t size = before.size();
    if (goes_on) before.remove_prefix(counted_.bytes);
    while (!before.empty()) {
        const char32_t code = take_character(before).code;
        columns +=
            code == U'\t' ? 8 - columns % 8 : static_cast<std::uint32_t>(terminal_columns(code));
    }
    counted_ = {place.file, place.line, columns, size};
    return columns + 1;
}

}

#include "compiler/commands/posting/posting_source.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/data_places.hpp"
#include "compiler/base/file_kinds.hpp"
#include "compiler/base/whole_file_place.hpp"
#include "compiler/commands/installation.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/commands/posting/posting_pdf.hpp"
#include "compiler/portal/scan.hpp"

#include <algorithm>
#include <array>
#include <exception>
#include <fstream>

namespace quoin::commands {

namespace {

constexpr std::size_t fewest_words = 12; // of a posting

bool is_pdf_file(const std::string& named) {
    std::array<char, 5> start{};
    std::ifstream file(named, std::ios::binary);
    return named != "-" && file.read(start.data(), start.size()) &&
           begins_as_pdf({start.data(), start.size()});
}

// The text of a PDF as a portal's reader has it, or why there is none.
std::string text_of_pdf(const std::string& named, std::string& fault) {
    try {
        const auto read = portal::read_styled_file(named, font_configuration(data_folder()));
        if (const auto* reading = std::get_if<portal::StyledReading>(&read)) {
            std::string text = text_with_headings(*reading);
            if (std::ranges::any_of(text, is_letter_or_figure)) return text;
            fault = fill<messages::posting_of_images>();
        } else {
            fault = std::get<std::string>(read);
        }
    } catch (const std::exception& caught) { // of the system: no process, no memory
        fault = fill<messages::not_scanned>(caught.what());
    }
    return {};
}

std::optional<std::uint32_t> source_of(const std::string& named, Sources& sources,
                                       Diagnostics& diagnostics) {
    if (!is_pdf_file(named)) return sources.read_input(named, diagnostics, TextOf::elsewhere);
    std::string fault;
    const auto file = sources.add(named, text_of_pdf(named, fault), diagnostics);
    if (!fault.empty() && file) {
        diagnostics.error(whole_file(*file), fault);
        return std::nullopt;
    }
    return file;
}

// Labels of the markup open most lines of a résumé's source.
bool is_resume(std::string_view text) {
    int labels = 0;
    for (const std::string_view label :
         {"name:", "section:", "email:", "employer:", "school:", "dates:"})
        labels += text.starts_with(label) || text.find("\n" + std::string(label)) != text.npos;
    return labels >= 3;
}

}

std::optional<postings::Posting> read_posting_at(const std::string& named, Sources& sources,
                                                 Diagnostics& diagnostics) {
    const auto file = source_of(named, sources, diagnostics);
    if (!file) return std::nullopt;
    const std::string& text = sources.file(*file).text;
    const auto refuse = [&](std::string fault) {
        diagnostics.error(whole_file(*file), std::move(fault));
        return std::nullopt;
    };
    if (is_resume(text)) return refuse(fill<messages::posting_is_resume>());
    const english::WordList words(word_list_in(data_folder()));
    const auto lines =
        postings::is_html(text) ? postings::html_lines(text) : postings::text_lines(text);
    auto posting = postings::read_posting(lines, *file, words);
    if (posting.words == 0) return refuse(fill<messages::posting_empty>());
    if (posting.words < fewest_words)
        return refuse(
            fill<messages::posting_too_short>(advice::counted(posting.words, "word", "words")));
    if (!posting.english) return refuse(fill<messages::posting_not_english>());
    if (posting.terms.empty()) return refuse(fill<messages::posting_asks_nothing>());
    return posting;
}

bool holds_resume(const std::string& named) {
    constexpr std::size_t looked_at = 65536;
    if (named == "-") return false;
    std::ifstream file(named, std::ios::binary);
    std::string start(looked_at, '\0');
    file.read(start.data(), static_cast<std::streamsize>(start.size()));
    start.resize(static_cast<std::size_t>(file.gcount()));
    return is_resume(start);
}

bool has_name_of_posting(std::string_view named) {
    constexpr std::string_view endings[] = {".txt", ".html", ".htm", ".pdf"};
    return std::ranges::any_of(endings,
                               [&](std::string_view ending) { return named.ends_with(ending); });
}

}

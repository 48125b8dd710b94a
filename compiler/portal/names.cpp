// The name at the head of a résumé.
#include "compiler/portal/found.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/letters.hpp"

#include <algorithm>
#include <array>

namespace quoin::portal {

namespace {

constexpr std::size_t lines_of_heading = 8;
constexpr double part_of_page = 0.35;

constexpr std::array<std::string_view, 7> not_names = {
    "curriculum vitae", "résumé", "resume", "resumé", "cv", "page", "cover letter"};

// What follows a name on its line: `Ottoline Brandt | Port Ellery`, `Ottoline Brandt (she/her)`.
std::string name_part(const ReadLine& line) {
    std::string part;
    for (const ReadWord& word : line.words) {
        const std::string_view text = word.text;
        const LetterCount count = count_letters(text);
        const bool parts = count.letters + count.digits == 0 || text.starts_with('(');
        if (parts && !part.empty()) break;
        if (parts) continue;
        const bool last = text.ends_with(',') || text.ends_with('|') || text.ends_with(';');
        part.append(part.empty() ? "" : " ").append(last ? text.substr(0, text.size() - 1) : text);
        if (last) break;
    }
    return part;
}

bool is_name_word(std::string_view word) {
    static constexpr std::array<std::string_view, 12> particles = {
        "de", "da", "di", "del", "der", "den", "van", "von", "la", "le", "bin", "y"};
    const LetterCount count = count_letters(word);
    if (count.digits > 0 || word.find_first_of("@/:") != std::string_view::npos) return false;
    const char32_t first = first_character(word).code;
    // scripts without capitals have none to look for
    return count.letters > 0 && (is_capital(first) || first >= 0x370 || is_one_of(word, particles));
}

bool looks_like_name(std::string_view text) {
    constexpr std::size_t most_words = 5;
    const std::string lower = in_small_letters(text);
    if (text.empty() || is_one_of(lower, not_names) || is_usual_title(text)) return false;
    std::size_t words = 0;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        if (!is_name_word(text.substr(0, end))) return false;
        ++words;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return words >= 2 && words <= most_words;
}

}

std::string find_name(const Reading& reading) {
    if (reading.pages.empty()) return {};
    const double lowest = reading.pages.front().height * part_of_page;
    std::string name;
    double largest = 0;
    std::size_t seen = 0;
    for (const ReadLine& line : reading.lines) {
        if (line.page > 0 || ++seen > lines_of_heading) break;
        if (line.box.top > lowest) continue;
        const double height = line.words.front().box.height();
        // a little larger is still the same size: boxes differ with their letters
        if (height <= largest * 1.05) continue;
        if (std::string part = name_part(line); looks_like_name(part)) {
            name = std::move(part);
            largest = height;
        }
    }
    return name;
}

}

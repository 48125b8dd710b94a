#include "compiler/stages/syntax/line_words.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/vocabulary.hpp"

namespace quoin::syntax {

namespace {

constexpr std::string_view section_word = "section";

// `section("Research")`: Research; empty for all else.
std::string_view title_in_parentheses(std::string_view line) {
    const std::size_t open = line.find('(');
    if (open == line.npos || !line.ends_with(')')) return {};
    if (lower_case(line.substr(0, open)) != section_word) return {};
    return trimmed(line.substr(open + 1, line.size() - open - 2), " \"'");
}

// `1. Education`, `2) Skills`
std::string_view without_number(std::string_view line) {
    constexpr std::size_t most_figures = 2;
    const std::size_t end = line.find_first_not_of("0123456789");
    const bool numbered = end > 0 && end <= most_figures && end + 1 < line.size() &&
                          (line[end] == '.' || line[end] == ')') && line[end + 1] == ' ';
    return numbered ? line.substr(end + 2) : line;
}

}

std::string folded_label(std::string_view spelled) {
    std::string folded;
    bool space = false;
    for (const char c : spelled) {
        const bool is_space = c == ' ' || c == '\t' || c == '_';
        if (space && !is_space) folded += '-';
        if (!is_space) folded += small_letter(c);
        space = is_space;
    }
    return folded;
}

bool is_label_or_guess(std::string_view label) {
    return trade::find_word(label) || !trade::meant_by(label).empty() ||
           trade::begins_range(label) || trade::ends_range(label) || trade::means_bullets(label);
}

bool says_section(std::string_view line) {
    return !title_in_parentheses(line).empty() ||
           (line.size() > section_word.size() && line[section_word.size()] == ' ' &&
            lower_case(line.substr(0, section_word.size())) == section_word);
}

std::string_view bare_title(std::string_view line) {
    constexpr std::string_view around = " \t#*=_:-[]<>|~\"";
    if (const std::string_view title = title_in_parentheses(trimmed(line)); !title.empty())
        return title;
    line = trimmed(without_number(trimmed(line)), around);
    return says_section(line) ? trimmed(line.substr(section_word.size()), around) : line;
}

}

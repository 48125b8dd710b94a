#include "compiler/stages/syntax/line_words.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/trade/guessed_labels.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>

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
           (line.size() > section_word.size() &&
            std::string_view{" ;."}.find(line[section_word.size()]) != std::string_view::npos &&
            lower_case(line.substr(0, section_word.size())) == section_word);
}

std::string_view foreign_title(std::string_view line) {
    const std::string_view title = trimmed(line, " \t#*");
    const bool titles = line.starts_with("##") && !title.empty() &&
                        is_capital_letter(title.front()) && title.back() != '.';
    return titles ? title : std::string_view{};
}

std::string_view unenclosed(std::string_view value) {
    constexpr std::array<std::string_view, 3> pairs{"\"\"", "''", "[]"};
    const bool enclosed = value.size() > 2 && std::ranges::any_of(pairs, [&](auto pair) {
                              return value.front() == pair.front() && value.back() == pair.back() &&
                                     value.find_first_of(pair, 1) == value.size() - 1;
                          });
    return enclosed ? value.substr(1, value.size() - 2) : value;
}

std::string_view picture_of_bullet(std::string_view line) {
    constexpr std::array<std::string_view, 8> pictures{"\u2705", "\u2611", "\u2610", "\u2605",
                                                       "\u2606", "\u27A1", "\u2043", "\u2219"};
    const auto* const picture = std::ranges::find_if(
        pictures, [line](std::string_view sign) { return line.starts_with(sign); });
    return picture == pictures.end() ? std::string_view{} : *picture;
}

std::string_view label_amid_signs(std::string_view line) {
    constexpr std::size_t longest = 60;
    const std::size_t colon = line.find(':');
    if (colon == 0 || colon > longest || line.find_first_not_of(" \t", colon + 1) == line.npos)
        return {};
    std::string_view label = line.substr(0, colon);
    const auto is_sign = [](char c) { return !is_letter_or_figure(c) && c != ')'; };
    while (!label.empty() && is_sign(label.front()))
        label.remove_prefix(1);
    while (!label.empty() && is_sign(label.back()))
        label.remove_suffix(1);
    const bool amid_signs = !label.empty() && label.size() < colon;
    return amid_signs && is_label_or_guess(folded_label(label)) ? label : std::string_view{};
}

bool is_value_alone(std::string_view line) {
    if (line.empty() || !(is_letter_or_figure(line.front()) || line.front() == '(')) return false;
    const std::size_t colon = line.find(':');
    return (colon == line.npos || line.substr(colon).starts_with("://")) &&
           !trade::is_section_title(bare_title(line));
}

std::string_view bare_title(std::string_view line) {
    constexpr std::string_view around = " \t#*=_:;-[]<>|~\"";
    if (const std::string_view title = title_in_parentheses(trimmed(line)); !title.empty())
        return title;
    line = trimmed(without_number(trimmed(line)), around);
    return says_section(line) ? trimmed(line.substr(section_word.size()), around) : line;
}

}

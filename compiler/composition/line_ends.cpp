// Opportunities weighed: short words, signs inside words, what belongs together.
#include "compiler/composition/line_ends.hpp"

#include "compiler/paragraph/break_opportunities.hpp"

#include <algorithm>
#include <array>
#include <iterator>

namespace quoin {

namespace {

// A tenth of a penalty weighs as much as 100 × the square of a ragged line's shortfall, as a share
// of the measure: 40 is worth a line a fifth shorter.
constexpr double after_short_word = 40;
constexpr double within_title_field = 60;
constexpr double after_sign = 120; // a hyphen or a slash inside a word
constexpr double at_soft_hyphen = 150;
constexpr double within_contact_field = 1000;

// Words that lean on the next one (common practice).
constexpr std::array<std::string_view, 16> leaning = {"a",   "an",  "and", "as",  "at", "by",
                                                      "for", "in",  "of",  "on",  "or", "the",
                                                      "to",  "via", "vs",  "with"};
constexpr std::size_t longest_leaning = 4;

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

bool leans(std::string_view before) { // the text before a line's end, its spaces taken off
    std::string word;
    while (!before.empty() && before.back() != ' ' && word.size() <= longest_leaning) {
        word.insert(word.begin(), lower(before.back()));
        before.remove_suffix(1);
    }
    return std::ranges::find(leaning, std::string_view(word)) != leaning.end();
}

double penalty_after(std::string_view before, bool english) {
    if (before.back() != ' ') return after_sign;
    before.remove_suffix(before.size() - (before.find_last_not_of(' ') + 1));
    return english && leans(before) ? after_short_word : 0;
}

// A sign that parts two things stays with what it follows.
bool begins_with_separator(std::string_view rest) {
    constexpr std::array<std::string_view, 5> signs = {"·", "|", "–", "—", "•"};
    return std::ranges::any_of(signs, [&](std::string_view sign) {
        return rest.starts_with(sign) && rest.substr(sign.size()).starts_with(' ');
    });
}

double penalty_within(StyleName style) {
    if (style == StyleName::contact) return within_contact_field;
    return style == StyleName::title ? within_title_field : 0;
}

}

std::vector<LineEnd> line_ends(const LineEndText& text) {
    const auto opportunities = break_opportunities(text.text);
    std::vector<std::size_t> offsets;
    std::ranges::set_union(opportunities, text.soft_hyphens, std::back_inserter(offsets));
    std::vector<LineEnd> ends;
    auto soft = text.soft_hyphens.begin();
    auto literal = text.literal_bytes.begin(); // the first bound at or after the offset
    for (const std::size_t offset : offsets) {
        while (soft != text.soft_hyphens.end() && *soft < offset)
            ++soft;
        while (literal != text.literal_bytes.end() && *literal < offset)
            ++literal;
        const bool hyphen = soft != text.soft_hyphens.end() && *soft == offset;
        const bool in_literal = (literal - text.literal_bytes.begin()) % 2 == 1;
        if (begins_with_separator(text.text.substr(offset))) continue;
        LineEnd end{offset, at_soft_hyphen, hyphen};
        if (!hyphen) end.penalty = penalty_after(text.text.substr(0, offset), text.english);
        if (!in_literal) end.penalty += penalty_within(text.style);
        ends.push_back(end);
    }
    return ends;
}

}

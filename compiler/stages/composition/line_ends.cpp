// Opportunities weighed: short words, signs inside words, what belongs together.
#include "compiler/stages/composition/line_ends.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/break_opportunities.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>

namespace quoin::composition {

namespace {

// A tenth of a penalty weighs as much as 100 × the square of a ragged line's shortfall, as a share
// of the measure: 40 is worth a line a fifth shorter.
constexpr double after_short_word = 40;
constexpr double after_figure = 60; // from the word it counts
constexpr double within_name = 60;
// The first word of a sentence or clause, from the rest of it: `Service. Has`, `shrubs, 88%`.
constexpr double within_opening = 60, within_clause_opening = 30;
constexpr double within_item = 150;        // of a list that semicolons part
constexpr double within_comma_item = 60;   // of one that commas part
constexpr double within_title_field = 400; // a title has fields, and need not be even
constexpr double after_sign = 120;         // a hyphen or a slash inside a word
// Programs that put together what a line's end parted leave the hyphen out: `selfemployment`. Any
// column has room for a compound of so many bytes.
constexpr std::size_t longest_whole_compound = 24;
constexpr double at_soft_hyphen = 150;
constexpr double within_contact_field = 1000;
// Of a contact line of four items or more none stands alone on its second line; of three, one has
// to.
constexpr double before_last_item = 600;
constexpr double before_level = 400;          // of a skill: `Portuguese (conversational)`
constexpr std::size_t longest_kept_item = 20; // bytes, of a skill with its level
constexpr std::size_t longest_level = 30;

// Words that lean on the next one (common practice).
constexpr std::array<std::string_view, 24> leaning = {
    "a",  "an", "and", "as",  "at",   "by",   "for", "from", "in",   "into", "its", "no",
    "of", "on", "or",  "per", "than", "that", "the", "to",   "over", "via",  "vs",  "with"};
constexpr std::size_t longest_leaning = 4;

// The last word before a line's end; of one that is longer than any, such as a link, its end.
std::string_view last_piece(std::string_view before) {
    constexpr std::size_t longest = 200;
    const std::size_t looked_at = std::min(before.size(), longest);
    const std::string_view near = before.substr(before.size() - looked_at);
    return near.substr(near.find_last_of(' ') + 1); // npos + 1 is 0
}

bool leans(std::string_view before) { // the text before a line's end, its spaces taken off
    std::string word(last_piece(before));
    if (word.size() > longest_leaning) return false;
    std::ranges::transform(word, word.begin(), small_letter);
    return is_one_of(word, leaning);
}

utf8proc_category_t category_of_first(std::string_view text) {
    return utf8proc_category(static_cast<utf8proc_int32_t>(first_character(text).code));
}

bool begins_with_capital(std::string_view word) {
    return !word.empty() && category_of_first(word) == UTF8PROC_CATEGORY_LU;
}

// Brackets and quotation marks before it taken off.
std::string_view last_word(std::string_view before) {
    before = last_piece(before);
    constexpr std::array<std::string_view, 4> signs = {"(", "[", "“", "‘"};
    for (const std::string_view sign : signs)
        if (before.starts_with(sign)) before.remove_prefix(sign.size());
    return before;
}

// Capital after capital with nothing between but the space: `Ellery State`.
bool is_within_name(std::string_view before, std::string_view after) {
    constexpr std::string_view signs = ".,;:!?)";
    return begins_with_capital(last_word(before)) && signs.find(before.back()) == before.npos &&
           begins_with_capital(after);
}

// `212 quadrats`
bool is_after_figure(std::string_view before, std::string_view after) {
    return is_figure(before.back()) && is_figure(last_word(before).front()) &&
           category_of_first(after) == UTF8PROC_CATEGORY_LL;
}

std::string_view without_spaces_after(std::string_view text) {
    return text.substr(0, text.find_last_not_of(' ') + 1); // npos + 1 is 0
}

// What a line that ends on one word of a new sentence or clause costs; a word that is a whole
// clause may end one.
double opening_penalty(std::string_view before) {
    const auto penalty_after = [](std::string_view text) {
        if (text.ends_with(',')) return within_clause_opening;
        constexpr std::string_view signs = ".;:!?";
        return !text.empty() && signs.find(text.back()) != signs.npos ? within_opening : 0;
    };
    const std::string_view rest =
        without_spaces_after(before.substr(0, before.size() - last_piece(before).size()));
    return penalty_after(before) > 0 ? 0 : penalty_after(rest);
}

double word_penalty(std::string_view before, std::string_view after, bool english) {
    if (english && leans(before)) return after_short_word;
    if (is_within_name(before, after)) return within_name;
    return is_after_figure(before, after) ? after_figure : 0;
}

// `before` and `after` are the text before a line's end and after it.
double penalty_between(std::string_view before, std::string_view after, bool english) {
    if (before.back() != ' ') return after_sign;
    before = without_spaces_after(before);
    return before.empty() ? 0 : word_penalty(before, after, english) + opening_penalty(before);
}

bool is_list(const LineEndText& text) {
    return text.style == theme::StyleName::line && text.text.find(';') != std::string_view::npos;
}

// `GPA 3.62 · ` and `Dean’s List; ` end an item.
bool ends_item(std::string_view before) {
    before = without_spaces_after(before);
    return before.ends_with(';') || before.ends_with("·") || before.ends_with("|");
}

// `Tools: ` and `scissor lift, `
bool ends_comma_item(std::string_view before) {
    before = without_spaces_after(before);
    return before.ends_with(',') || before.ends_with(':');
}

// Bytes of a separator and the spaces after it at the end of `before`; 0 if it ends otherwise, or
// if nothing stands before the separator.
std::size_t separator_at_end(std::string_view before) {
    const std::size_t end = before.find_last_not_of(' ');
    if (end == std::string_view::npos) return 0;
    const std::string_view word = last_piece(before.substr(0, end + 1));
    const std::size_t begin = end + 1 - word.size();
    const bool parts = begin > 0 && is_separator(word) &&
                       before.find_last_not_of(' ', begin - 1) != std::string_view::npos;
    return parts ? before.size() - begin : 0;
}

// A sign that parts two things stays with what it follows.
bool begins_with_separator(std::string_view rest) {
    constexpr std::array<std::string_view, 5> signs = {"·", "|", "–", "—", "•"};
    return std::ranges::any_of(signs, [&](std::string_view sign) {
        return rest.starts_with(sign) && rest.substr(sign.size()).starts_with(' ');
    });
}

bool parts_compound(std::string_view before, std::string_view after) {
    if (!before.ends_with('-')) return false;
    const std::string_view near = after.substr(0, longest_whole_compound);
    const std::string_view begin = last_word(before), end = near.substr(0, near.find(' '));
    return begin.size() + end.size() <= longest_whole_compound;
}

bool is_kept(const LineEndText& text, std::size_t offset) {
    for (std::size_t i = 0; i + 1 < text.kept_bytes.size(); i += 2)
        if (text.kept_bytes[i] < offset && offset <= text.kept_bytes[i + 1]) return true;
    return false;
}

struct Level { // `Spanish (native)`: bytes of the text
    std::size_t item = 0, open = 0, end = 0;

    bool holds(std::size_t offset) const { return item < offset && offset < end; }
    bool is_kept() const { return end - item <= longest_kept_item; }
};

std::vector<Level> levels_in(const LineEndText& text) {
    std::vector<Level> levels;
    if (text.style != theme::StyleName::line) return levels;
    std::size_t from = 0;
    for (std::size_t space = text.text.find(" (", from); space != std::string_view::npos;
         space = text.text.find(" (", from)) {
        const std::size_t close = text.text.substr(space, longest_level).find(')');
        const std::size_t sign = text.text.substr(from, space - from).find_last_of(",;:");
        const std::size_t item = sign == std::string_view::npos ? from : from + sign + 2;
        from = space + (close == std::string_view::npos ? 2 : close);
        if (close != std::string_view::npos)
            levels.push_back({std::min(item, space), space + 1, from});
    }
    return levels;
}

double penalty_within(theme::StyleName style) {
    if (style == theme::StyleName::contact) return within_contact_field;
    return style == theme::StyleName::title ? within_title_field : 0;
}

}

bool is_separator(std::string_view word) {
    return word == "·" || word == "|" || word == "•";
}

namespace {

// What is asked of one offset after another, in order.
class Ends {
public:
    explicit Ends(const LineEndText& text)
        : text_(text), levels_(levels_in(text)), list_(is_list(text)),
          soft_(text.soft_hyphens.begin()), literal_(text.literal_bytes.begin()),
          level_(levels_.begin()) {}

    std::optional<LineEnd> at(std::size_t offset) {
        reach(offset);
        const bool hyphen = soft_ != text_.soft_hyphens.end() && *soft_ == offset;
        const bool in_literal = (literal_ - text_.literal_bytes.begin()) % 2 == 1;
        const bool in_level = level_ != levels_.end() && level_->holds(offset);
        const std::string_view before = text_.text.substr(0, offset);
        const std::string_view after = text_.text.substr(offset);
        if (begins_with_separator(after) || is_kept(text_, offset)) return std::nullopt;
        if (in_level && level_->is_kept()) return std::nullopt;
        if (parts_compound(before, after)) return std::nullopt;
        LineEnd end{offset, at_soft_hyphen, hyphen};
        if (!hyphen) end.penalty = penalty_between(before, after, text_.english);
        if (in_literal) end.left_out = separator_at_end(before);
        if (!in_literal) end.penalty += penalty_within(text_.style);
        if (in_level && level_->open <= offset) end.penalty += before_level;
        if (list_ && !ends_item(before)) end.penalty += within_item;
        if (text_.comma_list && !ends_comma_item(before)) end.penalty += within_comma_item;
        in_literal_ = in_literal;
        return end;
    }

    bool was_in_literal() const { return in_literal_; }

private:
    void reach(std::size_t offset) {
        while (soft_ != text_.soft_hyphens.end() && *soft_ < offset)
            ++soft_;
        while (literal_ != text_.literal_bytes.end() && *literal_ < offset)
            ++literal_;
        while (level_ != levels_.end() && level_->end <= offset)
            ++level_;
    }

    using Offsets = std::vector<std::size_t>;
    const LineEndText& text_;
    std::vector<Level> levels_;
    bool list_ = false, in_literal_ = false;
    Offsets::const_iterator soft_, literal_; // the first bound at or after the offset
    std::vector<Level>::const_iterator level_;
};

}

std::vector<LineEnd> line_ends(const LineEndText& text) {
    const auto opportunities = break_opportunities(text.text);
    std::vector<std::size_t> offsets;
    std::ranges::set_union(opportunities, text.soft_hyphens, std::back_inserter(offsets));
    std::vector<LineEnd> line_ends;
    Ends ends(text);
    std::vector<std::size_t> between_items;
    for (const std::size_t offset : offsets) {
        const auto end = ends.at(offset);
        if (!end) continue;
        if (ends.was_in_literal()) between_items.push_back(line_ends.size());
        line_ends.push_back(*end);
    }
    if (text.style == theme::StyleName::contact && between_items.size() > 2)
        line_ends[between_items.back()].penalty += before_last_item;
    return line_ends;
}

}

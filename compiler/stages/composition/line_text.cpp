// Patterns filled with the values of fields.
#include "compiler/stages/composition/line_text.hpp"

#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>
#include <map>
#include <string_view>
#include <utility>
#include <variant>

namespace quoin::composition {

namespace {

// Items of a list as it was typed: with semicolons, and groups of skills with commas where no item
// has one.
std::string_view item_separator(trade::FieldName name, const std::vector<model::Text>& items) {
    if (name != trade::FieldName::group) return "; ";
    const bool comma = std::ranges::any_of(
        items, [](const model::Text& item) { return item.plain().find(',') != std::string::npos; });
    return comma ? "; " : ", ";
}

// Names, places and titles stand whole; running text may be shortened.
TextPart part_of(trade::FieldName name) {
    return trade::has(name, trade::Trait::shortens) ? TextPart::words : TextPart::fixed;
}

TextPiece plain_piece(TextPiece::Kind kind, std::string text, Place place) {
    TextPiece piece;
    piece.kind = kind;
    piece.text = std::move(text);
    piece.place = place;
    return piece;
}

// Bytes of the separator sign or space at the front of `text`; 0 if there is none.
std::size_t separator_at_front(std::string_view text) {
    constexpr std::array<std::string_view, 13> separators = {
        " ", ",", ";", ":", "·", "|", "–", "—", "-", "•", "/", "\u00A0", "\u2002"};
    for (const std::string_view separator : separators)
        if (text.starts_with(separator)) return separator.size();
    return 0;
}

// Those from piece `first` on that come before anything else.
void drop_separators(std::vector<TextPiece>& pieces, std::ptrdiff_t first) {
    while (first < std::ssize(pieces) &&
           pieces[static_cast<std::size_t>(first)].kind == TextPiece::Kind::literal) {
        std::string& text = pieces[static_cast<std::size_t>(first)].text;
        std::size_t length = 0;
        while (const std::size_t more = separator_at_front(std::string_view(text).substr(length)))
            length += more;
        text.erase(0, length);
        if (!text.empty()) return;
        pieces.erase(pieces.begin() + first);
    }
}

void move_to(LineText& out, LineText&& more) {
    const auto first_link = static_cast<std::uint32_t>(out.links.size());
    for (TextPiece& piece : more.pieces) {
        if (piece.link) *piece.link += first_link;
        out.pieces.push_back(std::move(piece));
    }
    out.links.insert(out.links.end(), more.links.begin(), more.links.end());
}

// Separators that no field stands before any more: those that come first, after the words that
// the pattern itself begins with.
void drop_leading_separators(std::span<const theme::PatternPiece> pattern,
                             std::vector<TextPiece>& pieces) {
    const auto begin = std::ranges::find_if_not(pattern, [](const theme::PatternPiece& piece) {
        return piece.kind == theme::PatternPiece::Kind::literal ||
               piece.kind == theme::PatternPiece::Kind::word;
    });
    drop_separators(pieces, begin - pattern.begin());
}

bool is_of_dates(const theme::PatternPiece& piece) {
    constexpr std::array dates = {trade::FieldName::dates, trade::FieldName::graduation,
                                  trade::FieldName::expires};
    return piece.kind == theme::PatternPiece::Kind::field &&
           std::ranges::find(dates, piece.field) != dates.end();
}

bool is_of_place(const theme::PatternPiece& piece) {
    return piece.kind == theme::PatternPiece::Kind::field && piece.field == trade::FieldName::place;
}

// What stands before a date in its group holds together, and so does a place: a date never stands
// alone on a line, nor with the half of a place.
void keep_together(std::span<const theme::PatternPiece> group, std::vector<TextPiece>& pieces,
                   std::size_t first) {
    const bool dates = std::ranges::any_of(group, is_of_dates);
    const bool place = std::ranges::any_of(group, is_of_place);
    for (std::size_t i = first; i < pieces.size(); ++i) {
        const bool literal = pieces[i].kind == TextPiece::Kind::literal;
        pieces[i].keeps = pieces[i].own_word || (dates && literal) || (place && !literal);
    }
}

class Expander {
public:
    Expander(std::span<const model::Field> fields, const DatesAs& dates_as)
        : fields_(fields), dates_as_(dates_as), printed_(fields.size()) {
        for (std::size_t index = 0; index < fields.size(); ++index)
            if (has_value(fields[index])) by_name_[fields[index].name].push_back(index);
    }

    void add_lines(const theme::PatternLine& pattern, std::vector<ExpandedLine>& lines);
    void add_unprinted(std::vector<ExpandedLine>& lines);

private:
    using Indices = std::vector<std::size_t>;

    void add_line(const theme::PatternLine& pattern, std::vector<ExpandedLine>& lines,
                  std::optional<std::size_t> which = std::nullopt);
    // True if the value of a field was printed. `which` picks one value of a repeated field.
    bool add(std::span<const theme::PatternPiece> pieces, std::optional<std::size_t> which,
             LineText& out);
    bool add_group(const theme::PatternPiece& group, LineText& out);
    void add_own_word(const std::string& word, const model::Marks& marks, LineText& out);
    void add_literal(const std::string& words, const model::Marks& marks, std::size_t first,
                     LineText& out);
    std::span<const theme::PatternPiece>
    from_group(std::span<const theme::PatternPiece> pieces) const;
    bool add_field(const theme::PatternPiece& piece, std::optional<std::size_t> which,
                   LineText& out);
    std::span<const std::size_t> values_of(trade::FieldName name) const;
    void add_value(const theme::PatternPiece& piece, std::size_t index, LineText& out);

    std::span<const model::Field> fields_;
    const DatesAs& dates_as_;
    std::vector<bool> printed_;
    std::map<trade::FieldName, Indices> by_name_;
    std::optional<std::size_t> group_; // the one group of skills that the line is for
    Place pattern_place_;
    bool each_ = false; // a line for each value, one below the other
};

bool prints_groups(std::span<const theme::PatternPiece> pieces) {
    return std::ranges::any_of(pieces, [](const theme::PatternPiece& piece) {
        return (piece.is_name() && piece.field == trade::FieldName::group) ||
               prints_groups(piece.group);
    });
}

std::span<const std::size_t> Expander::values_of(trade::FieldName name) const {
    if (name == trade::FieldName::group && group_) return {&*group_, 1};
    const auto found = by_name_.find(name);
    if (found == by_name_.end()) return {};
    return found->second;
}

void Expander::add_value(const theme::PatternPiece& piece, std::size_t index, LineText& out) {
    LineText value;
    if (piece.kind == theme::PatternPiece::Kind::label)
        value.append(fields_[index].label);
    else
        value = value_text(fields_[index], dates_as_);
    for (TextPiece& text : value.pieces) {
        text.pattern_marks = piece.marks;
        if (piece.kind == theme::PatternPiece::Kind::field) text.field = piece.field;
    }
    move_to(out, std::move(value));
    printed_[index] = true;
}

bool Expander::add_field(const theme::PatternPiece& piece, std::optional<std::size_t> which,
                         LineText& out) {
    auto indices = values_of(piece.field);
    if (which) indices = indices.subspan(*which, 1);
    for (const std::size_t index : indices) {
        if (index != indices.front())
            out.pieces.push_back(plain_piece(TextPiece::Kind::literal, ", ", pattern_place_));
        add_value(piece, index, out);
    }
    return !indices.empty();
}

bool Expander::add_group(const theme::PatternPiece& group, LineText& out) {
    std::optional<std::size_t> times; // none: the group has no field of its own
    for (const theme::PatternPiece& piece : group.group)
        if (piece.is_name())
            times = std::min(times.value_or(SIZE_MAX), values_of(piece.field).size());
    if (times) {
        for (std::size_t which = 0; which < *times; ++which) {
            const std::size_t first = out.pieces.size();
            add(group.group, which, out);
            keep_together(group.group, out.pieces, first);
        }
        return *times > 0;
    }
    LineText inner;
    if (!add(group.group, std::nullopt, inner)) return false;
    drop_leading_separators(group.group, inner.pieces);
    move_to(out, std::move(inner));
    return true;
}

// Of `*{label}:* {group}` what is left for a group without a label.
std::span<const theme::PatternPiece>
Expander::from_group(std::span<const theme::PatternPiece> pieces) const {
    if (!group_ || !fields_[*group_].label.spans.empty()) return pieces;
    const auto group = std::ranges::find_if(pieces, [](const theme::PatternPiece& piece) {
        return piece.kind == theme::PatternPiece::Kind::field &&
               piece.field == trade::FieldName::group;
    });
    return group == pieces.end() ? pieces : std::span(group, pieces.end());
}

// One piece with the words right before it, from `first` on.
void Expander::add_literal(const std::string& words, const model::Marks& marks, std::size_t first,
                           LineText& out) {
    if (out.pieces.size() > first && out.pieces.back().kind == TextPiece::Kind::literal &&
        out.pieces.back().pattern_marks == marks) {
        out.pieces.back().text += words;
        return;
    }
    out.pieces.push_back(plain_piece(TextPiece::Kind::literal, words, pattern_place_));
    out.pieces.back().pattern_marks = marks;
}

// A piece of its own, so that a line may end before it.
void Expander::add_own_word(const std::string& word, const model::Marks& marks, LineText& out) {
    out.pieces.push_back(plain_piece(TextPiece::Kind::literal, word, pattern_place_));
    out.pieces.back().pattern_marks = marks;
    out.pieces.back().own_word = true;
}

bool Expander::add(std::span<const theme::PatternPiece> pieces, std::optional<std::size_t> which,
                   LineText& out) {
    bool any = false;
    pieces = from_group(pieces);
    const std::size_t first = out.pieces.size();
    for (const theme::PatternPiece& piece : pieces) {
        switch (piece.kind) {
        case theme::PatternPiece::Kind::literal:
            add_literal(piece.literal, piece.marks, first, out);
            break;
        case theme::PatternPiece::Kind::word:
            add_own_word(dates_as_.words.of_pattern(piece.literal), piece.marks, out);
            break;
        case theme::PatternPiece::Kind::page:
            out.pieces.push_back(plain_piece(TextPiece::Kind::page, "0123456789", pattern_place_));
            out.pieces.back().pattern_marks = piece.marks;
            break;
        case theme::PatternPiece::Kind::icon:
            out.pieces.push_back(plain_piece(TextPiece::Kind::icon, "\u00A0", pattern_place_));
            out.pieces.back().icon = piece.literal;
            out.pieces.back().icon_slot = each_;
            break;
        case theme::PatternPiece::Kind::fill:
            out.pieces.push_back(plain_piece(TextPiece::Kind::fill, " ", pattern_place_));
            break;
        case theme::PatternPiece::Kind::field:
        case theme::PatternPiece::Kind::label:
            any = add_field(piece, which, out) || any;
            break;
        case theme::PatternPiece::Kind::group:
            any = add_group(piece, out) || any;
            break;
        }
    }
    return any;
}

void drop_trailing_spaces(std::vector<TextPiece>& pieces) {
    while (!pieces.empty() && pieces.back().kind == TextPiece::Kind::literal) {
        std::string& text = pieces.back().text;
        text.erase(text.find_last_not_of(' ') + 1);
        if (!text.empty()) return;
        pieces.pop_back();
    }
}

// No space or separator is left beside a fill. What goes to the right edge goes there whole, even
// where nothing stands before it.
void set_sides_of_fill(std::vector<TextPiece>& pieces) {
    const auto fill = std::ranges::find(pieces, TextPiece::Kind::fill, &TextPiece::kind);
    if (fill == pieces.end()) return;
    TextPiece white = std::move(*fill);
    std::vector<TextPiece> right(std::make_move_iterator(fill + 1),
                                 std::make_move_iterator(pieces.end()));
    pieces.erase(fill, pieces.end());
    drop_trailing_spaces(pieces);
    drop_separators(right, 0);
    drop_trailing_spaces(right);
    if (!right.empty()) pieces.push_back(std::move(white));
    for (TextPiece& piece : right) {
        piece.keeps = true;
        pieces.push_back(std::move(piece));
    }
}

void Expander::add_line(const theme::PatternLine& pattern, std::vector<ExpandedLine>& lines,
                        std::optional<std::size_t> which) {
    ExpandedLine line{pattern.style, {}};
    if (!add(pattern.pieces, which, line.text)) return;
    set_sides_of_fill(line.text.pieces);
    drop_leading_separators(pattern.pieces, line.text.pieces);
    drop_trailing_spaces(line.text.pieces);
    lines.push_back(std::move(line));
}

void Expander::add_lines(const theme::PatternLine& pattern, std::vector<ExpandedLine>& lines) {
    pattern_place_ = pattern.place;
    each_ = pattern.each;
    if (pattern.each) {
        const auto field = std::ranges::find_if(pattern.pieces, &theme::PatternPiece::is_name);
        for (std::size_t which = 0; which < values_of(field->field).size(); ++which)
            add_line(pattern, lines, which);
        return;
    }
    if (!prints_groups(pattern.pieces)) return add_line(pattern, lines);
    for (const std::size_t index : values_of(trade::FieldName::group)) {
        group_ = index;
        add_line(pattern, lines);
    }
    group_.reset();
}

void Expander::add_unprinted(std::vector<ExpandedLine>& lines) {
    for (std::size_t index = 0; index < fields_.size(); ++index)
        if (!printed_[index] && has_value(fields_[index]))
            lines.push_back({theme::StyleName::line, value_text(fields_[index], dates_as_)});
}

}

void LineText::append(const model::Text& text, TextPart part) {
    const auto first_link = static_cast<std::uint32_t>(links.size());
    for (const model::Span& span : text.spans) {
        TextPiece piece;
        piece.text = span.text;
        piece.part = part;
        piece.marks = span.marks;
        if (span.link) piece.link = *span.link + first_link;
        piece.place = span.place;
        pieces.push_back(std::move(piece));
    }
    links.insert(links.end(), text.links.begin(), text.links.end());
}

bool has_value(const model::Field& field) {
    if (const auto* text = std::get_if<model::Text>(&field.value)) return !text->empty();
    if (const auto* items = std::get_if<std::vector<model::Text>>(&field.value))
        return !items->empty() || !field.label.empty();
    return true;
}

LineText value_text(const model::Field& field, const DatesAs& dates_as) {
    LineText out;
    if (const auto* text = std::get_if<model::Text>(&field.value)) {
        out.append(*text, part_of(field.name));
    } else if (const auto* items = std::get_if<std::vector<model::Text>>(&field.value)) {
        const std::string_view separator = item_separator(field.name, *items);
        for (const model::Text& item : *items) {
            if (&item != &items->front()) {
                out.pieces.push_back(
                    plain_piece(TextPiece::Kind::value, std::string(separator), field.place));
                out.pieces.back().part = TextPart::separator;
            }
            out.append(item, TextPart::item);
        }
    } else {
        const auto& dates = std::get<model::DateRange>(field.value);
        out.pieces.push_back(plain_piece(TextPiece::Kind::value,
                                         print(dates, dates_as.form, dates_as.words.dates),
                                         field.place));
    }
    return out;
}

std::vector<ExpandedLine> expand(std::span<const theme::PatternLine* const> patterns,
                                 std::span<const model::Field> fields, const DatesAs& dates_as) {
    Expander expander(fields, dates_as);
    std::vector<ExpandedLine> lines;
    for (const theme::PatternLine* pattern : patterns)
        expander.add_lines(*pattern, lines);
    expander.add_unprinted(lines);
    return lines;
}

}

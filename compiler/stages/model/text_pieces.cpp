// Cuts a value into pieces by the grammar, and tells what stands beside them.
#include "compiler/stages/model/text_pieces.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/model/figure_ranges.hpp"
#include "compiler/stages/model/messages.hpp"
#include "grammar/inline.hpp"
#include "grammar/messages.hpp"

#include <algorithm>
#include <initializer_list>
#include <type_traits>
#include <utility>

namespace quoin::model {
namespace {

namespace inline_text = grammar::inline_text;

struct Cutter {
    const JoinedValue& value;
    Diagnostics& diagnostics;
    Pieces pieces;

    std::string_view text() const { return value.text(); }
    void add(Piece::Kind kind, std::size_t begin, std::size_t end, std::string_view sign = {}) {
        Piece piece;
        piece.kind = kind;
        piece.begin = begin;
        piece.end = end;
        piece.text = sign;
        pieces.push_back(piece);
    }
};

template<typename Rule>
struct CutRule : tao::pegtl::nothing<Rule> {};

template<typename Input>
std::size_t begin_of(const Input& in, const Cutter& cutter) {
    return static_cast<std::size_t>(in.begin() - cutter.text().data());
}

template<typename Input>
std::size_t end_of(const Input& in, const Cutter& cutter) {
    return static_cast<std::size_t>(in.end() - cutter.text().data());
}

template<Piece::Kind Kind>
struct CutAs {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        cutter.add(Kind, begin_of(in, cutter), end_of(in, cutter));
    }
};

template<>
struct CutRule<inline_text::word> : CutAs<Piece::Kind::literal> {};
template<>
struct CutRule<inline_text::telephone> : CutAs<Piece::Kind::literal> {};
template<>
struct CutRule<inline_text::hyphens> : CutAs<Piece::Kind::literal> {};
template<>
struct CutRule<inline_text::opening_sign> : CutAs<Piece::Kind::literal> {};
template<>
struct CutRule<inline_text::less_than> : CutAs<Piece::Kind::literal> {};
template<>
struct CutRule<inline_text::other> : CutAs<Piece::Kind::literal> {};
template<> // several blanks are one
struct CutRule<inline_text::space> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::size_t begin = begin_of(in, cutter);
        cutter.add(Piece::Kind::space, begin, begin + 1);
    }
};

template<>
struct CutRule<inline_text::ellipsis> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        cutter.add(Piece::Kind::sign, begin_of(in, cutter), end_of(in, cutter), "…");
    }
};

template<>
struct CutRule<inline_text::minus> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::size_t begin = begin_of(in, cutter), end = end_of(in, cutter);
        const Neighbour before = neighbour_before(cutter.text(), begin);
        const bool starts_word =
            before == Neighbour::edge || before == Neighbour::space || before == Neighbour::opening;
        if (starts_word)
            cutter.add(Piece::Kind::sign, begin, end, "−");
        else
            cutter.add(Piece::Kind::literal, begin, end);
    }
};

template<>
struct CutRule<inline_text::roman_range> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::size_t hyphen = end_of(in, cutter) - 1, begin = begin_of(in, cutter);
        const std::string_view text = cutter.text();
        const bool starts_word = neighbour_before(text, begin) != Neighbour::letter;
        cutter.add(Piece::Kind::literal, begin, hyphen);
        if (starts_word && is_roman_range(text.substr(begin, hyphen - begin), text.substr(hyphen)))
            cutter.add(Piece::Kind::sign, hyphen, hyphen + 1, "–");
        else
            cutter.add(Piece::Kind::literal, hyphen, hyphen + 1);
    }
};
template<>
struct CutRule<inline_text::link> : CutAs<Piece::Kind::link> {};
template<>
struct CutRule<inline_text::double_quote> : CutAs<Piece::Kind::double_quote> {};
template<>
struct CutRule<inline_text::single_quote> : CutAs<Piece::Kind::single_quote> {};

template<>
struct CutRule<inline_text::mark_run> { // one piece a mark, as each may close another
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        for (std::size_t at = begin_of(in, cutter); at < end_of(in, cutter); ++at)
            cutter.add(Piece::Kind::mark, at, at + 1);
    }
};

template<>
struct CutRule<inline_text::apostrophe> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::size_t begin = begin_of(in, cutter);
        if (neighbour_before(cutter.text(), begin) == Neighbour::digit) // 5'10"
            cutter.add(Piece::Kind::single_quote, begin, end_of(in, cutter));
        else
            cutter.add(Piece::Kind::sign, begin, end_of(in, cutter), "’");
    }
};

template<>
struct CutRule<inline_text::escape> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::string_view escaped =
            cutter.text().substr(begin_of(in, cutter) + 1, in.size() - 1);
        const bool space = escaped == " " || escaped == "\t";
        if (is_ascii_letter(escaped.front()) || is_figure(escaped.front()))
            cutter.diagnostics.warning(cutter.value.place(begin_of(in, cutter), in.size()),
                                       fill<messages::backslash_left_out>(in_quotes(escaped)));
        cutter.add(Piece::Kind::sign, begin_of(in, cutter), end_of(in, cutter),
                   space ? no_break_space : escaped);
    }
};

template<>
struct CutRule<inline_text::figure_range> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::size_t hyphen = end_of(in, cutter) - 1;
        const std::string_view text = cutter.text();
        const std::size_t begin = begin_of(in, cutter);
        const bool range = is_figure_range(text.substr(begin, hyphen - begin), text.substr(hyphen));
        cutter.add(Piece::Kind::literal, begin, hyphen);
        if (range)
            cutter.add(Piece::Kind::sign, hyphen, hyphen + 1, "–");
        else
            cutter.add(Piece::Kind::literal, hyphen, hyphen + 1);
    }
};

template<> // the space before does not break: no line starts with a dash
struct CutRule<inline_text::spaced_dash> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        if (begin_of(in, cutter) == 0)
            cutter.add(Piece::Kind::literal, begin_of(in, cutter), end_of(in, cutter));
        else
            cutter.add(Piece::Kind::dash, begin_of(in, cutter), end_of(in, cutter), "\u00A0–");
    }
};

template<>
struct CutRule<inline_text::closed_dash> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const Neighbour before = neighbour_before(cutter.text(), begin_of(in, cutter));
        const Neighbour after = neighbour_after(cutter.text(), end_of(in, cutter));
        if (before == Neighbour::edge || before == Neighbour::space)
            cutter.add(Piece::Kind::literal, begin_of(in, cutter), end_of(in, cutter));
        else if (before == Neighbour::digit && after == Neighbour::digit)
            cutter.add(Piece::Kind::sign, begin_of(in, cutter), end_of(in, cutter), "–");
        else
            cutter.add(Piece::Kind::dash, begin_of(in, cutter), end_of(in, cutter), "\u00A0– ");
    }
};

template<typename Rule>
struct CutAndReport {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::size_t begin = begin_of(in, cutter);
        cutter.add(Piece::Kind::literal, begin, end_of(in, cutter));
        const std::string text = worded<grammar::message<Rule>>(in.string_view());
        const Place place = cutter.value.place(begin, in.size());
        if constexpr (std::is_same_v<Rule, inline_text::lone_backslash>)
            cutter.diagnostics.warning(place, text);
        else
            cutter.diagnostics.error(place, text);
    }
};

template<>
struct CutRule<inline_text::lone_backslash> : CutAndReport<inline_text::lone_backslash> {};
template<>
struct CutRule<inline_text::open_address> : CutAndReport<inline_text::open_address> {};

template<>
struct CutRule<inline_text::other_scheme> {
    template<typename Input>
    static void apply(const Input& in, Cutter& cutter) {
        const std::size_t begin = begin_of(in, cutter);
        cutter.add(Piece::Kind::literal, begin, end_of(in, cutter));
        const std::string_view scheme = in.string_view().substr(1, in.string_view().find(':') - 1);
        cutter.diagnostics.error(cutter.value.place(begin + 1, scheme.size()),
                                 worded<grammar::message<inline_text::other_scheme>>(scheme));
    }
};

bool is_any(std::string_view text, std::initializer_list<std::string_view> signs) {
    return std::find(signs.begin(), signs.end(), text) != signs.end();
}

Neighbour neighbour_of(std::string_view character) {
    const char first = character.front();
    if (is_any(character, {" ", "\t", no_break_space})) return Neighbour::space;
    if (is_any(character, {"(", "["})) return Neighbour::opening;
    if (is_any(character, {".", ",", ";", ":", "!", "?", ")", "]", "…"})) return Neighbour::closing;
    if (is_any(character, {"\"", "'", "“", "”", "‘", "’"})) return Neighbour::quote;
    if (is_any(character, {"–", "—"})) return Neighbour::dash;
    if (first == '-') return Neighbour::hyphen;
    if (is_figure(first)) return Neighbour::digit;
    const char lower = static_cast<char>(first | 0x20);
    return static_cast<unsigned char>(first) >= 0x80 || (lower >= 'a' && lower <= 'z')
               ? Neighbour::letter
               : Neighbour::other;
}

}

JoinedValue::JoinedValue(const syntax::Value& value) : value_(value), text_(value.joined()) {
    std::size_t start = 0;
    for (const syntax::Slice& slice : value.slices) {
        starts_.push_back(start);
        start += slice.text.size() + 1;
    }
}

std::size_t JoinedValue::slice(std::size_t offset) const {
    const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
    return static_cast<std::size_t>(after - starts_.begin()) - 1;
}

std::size_t JoinedValue::slice_end(std::size_t offset) const {
    const std::size_t index = slice(offset);
    return starts_[index] + value_.slices[index].text.size();
}

bool JoinedValue::is_fold(std::size_t offset) const {
    return offset < text_.size() && offset == slice_end(offset);
}

Place JoinedValue::place(std::size_t offset, std::size_t length) const {
    if (value_.slices.empty()) return {};
    if (length > 1 && is_fold(offset)) return place(offset + 1, length - 1);
    Place place = value_.slices[slice(offset)].place;
    const std::size_t within = std::min(length, slice_end(offset) - offset);
    place.column += static_cast<std::uint32_t>(offset - starts_[slice(offset)]);
    place.length = static_cast<std::uint32_t>(within);
    return place;
}

Pieces cut_pieces(const JoinedValue& value, Diagnostics& diagnostics) {
    Cutter cutter{value, diagnostics, {}};
    tao::pegtl::memory_input<tao::pegtl::tracking_mode::lazy> in(value.text(), "");
    tao::pegtl::parse<inline_text::text, CutRule>(in, cutter);
    return std::move(cutter.pieces);
}

Neighbour neighbour_before(std::string_view text, std::size_t offset) {
    if (offset == 0) return Neighbour::edge;
    std::size_t start = offset - 1;
    while (start > 0 && offset - start < 4 && continues_character(text[start]))
        --start;
    const Neighbour kind = neighbour_of(text.substr(start, offset - start));
    const bool dash = kind == Neighbour::hyphen && start > 0 && text[start - 1] == '-';
    return dash ? Neighbour::dash : kind;
}

Neighbour neighbour_after(std::string_view text, std::size_t offset) {
    if (offset < text.size() && text[offset] == '\\' && offset + 1 < text.size()) ++offset;
    if (offset >= text.size()) return Neighbour::edge;
    std::size_t end = offset + 1;
    while (end < text.size() && end - offset < 4 && continues_character(text[end]))
        ++end;
    const Neighbour kind = neighbour_of(text.substr(offset, end - offset));
    const bool dash = kind == Neighbour::hyphen && text.substr(offset).starts_with("--");
    return dash ? Neighbour::dash : kind;
}

}

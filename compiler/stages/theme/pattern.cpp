// Actions that make pieces of a pattern, and the check that no field is lost.
#include "compiler/stages/theme/pattern.hpp"

#include "compiler/stages/page_words/words.hpp"
#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/read_by_grammar.hpp"
#include "compiler/stages/theme/values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace quoin::theme {

namespace {

namespace rules = grammar::theme;

constexpr std::string_view fill_name = "fill";

struct UnknownName {
    std::size_t offset = 0;
    std::string name;
};

struct PatternState {
    std::span<const PatternName> names;
    std::vector<std::vector<PatternPiece>> levels{1}; // the pieces of each group that is open
    model::Marks marks;
    std::vector<UnknownName> unknown, unknown_words, misplaced_fills;

    void add_literal(std::string_view text) {
        auto& pieces = levels.back();
        if (!pieces.empty() && pieces.back().kind == PatternPiece::Kind::literal &&
            pieces.back().marks == marks) {
            pieces.back().literal += text;
            return;
        }
        PatternPiece piece;
        piece.literal = text;
        piece.marks = marks;
        pieces.push_back(std::move(piece));
    }

    void add_named(PatternPiece::Kind kind, std::string_view name) {
        PatternPiece piece;
        piece.kind = kind;
        piece.literal = name;
        piece.marks = kind == PatternPiece::Kind::word ? marks : model::Marks{};
        levels.back().push_back(std::move(piece));
    }

    void add_word(std::string_view name, std::size_t offset) {
        if (std::ranges::find(page_words::pattern_words, name) == page_words::pattern_words.end())
            unknown_words.push_back({offset, std::string(name)});
        add_named(PatternPiece::Kind::word, name);
    }

    // One in a line, outside of groups and marks: what it parts is the line.
    void add_fill(std::size_t offset) {
        const auto& pieces = levels.back();
        const bool again = std::ranges::find(pieces, PatternPiece::Kind::fill,
                                             &PatternPiece::kind) != pieces.end();
        if (levels.size() > 1 || marks != model::Marks{} || again)
            misplaced_fills.push_back({offset, std::string(fill_name)});
        add_named(PatternPiece::Kind::fill, {});
    }

    void add_name(std::string_view name, std::size_t offset) {
        constexpr std::string_view icon = "-icon", word = "-word";
        const auto match = std::ranges::find(names, name, &PatternName::name);
        if (match == names.end() && name == fill_name) return add_fill(offset);
        if (match == names.end() && name.ends_with(icon))
            return add_named(PatternPiece::Kind::icon, name.substr(0, name.size() - icon.size()));
        if (match == names.end() && name.ends_with(word))
            return add_word(name.substr(0, name.size() - word.size()), offset);
        if (match == names.end()) {
            unknown.push_back({offset, std::string(name)});
            return;
        }
        PatternPiece piece;
        piece.kind = match->kind;
        piece.field = match->field;
        piece.marks = marks;
        levels.back().push_back(std::move(piece));
    }

    void end_group() {
        PatternPiece piece;
        piece.kind = PatternPiece::Kind::group;
        piece.group = std::move(levels.back());
        levels.pop_back();
        levels.back().push_back(std::move(piece));
    }
};

template<typename Rule>
struct PatternAction : tao::pegtl::nothing<Rule> {};
template<>
struct PatternAction<rules::words> {
    template<typename Input>
    static void apply(const Input& in, PatternState& state) {
        state.add_literal(in.string_view());
    }
};
template<>
struct PatternAction<rules::escaped> : PatternAction<rules::words> {};
template<>
struct PatternAction<rules::field_name> {
    template<typename Input>
    static void apply(const Input& in, PatternState& state) {
        state.add_name(in.string_view(), in.position().byte);
    }
};
template<>
struct PatternAction<rules::strong_begin> {
    static void apply0(PatternState& state) { state.marks.strong = true; }
};
template<>
struct PatternAction<rules::strong_end> {
    static void apply0(PatternState& state) { state.marks.strong = false; }
};
template<>
struct PatternAction<rules::emphasis_begin> {
    static void apply0(PatternState& state) { state.marks.emphasis = true; }
};
template<>
struct PatternAction<rules::emphasis_end> {
    static void apply0(PatternState& state) { state.marks.emphasis = false; }
};
template<>
struct PatternAction<rules::group_begin> {
    static void apply0(PatternState& state) { state.levels.emplace_back(); }
};
template<>
struct PatternAction<rules::group_end> {
    static void apply0(PatternState& state) { state.end_group(); }
};

bool is_same(const PatternPiece& piece, const PatternName& name) {
    return piece.kind == name.kind && (!piece.is_name() || piece.field == name.field);
}

// A group of skills and its label come together: neither is ever missing without the other.
struct Occurrence {
    PatternPiece piece;
    std::vector<trade::FieldName> needs; // other fields that must have a value for it to be printed
    Place place;
};

void collect(const std::vector<PatternPiece>& pieces, std::vector<trade::FieldName> needs,
             Place place, std::vector<Occurrence>& out) {
    for (const PatternPiece& piece : pieces) {
        if (piece.is_name()) {
            auto others = needs;
            std::erase(others, piece.field);
            out.push_back({piece, std::move(others), place});
        }
    }
    for (const PatternPiece& piece : pieces) {
        if (piece.kind != PatternPiece::Kind::group) continue;
        auto inner = needs;
        for (const PatternPiece& member : piece.group)
            if (member.is_name()) inner.push_back(member.field);
        collect(piece.group, std::move(inner), place, out);
    }
}

std::string_view pattern_name(std::span<const PatternName> names, trade::FieldName field) {
    const auto match = std::ranges::find(names, field, &PatternName::field);
    return match == names.end() ? std::string_view("?") : match->name;
}

}

bool PatternLine::fills() const {
    return std::ranges::find(pieces, PatternPiece::Kind::fill, &PatternPiece::kind) != pieces.end();
}

std::optional<std::vector<PatternPiece>> read_pattern(const syntax::Value& value,
                                                      std::span<const PatternName> names,
                                                      Diagnostics& diagnostics) {
    PatternState state;
    state.names = names;
    if (!read_by_grammar<rules::pattern, PatternAction>(value, state, diagnostics))
        return std::nullopt;
    std::vector<std::string_view> known;
    for (const PatternName& name : names)
        known.push_back(name.name);
    for (const UnknownName& unknown : state.unknown)
        diagnostics.error(place_in(value, unknown.offset, unknown.name.size()),
                          fill<messages::no_field>(unknown.name, fmt::join(known, ", "),
                                                   did_you_mean(unknown.name, known)));
    for (const UnknownName& word : state.unknown_words)
        diagnostics.error(
            place_in(value, word.offset, word.name.size()),
            fill<messages::no_word>(word.name, fmt::join(page_words::pattern_words, ", "),
                                    did_you_mean(word.name, page_words::pattern_words)));
    for (const UnknownName& name : state.misplaced_fills)
        diagnostics.error(place_in(value, name.offset, name.name.size()),
                          fill<messages::fill_misplaced>());
    if (!state.unknown.empty() || !state.unknown_words.empty() || !state.misplaced_fills.empty())
        return std::nullopt;
    return std::move(state.levels.front());
}

void check_coverage(std::span<const PatternLine* const> lines, std::span<const PatternName> names,
                    std::string_view form, Place form_place, Diagnostics& diagnostics) {
    std::vector<Occurrence> occurrences;
    for (const PatternLine* line : lines)
        collect(line->pieces, {}, line->place, occurrences);
    for (const PatternName& name : names) {
        const Occurrence* first = nullptr;
        for (const Occurrence& occurrence : occurrences) {
            if (!is_same(occurrence.piece, name)) continue;
            if (first)
                diagnostics.error(occurrence.place, fill<messages::printed_twice>(form, name.name));
            else if (!occurrence.needs.empty())
                diagnostics.error(occurrence.place,
                                  fill<messages::lost_field>(
                                      name.name, pattern_name(names, occurrence.needs.front())));
            first = &occurrence;
        }
        if (!first) diagnostics.error(form_place, fill<messages::unprinted>(form, name.name));
    }
}

}

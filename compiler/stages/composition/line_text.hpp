// The text of one paragraph before it is shaped: pieces with their marks, links and places.
#pragma once

#include "compiler/base/place.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/model/text.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace quoin::composition {

struct TextPiece {
    enum class Kind { value, literal, page, icon, fill }; // literal: the pattern's own words
    Kind kind = Kind::value;
    std::string icon;       // its name; the text is the space it is drawn over
    bool icon_slot = false; // it has its whole square, so that texts below each other line up
    std::string text;
    model::Marks pattern_marks;            // turn the style's weight and slant round
    model::Marks marks;                    // the writer's: strong is bold whatever surrounds it
    std::optional<std::uint32_t> link;     // index into LineText::links
    std::optional<trade::FieldName> field; // that it is the value of
    TextPart part = TextPart::fixed;
    bool keeps = false;    // no line ends within it: what parts a date from what stands before it
    bool own_word = false; // the pattern's, which stays with what it names: `expires 2027`
    Place place;

    bool operator==(const TextPiece&) const = default;
};

struct LineText {
    std::vector<TextPiece> pieces;
    std::vector<std::string> links; // URIs

    bool empty() const { return pieces.empty(); }
    bool operator==(const LineText&) const = default;
    void append(const model::Text& text, TextPart part = TextPart::fixed);
};

struct ExpandedLine {
    theme::StyleName style{};
    LineText text;
};

struct DatesAs {
    trade::DateForm form{};
    const page_words::Words& words;
};

bool has_value(const model::Field& field);
LineText value_text(const model::Field& field, const DatesAs& dates_as);

// The lines that patterns make of fields: each line that has a value to print, once, or once for
// each group of skills. A field that no pattern prints gets a line of its own: nothing is lost.
std::vector<ExpandedLine> expand(std::span<const theme::PatternLine* const> patterns,
                                 std::span<const model::Field> fields, const DatesAs& dates_as);

}

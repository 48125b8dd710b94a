// The composed résumé: every paragraph shaped, in reading order, with the structure it belongs to.
// Lengths are in em of the text size, for the text size is not yet known.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/fonts/shape.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace quoin::composition {

// Standard structure types of ISO 32000-1, section 14.8.4, and two for a redline that are mapped to
// Span, for that standard has none.
enum class StructureType {
    document,
    sect,
    h1,
    h2,
    h3,
    p,
    l,
    li,
    lbl,
    lbody,
    link,
    span,
    annot,
    inserted,
    deleted
};

struct Element {
    StructureType type{};
    std::uint32_t parent = 0; // the document element, 0, is its own parent
    std::string uri;          // links
    std::string contents;     // links, inserted and deleted: what a screen reader says
    std::string language;     // spans: BCP 47, where it is another than the document's
    std::string expansion;    // spans: what an abbreviation is short for
};

// Glyphs of one face, size, colour and structure element.
struct Run {
    std::uint32_t element = 0;
    const fonts::Face* face = nullptr;
    double size = 1; // ratio of the text size
    theme::Colour colour;
    double tracking = 0; // em of its own size, added after each glyph
    bool underline = false;
    model::Revised revised{};
    std::optional<std::uint32_t> icon; // drawn over its one glyph, a space
    std::string text;                  // what the glyphs stand for; Glyph::text_begin counts in it
    std::vector<fonts::Glyph> glyphs;
};

// A place where a line may end: after glyph `glyph - 1` of run `run`, that is before its glyph
// `glyph`; never before the first glyph. The glyphs of the spaces before it stay on the ended
// line, where they hang past its measure.
struct BreakPoint {
    std::uint32_t run = 0;
    std::uint32_t glyph = 0;
    double penalty = 0;  // as Knuth & Plass: 0 neutral, positive to avoid
    bool hyphen = false; // a hyphen (U+00AD) is set if the line ends here
    // So many glyphs before it are not set if the line ends here: a separator that parts nothing
    // then, and its space.
    std::uint32_t left_out = 0;
};

// What a text gives up when room is short: nothing, its words, or the items of a list, which
// separators part.
enum class TextPart { fixed, words, item, separator };

struct Origin { // of bytes [begin, end) of a paragraph's text, its label's left out
    std::size_t begin = 0, end = 0;
    TextPart part{};
    bool marked = false; // the writer's marks or a link hold it together
    Place place;         // where its length is end - begin, byte for byte
};

// Which of the page's columns a paragraph stands in: the heading goes across the whole page.
enum class Region { whole, main, side };

// A column as the page's measure has it, all in em: linear, as the fit needs it.
struct ColumnSpan {
    double less = 0;  // taken off the measure before it is shared out
    double share = 1; // of the rest
    double left_share = 0, left = 0;

    double width(double measure) const { return (measure - less) * share; }
    double begin(double measure) const { return (measure - less) * left_share + left; }
};

struct Paragraph {
    std::uint32_t element = 0; // the block-level element: a heading, P or LBody's P
    theme::StyleName style{};
    theme::GapName gap{}; // opened above
    theme::Align align = theme::Align::left;
    Region region{};
    ColumnSpan span;
    std::uint32_t section = 0; // of the résumé, from 1; 0: the heading
    double size = 1;           // ratio: line height is leading × size
    double indent = 0;         // em, of every line
    double hang = 0;           // em: the first `label_runs` runs start at indent - hang
    double turn_over = 0;      // em, so much further left the first line begins
    double most_room = std::numeric_limits<double>::infinity(); // em, that lines are no longer than
    bool hang_punctuation = false;
    std::uint32_t label_runs = 0;   // a bullet with its space: no part of the line's measure
    double ascent = 0, descent = 0; // em, of the largest run
    theme::RuleAt rule = theme::RuleAt::none;
    double rule_thickness = 0, rule_gap = 0; // pt, em
    double rule_length = 0;                  // em; 0: the column's width
    theme::Colour rule_colour;
    // Entries of one line each make a list, from 1, and stand as close as one entry's lines; as far
    // apart as entries, once one of them takes two.
    std::uint32_t list = 0;
    // Paragraphs of one block, from 1, are shared out over so many columns of equal width, each as
    // wide as `span` is, that fill one after the other.
    std::uint32_t block = 0, block_columns = 1;
    double block_gap = 0;        // em, between them
    bool in_margin = false;      // a section's heading that stands beside its first lines
    bool keep_with_next = false; // no page break after it: headings, and heads of entries
    std::vector<Run> runs;
    // Of the white that a line is filled with: what comes after it stands at the right edge.
    std::optional<std::uint32_t> fill_run;
    std::vector<BreakPoint> breaks; // in order; the paragraph's end is not among them
    std::vector<std::uint32_t>
        hyphen_glyphs;           // one a run, the hyphen's glyph, where breaks ask for it
    Place place;                 // of the text it came from
    std::vector<Origin> origins; // in order
    std::uint32_t entry = 0;     // it belongs to, from 1; a further position counts as one; 0: none
    std::uint32_t bullet = 0; // of its entry, from 1; inner ones share the number of the one above
    bool spare = false;       // of an entry that goes first: a high school beside a college
};

// The side of an icon's square, as a ratio of the height of the capitals beside it.
constexpr double icon_side = 1.25;

struct Icon {
    theme::Path path;
    theme::Colour colour;
};

struct Outline { // a bookmark, at a section's heading
    std::string title;
    std::uint32_t paragraph = 0;
};

struct Composition {
    std::vector<Element> elements;     // parents before children, in reading order
    std::vector<Paragraph> paragraphs; // in reading order
    std::vector<Outline> outlines;
    std::vector<Icon> icons;
    double character = 0; // em, of running text, on average
    std::string title;    // for the document: "Ottoline Brandt, résumé"
    std::string author;   // the name
    std::string language; // BCP 47
    // On the pages from the second on, an artifact; no runs if there is none. Where its last run is
    // the figures 0 to 9, the page's number is set from them in that run's place.
    Paragraph running_head;
    // What a page opens with where a section goes on from the page before, an artifact: of section
    // s the s-th, its heading with the word for it; the first is the word alone, for a column that
    // is too narrow. None if there is but one page.
    std::vector<Paragraph> continued;
};

class Hyphenation;

// Such an entry has no paragraphs, and is not counted.
bool prints_nothing(const model::Entry& entry);

// Where the sections of a résumé stand in a theme of two columns.
struct SidePlan {
    std::vector<bool> at_side; // one a section
    double width = 0;          // of the narrow column, a share of both
};

// All that may stand at the side, there, at the width that the theme prefers.
SidePlan widest_plan(const model::Resume& resume, const theme::Theme& theme);

struct ShapedTexts; // shaped_text.hpp

ColumnSpan span_of(const theme::Theme& theme, Region region, double side_width);

// None if a character is in no font of the theme: reported at its place, by name. English words are
// divided where `hyphenation` has it, if the résumé asks for that or, where it says nothing, the
// theme. Entries are arranged in one `way` of the theme's, and sections as `plan` has it; without
// one, by widest_plan. Texts among the `known`, of the same theme and hyphenation, are not shaped
// again; those that are not come to them.
std::optional<Composition> compose(const model::Resume& resume, const theme::Theme& theme,
                                   fonts::Fonts& fonts, Diagnostics& diagnostics,
                                   const Hyphenation* hyphenation = nullptr, std::size_t way = 0,
                                   const SidePlan* plan = nullptr, ShapedTexts* known = nullptr);

}

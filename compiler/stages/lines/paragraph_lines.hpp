// A composed paragraph at any measure: how few lines hold it, and which lines look best. Widths
// are in em of the text size; a measure is that of the page's text, of which a column has its
// share, the indent still in it.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/lines/break_lines.hpp"
#include "compiler/stages/lines/line.hpp"

#include <cstddef>
#include <vector>

namespace quoin::lines {

// U+0020 or U+00A0: what justified lines widen, and what a line's width leaves out at its end.
bool is_space(const composition::Run& run, const fonts::Glyph& glyph);

// Em of the text size, tracking included.
double advance(const composition::Run& run, const fonts::Glyph& glyph);

// The cost of a ragged line is the sum of
// - 100 × the square of its shortfall as a share of the measure, unless it is the last,
// - a tenth of the penalty of the break it ends at; in a measure under `wide_measure` so much more
//   as the root of their ratio, for there a shortfall is a larger share: hyphens apart,
// - if it is the last of several: `runt_cost` for one word shorter than a quarter of the measure;
//   else `short_cost` × what it lacks of that quarter, as a share of it, where a measure under
//   `wide_measure` has so much more for its quarter as the root of their ratio.
constexpr double runt_cost = 40;
constexpr double short_cost = 12;
constexpr double wide_measure = 40; // em

// A paragraph measured once. Its lines are
// - as few as any breaking has, word spaces at their natural width;
// - of those, in a justified paragraph the ones of least demerits, a short last line's cost among
//   them, in any other the ones of least cost; where a line would have to stretch too far, or a
//   short word stand alone on the last, a justified paragraph is ragged too;
// - as wide as the column if that takes one line, whatever the most room of several: an eye that
//   need not find its way back can follow a longer line;
// - never wider than the measure: a word wider than it starts a line and is broken between its
//   glyphs, the last resort.
class MeasuredParagraph {
public:
    // `narrowest` is the least measure that will be asked for. The paragraph must outlive this.
    MeasuredParagraph(const composition::Paragraph& paragraph, double narrowest);

    int line_count(double measure) const;
    std::vector<Line> lines(double measure) const;

private:
    struct Sums { // of the glyphs before a place
        double width = 0;
        double space_width = 0;
        std::size_t spaces = 0;
    };
    struct Stop {                 // where a line may end
        Line::Position end, next; // the line's end, the next line's begin
        Sums at_end, at_next;     // the spaces between the two are in `at_next` alone
        double hyphen_width = 0;
        double penalty = 0;
        bool hyphen = false;
        std::size_t word = 0;  // within an overlong word: the stop that it begins at,
        double word_width = 0; // and its width; else 0
    };

    void add_stops();
    void pass_glyph(Stop& stop) const;
    void add_word_stops(double narrowest);
    double width(std::size_t from, std::size_t to) const;
    bool is_open(std::size_t from, std::size_t to, double room) const;
    bool is_forced(std::size_t stop) const;
    template<typename Visit>
    void visit_ends(std::size_t from, double room, Visit visit) const;
    double room_in(double measure) const;
    int count(double room) const;
    double cost(std::size_t from, std::size_t to, double room) const;
    std::vector<std::size_t> ragged(double room) const;
    std::vector<std::size_t> justified(double room) const;
    bool is_lone_word(std::size_t from) const;
    double last_line_cost(std::size_t from, double room) const;
    struct Ends {
        std::vector<std::size_t> stops; // one a line
        bool justified = false;
        double room = 0;
    };
    Ends best_ends(double room) const;
    bool leaves_runt(const std::vector<std::size_t>& ends, double room) const;
    void add_items(std::vector<Item>& items, std::size_t from, std::size_t to, double room) const;

    const composition::Paragraph& paragraph_;
    std::vector<Stop> stops_; // the paragraph's begin, its breaks, its end
};

}

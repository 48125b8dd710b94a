// Page fit: the most comfortable setting within bounds that holds the content.
//
// Discomfort is measured from the theme's preferred values. Call δ how far a quantity has gone from
// its preferred value (0) towards its least (1). Then
//
//     discomfort = 4 δ²(size) + δ²(side) + δ²(top) + δ²(bottom) + δ²(leading) + δ²(gaps)
//
// where leading and gaps are measured in points (a ratio times the size), and δ²(gaps) is the mean
// over the kinds of gap, each weighed by the room it can give; a gap wider than preferred costs
// nothing. In points every δ is linear, and so is every bound and the height of every line: for
// given numbers of lines the settings that hold the content are a polyhedron, and the best is its
// one point nearest to the preferred setting. Numbers of lines depend on the measure in em alone
// and change at finitely many measures; the best of these nearest points is the best there is.
//
// What height is left on a single page opens the gaps, all by one share of the way to their most;
// the rest stays at the foot. Fewer pages come before comfort. Beyond two pages the fit is good,
// not proven best.
#pragma once

#include "compiler/composition/composition.hpp"
#include "compiler/model/resume.hpp"
#include "compiler/theme/theme.hpp"

#include <array>
#include <cstdint>
#include <variant>
#include <vector>

namespace quoin {

struct PageSetting {
    double paper_width = 0, paper_height = 0;                  // pt
    double size = 0;                                           // pt, of the text
    double side_margin = 0, top_margin = 0, bottom_margin = 0; // pt
    double leading = 0;                                        // ratio of a line's size
    std::array<double, gap_count> gaps{};                      // em of the text size
};

struct Line { // glyphs [begin, end) of a paragraph, its label's left out
    struct Position {
        std::uint32_t run = 0;
        std::uint32_t glyph = 0;
    };
    Position begin, end;
    double width = 0;      // em, without the spaces at its end
    double word_space = 0; // em, added at each space of the line when justified
    bool hyphen = false;
};

struct Fit {
    PageSetting setting;
    std::vector<std::vector<Line>> lines; // one a paragraph
};

// Nothing within the bounds holds it. At the smallest setting (every quantity at its least) all
// pages but the last allowed are as full as they can be. With so many lines of the text's size
// (leading × size each) taken off the height of what is left, it fits the last; with one fewer it
// does not.
struct Overflow {
    int lines_too_many = 0;
};

std::variant<Fit, Overflow> fit(const Composition& composition, const Theme& theme,
                                const Settings& settings);

// At the smallest setting, on as many pages as it takes.
Fit draft_fit(const Composition& composition, const Theme& theme, const Settings& settings);

}

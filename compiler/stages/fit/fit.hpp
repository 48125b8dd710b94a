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
// Of two pages or more a setting holds the content if some legal page breaks do, and what is least
// is discomfort and the cost of those breaks (compiler/stages/fit/page_breaks.hpp) together, the
// room at the foot of a page apart. Up to two pages every break is tried, and the best is proven;
// beyond, the nearest point for given breaks and the cheapest breaks at that point are found in
// turn, for each set of line numbers that could still do better: good, not proven best. Fewer pages
// come before comfort.
//
// Two columns, each with the heading above it, are two such contents under one setting: both must
// be held. Their lines, too, depend on the page's measure in em alone. On one page the best is
// proven; on more it is found as beyond two pages.
//
// What height is left opens the gaps, all by one share of their way to their most: on a single page
// the whole way if there is room, on several half of it. The rest stays at the foot.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/lines/line.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <variant>
#include <vector>

namespace quoin::fit {

struct PageSetting {
    double paper_width = 0, paper_height = 0;                  // pt
    double size = 0;                                           // pt, of the text
    double side_margin = 0, top_margin = 0, bottom_margin = 0; // pt
    double leading = 0;                                        // ratio of a line's size
    std::array<double, theme::gap_count> gaps{};               // em of the text size
};

double full_measure(const PageSetting& setting); // em, of the whole page

struct Fit {
    PageSetting setting;
    std::vector<std::vector<lines::Line>> lines; // one a paragraph
    // The first line of each page, counting all lines of all paragraphs. If empty, the pages are
    // cut where compiler/stages/fit/page_breaks.hpp has it cheapest.
    std::vector<std::size_t> page_begins{};
    // Of two columns, page_begins counts the lines of the heading and the main column, and this
    // those of the heading and the narrow one.
    std::vector<std::size_t> side_begins{};
};

// Nothing within the bounds holds it. At the smallest setting (every quantity at its least) all
// pages but the last allowed are as full as they can be. With so many lines of the text's size
// (leading × size each) taken off the height of what is left, it fits the last; with one fewer it
// does not.
struct Overflow {
    int lines_too_many = 0;
};

std::variant<Fit, Overflow> fit(const composition::Composition& composition,
                                const theme::Theme& theme, const model::Settings& settings);

// At the smallest setting, on as many pages as it takes, each as full as it can be.
Fit draft_fit(const composition::Composition& composition, const theme::Theme& theme,
              const model::Settings& settings);

// As the theme likes it best, on as many pages as it takes: for what need not be short.
Fit preferred_fit(const composition::Composition& composition, const theme::Theme& theme,
                  const model::Settings& settings);

}

// Page fit: the most comfortable setting within bounds that holds the content.
//
// How comfortable a setting is, is told by its tightness, as compiler/stages/fit/comfort.hpp has
// it: every quantity has a place between its most, its preferred value and its least, and a setting
// is as tight as its tightest quantity. The fit is the roomiest that there is. It lies on the road
// from the roomiest setting to the tightest, where every quantity is as tight as every other:
// whatever setting holds the content, the one on the road that is as tight as its tightest quantity
// has nothing larger, so its lines are as long or longer, its page as high or higher, and it holds
// it too. Along the road nothing ever grows but the measure, so the first place that holds the
// content is found by halves; and a page of less text is never set smaller or closer than one of
// more.
//
// What height is left at the roomiest setting stays at the foot.
//
// On two pages a setting holds the content if some legal page break does, and what is least is its
// tightness, the cost of the break (compiler/stages/fit/page_breaks.hpp) and that of feet which are
// not even, together: every stretch of the road and every break is tried, and the best is proven.
// On more, the first places that hold the content are tried with the cheapest breaks there: good,
// not proven best. One page more than are needed is taken where it is allowed and the tightness
// would be more than can be borne without it, which comfort.hpp states too. Of a theme's ways to
// arrange entries, the page takes the roomiest in which its tightness is no more than `comfortable`
// and which needs no more pages than the closest (compiler/stages/typeset.cpp).
//
// Two columns, each with the heading above it, are two such contents under one setting: both must
// be held. On one page the best is proven; on more it is found as beyond two pages, and a column
// that goes on to a second page has its feet as even there.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/lines/line.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <algorithm>
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
    double tightness = 0; // of the setting

    std::size_t pages() const { return std::max(page_begins.size(), side_begins.size()); }
};

constexpr double comfortable = 0.3;

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

// Which sections stand in the narrow column, and how wide it is: of all that a theme allows, what
// lets the page be set roomiest.
//
// Both columns are piles of sections, and a section is as high in one company as in another. So at
// one place of the road and one width, all ways to part the sections are weighed by sums; heights
// only fall along the road, and the first place where some way holds is found by halves. Widths are
// those of `width_steps` even steps from the theme's least to its most. Of ways that are equally
// roomy the one with the evenest feet is taken.
//
// Not considered are ways that fill the narrow column to less than `least_side` of the main one at
// the preferred setting: they leave a hole in the page. Where programs would mix the columns of
// what is found (compiler/stages/pages/reading_order.hpp), the best of the other widths is asked
// for (compiler/stages/typeset.cpp).
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace quoin::fit {

constexpr double least_side = 0.75;
constexpr int width_steps = 4;

struct SideOffer {
    const composition::Composition& main; // every section in the one column
    const composition::Composition& side; // all that may stand at the side, there
    std::vector<bool> may, must;          // one a section
};

class WidthPages;

// The best at each width in turn.
class SideChoice {
public:
    SideChoice(const SideOffer& offer, const theme::Theme& theme, const model::Settings& settings);
    ~SideChoice();

    // The best at one of the widths that were not given yet; where none is good, once, with nothing
    // at the side but what must stand there. None when all were given.
    std::optional<composition::SidePlan> next();

private:
    std::unique_ptr<WidthPages> pages_;
    std::vector<std::vector<bool>> ways_; // to part the sections
    std::vector<double> widths_;          // not given yet
    composition::SidePlan nothing_;
};

}

// One column on two pages: of every place on the road and every break, the best.
#pragma once

#include "compiler/stages/fit/road.hpp"

#include <cstddef>
#include <limits>
#include <optional>

namespace quoin::fit {

// Added for feet that are not even: so much for one page empty and one full.
constexpr double even_cost = 0.2;

struct TwoPages {
    RoadPlace place;
    std::size_t cut = 0; // the second page's first line
    // Tightness, the break's cost and that of the feet.
    double cost = std::numeric_limits<double>::infinity();
};

// None if no legal break holds it on two pages.
std::optional<TwoPages> best_on_two_pages(const Road& road);

// At one setting: the second page's first line of least cost, the feet's and the break's together.
std::optional<std::size_t> evenest_cut(const Column& column, const PageSetting& setting);

}

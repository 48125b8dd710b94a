// The measures of a good entry and a good page (common practice).
#pragma once

#include <cstdint>

namespace quoin::trade {

// An entry says what was done and what came of it in so many bullets.
constexpr std::uint32_t least_bullets = 2, most_bullets = 5;

struct Interval {
    double least = 0;
    double most = 0;

    bool operator==(const Interval&) const = default;
};
constexpr Interval size_bounds{10, 12};   // pt
constexpr Interval margin_bounds{0.5, 1}; // inch
constexpr double points_per_inch = 72;
constexpr double first_look = 10; // seconds that a page is given at first

constexpr int first_year = 1900, last_year = 2100; // a date outside is a slip of the finger

}

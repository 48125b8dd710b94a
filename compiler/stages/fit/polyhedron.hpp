// Settings as points: the preferred setting is the origin, the distance from it the discomfort.
#pragma once

#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/nearest_point.hpp"

#include <vector>

namespace quoin::fit {

class SettingSpace {
public:
    explicit SettingSpace(const SettingChoices& choices);

    // The settings whose lines are at least so wide; that hold such a page.
    HalfSpace wide_enough(double measure) const;
    HalfSpace holds(const Height& page) const;
    // So many pages have room for such a height together.
    HalfSpace has_room(const Height& height, double pages) const;
    // Whether even the least setting is in it.
    bool is_reachable(const HalfSpace& half_space) const;

    // The most comfortable point of reachable half-spaces, within every choice's bounds.
    Vector most_comfortable(std::vector<HalfSpace> half_spaces) const;
    PageSetting setting(const Vector& point) const;

private:
    SettingChoices choices_;
    Vector least_{}; // the point of the least setting
};

// No point of the half-space is more comfortable.
double comfort_bound(const HalfSpace& half_space);

double discomfort(const Vector& point);

}

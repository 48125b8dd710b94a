// A point's coordinates are the square roots of the terms of the discomfort, each with its sign:
// twice the share of size given up, then the shares of side, top and bottom margin, leading, gaps.
#include "compiler/stages/fit/polyhedron.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::fit {

namespace {

enum Coordinate : std::size_t { size, side, top, bottom, leading, gaps };

const double size_factor = std::sqrt(size_weight);

double dot(const Vector& a, const Vector& b) {
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i)
        sum += a[i] * b[i];
    return sum;
}

double held(double value, const theme::Preference& within) {
    return std::clamp(value, within.least, within.preferred);
}

}

SettingSpace::SettingSpace(const SettingChoices& choices) : choices_(choices) {
    // In points, leading and gaps of the least size give less than those of the preferred.
    const double scale = choices.size.least / choices.size.preferred;
    least_ = {size_factor, 1, 1, 1, scale, scale};
}

HalfSpace SettingSpace::wide_enough(double measure) const {
    HalfSpace half;
    half.normal[size] = measure * range(choices_.size) / size_factor;
    half.normal[side] = 2 * range(choices_.side);
    half.bound =
        measure * choices_.size.preferred + 2 * choices_.side.preferred - choices_.paper_width;
    return half;
}

HalfSpace SettingSpace::holds(const Height& page) const {
    return has_room(page, 1);
}

HalfSpace SettingSpace::has_room(const Height& height, double pages) const {
    double em = height.fixed + height.lines * choices_.leading.preferred;
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        em += height.gaps[i] * choices_.gaps[i].preferred;
    const double preferred_size = choices_.size.preferred;
    HalfSpace half;
    half.normal[size] = em * range(choices_.size) / size_factor;
    half.normal[top] = pages * range(choices_.top);
    half.normal[bottom] = pages * range(choices_.bottom);
    half.normal[leading] = preferred_size * height.lines * range(choices_.leading);
    half.normal[gaps] = preferred_size * gap_room(choices_, height.gaps);
    half.bound =
        pages * (choices_.top.preferred + choices_.bottom.preferred - choices_.paper_height) +
        preferred_size * em + height.points;
    return half;
}

bool SettingSpace::is_reachable(const HalfSpace& half_space) const {
    return dot(half_space.normal, least_) >= half_space.bound - 1e-9; // pt
}

Vector SettingSpace::most_comfortable(std::vector<HalfSpace> half_spaces) const {
    for (const Coordinate each : {size, side, top, bottom}) {
        HalfSpace bounds;
        bounds.normal[each] = -1;
        bounds.bound = -least_[each];
        half_spaces.push_back(bounds);
    }
    for (const Coordinate each : {leading, gaps}) {
        HalfSpace bounds;
        bounds.normal[each] = -1;
        bounds.normal[size] = -range(choices_.size) / (size_factor * choices_.size.preferred);
        bounds.bound = -1;
        half_spaces.push_back(bounds);
    }
    return nearest_point(half_spaces);
}

PageSetting SettingSpace::setting(const Vector& point) const {
    PageSetting setting = preferred_setting(choices_);
    const auto moved = [](const theme::Preference& from, double share) {
        return held(from.preferred - share * range(from), from);
    };
    setting.size = moved(choices_.size, point[size] / size_factor);
    setting.side_margin = moved(choices_.side, point[side]);
    setting.top_margin = moved(choices_.top, point[top]);
    setting.bottom_margin = moved(choices_.bottom, point[bottom]);
    const double scale = choices_.size.preferred / setting.size;
    setting.leading = moved(choices_.leading, scale * point[leading]);
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        setting.gaps[i] = moved(choices_.gaps[i], scale * point[gaps]);
    return setting;
}

double comfort_bound(const HalfSpace& half_space) {
    if (half_space.bound <= 0) return 0;
    return half_space.bound * half_space.bound / dot(half_space.normal, half_space.normal);
}

double discomfort(const Vector& point) {
    return dot(point, point);
}

}

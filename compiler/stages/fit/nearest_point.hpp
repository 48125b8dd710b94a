// The point of a polyhedron nearest to the origin.
#pragma once

#include <array>
#include <cstddef>
#include <span>

namespace quoin::fit {

constexpr std::size_t setting_dimensions = 6;
using Vector = std::array<double, setting_dimensions>;

struct HalfSpace { // normal · x >= bound
    Vector normal{};
    double bound = 0;
};

// The half-spaces have a point in common.
Vector nearest_point(std::span<const HalfSpace> half_spaces);

}

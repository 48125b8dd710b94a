// The measures of a good entry and a good page (common practice).
#pragma once

#include <cstdint>

namespace quoin::trade {

// An entry says what was done and what came of it in so many bullets.
constexpr std::uint32_t least_bullets = 2, most_bullets = 5;

}

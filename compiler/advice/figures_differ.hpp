// A figure that headline or summary and a bullet tell of one thing, each another.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

constexpr std::size_t most_bullets = 150; // of more no page is made

void figures_differ(const ProofContext& context, std::vector<Finding>& findings);

}

// A figure that headline or summary and a bullet tell of one thing, each another.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void figures_differ(const ProofContext& context, std::vector<Finding>& findings);

}

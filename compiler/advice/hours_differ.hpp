// Hours that headline or summary claim, and entries tell of in parts.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void hours_differ(const ProofContext& context, std::vector<Finding>& findings);

}

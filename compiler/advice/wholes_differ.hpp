// What is told of all of them, and of their number in another line.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void wholes_differ(const ProofContext& context, std::vector<Finding>& findings);

}

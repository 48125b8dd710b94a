// A term that is said over and over.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void stuffing(const ProofContext& context, std::vector<Finding>& findings);

}

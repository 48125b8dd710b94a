// The span of an entry's dates against what the entry says of it.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void dates_contradicted(const ProofContext& context, std::vector<Finding>& findings);

}

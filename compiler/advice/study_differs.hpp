// What headline and summary say of the degree, where the education section has it otherwise.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void study_differs(const ProofContext& context, std::vector<Finding>& findings);

}

// Years that nothing on the page accounts for.
#pragma once

#include "compiler/advice/check.hpp"

namespace quoin::advice {

void date_gap(const ProofContext& context, std::vector<Finding>& findings);

}

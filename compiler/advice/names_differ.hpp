// Names, titles and years that two lines of a page have otherwise.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void names_differ(const ProofContext& context, std::vector<Finding>& findings);

}

// From what of a posting a résumé covers to what is asked of it.
#pragma once

#include "compiler/matching/coverage.hpp"
#include "compiler/tailoring/demand.hpp"

namespace quoin::tailoring {

// What is a slip or a near form is not counted as shown; what any of a list will do for is one.
Demand asked_of(const matching::Coverage& coverage);

}

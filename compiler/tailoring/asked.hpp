// From what of a posting a résumé covers to what is asked of it.
#pragma once

#include "compiler/matching/coverage.hpp"
#include "compiler/tailoring/demand.hpp"

namespace quoin::tailoring {

// What a search would miss is not counted as shown.
Demand asked_of(const matching::Coverage& coverage);

}

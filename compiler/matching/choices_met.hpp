// Of what a posting lets a reader choose, which is met: it counts once, and the others are not
// missing.
#pragma once

#include "compiler/matching/coverage.hpp"

namespace quoin::matching {

// Sets the shares, and the verdicts of what another spares.
void settle_choices(Coverage& coverage);

}

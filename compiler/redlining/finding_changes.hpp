// Which findings of a proof the new draft has mended, and which are new.
#pragma once

#include "compiler/advice/proof.hpp"
#include "compiler/redlining/alignment.hpp"

#include <vector>

namespace quoin::redlining {

struct FindingChanges {                         // in the order of their proof
    std::vector<const advice::Finding*> mended; // of the old draft
    std::vector<const advice::Finding*> fresh;  // of the new
};

// A finding stays if the same check finds something at the same thing, wherever that stands now,
// or the same words elsewhere.
FindingChanges finding_changes(const Alignment& alignment, const advice::Proof& before,
                               const advice::Proof& after);

}

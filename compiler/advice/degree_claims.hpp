// Degrees and licences that the headline or the summary claims.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/advice/walk.hpp"

#include <vector>

namespace quoin::advice {

bool is_claim(const TextInResume& part); // of the headline, or of the summary

// One that is still to come, or of another kind than those in the education section.
void degree_claimed(const ProofContext& context, std::vector<Finding>& findings);

}

// Sentences that stop short, and lists whose verbs part ways. Their rows are in
// sentence_checks.cpp.
#pragma once

#include "compiler/advice/check.hpp"

#include <vector>

namespace quoin::advice {

void unfinished(const ProofContext& context, std::vector<Finding>& findings);
void unparallel(const ProofContext& context, std::vector<Finding>& findings);

}

// What an office says of words: those it would have avoided, and phrases it has advice on.
#pragma once

#include "compiler/advice/check.hpp"

namespace quoin::advice {

void office_words(const ProofContext& context, std::vector<Finding>& findings);
void office_phrases(const ProofContext& context, std::vector<Finding>& findings);
void office_names(const ProofContext& context, std::vector<Finding>& findings); // office_names.cpp

}

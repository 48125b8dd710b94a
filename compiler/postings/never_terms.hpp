// What of a statement is a condition of the work, and no term.
#pragma once

#include "compiler/postings/parts.hpp"
#include "compiler/postings/phrases.hpp"

#include <vector>

namespace quoin::postings {

bool is_within(const Phrase& inner, const Phrase& outer); // and not the same

void drop_conditions(std::vector<Phrase>& phrases, const Statement& statement);

}

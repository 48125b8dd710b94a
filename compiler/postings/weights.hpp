// How much a term weighs.
#pragma once

#include "compiler/postings/posting.hpp"

namespace quoin::postings {

double importance_of(Standing standing); // how much what stands there counts
double weight_of(const Term& term);

// What is less likely to be asked for than not stands behind what is, and what is so by far below
// the list.
constexpr double likely_odds = 1, least_odds = 0.5;

}

// What kind of thing a term is, and how much it weighs.
#pragma once

#include "compiler/postings/phrases.hpp"
#include "compiler/postings/posting.hpp"

namespace quoin::postings {

Kind kind_of(const Phrase& phrase);

double importance_of(Standing standing); // how much what stands there counts
double weight_of(const Term& term);

// What is less likely to be asked for than not stands below the list.
constexpr double least_odds = 0.8;

}

// How much a term weighs, factor by factor.
#pragma once

#include "compiler/postings/phrases.hpp"
#include "compiler/postings/posting.hpp"

#include <span>
#include <string>

namespace quoin::postings {

Kind kind_of(const Phrase& phrase);

double standing_factor(Standing standing);
double kind_factor(Kind kind);
// The mean of its words; of a name (capitals where none are due) at least that of a rare word.
double rarity_factor(const Phrase& phrase, const english::WordList& words);
double times_factor(int times);
// `score` is of the term, `best` the highest in the posting.
double rake_factor(double score, double best);

}

// A word that may be a noun or a verb, before bare words: Stock room rules, Stock shelves.
#pragma once

#include "compiler/english/reading.hpp"

namespace quoin::english {

// The last word of the noun phrase at `i`: of the bare words before a preposition, a sign, a number
// or the participle of what was done to it.
std::size_t head_noun(const Sentence& sentence, std::size_t i);

// `won 5 games` after `Team`, `rose` after `Profits`: the verb of a sentence, no participle.
bool is_finite_past(const Sentence& sentence, std::size_t i);

// `live`, `open`, `clean`: no less an adjective than a verb.
bool is_often_adjective(const VerbEntry& verb);

// The word at `i` where bare words follow it, the first of them a participle or not.
Homograph read_compound(const Sentence& sentence, std::size_t i);

}

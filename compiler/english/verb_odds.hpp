// How likely a word that is a noun and a verb alike is a verb, as one score.
#pragma once

#include "compiler/english/sentence.hpp"

#include <cstddef>

namespace quoin::english {

struct JoinedWord {
    std::size_t word = 0;   // before bare words
    std::size_t joiner = 0; // the "and" before it
    std::size_t verb = 0;   // the last verb before that
};

// Log-odds: what each sign adds to those that WordNet's counts give; over 0, surely a verb.
double joined_verb_odds(const Sentence& sentence, const JoinedWord& joined);

// `baked`, `used`: an adjective too, by WordNet.
bool is_adjective_in_ed(std::string_view word);

}

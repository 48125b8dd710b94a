// What the look of a word that no list has tells of it.
#pragma once

#include "compiler/english/slip_odds.hpp"
#include "compiler/english/word_list.hpp"

#include <string>

namespace quoin::english {

// `small` is in small letters, without signs. `letters` has the runs of three letters with their
// class, as make_words.py writes them.
UnknownWord look_at(const std::string& small, const WordList& words, const WordList& letters);

}

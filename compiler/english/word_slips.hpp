// Slips that are words of their own: manger for manager. What a word stands among decides, by the
// table of words/word_slips.txt; what is not surely a slip is none.
#pragma once

#include "compiler/english/sentence.hpp"
#include "compiler/english/word_contexts.hpp"

#include <vector>

namespace quoin::english {

// In the order of the words; none overlaps another.
std::vector<WordSlip> find_word_slips(const Sentence& sentence, const WordContexts& contexts);

}

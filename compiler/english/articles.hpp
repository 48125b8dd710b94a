// `a` and `an` before a sound: a European, an hour, an MRI, an 8-hour shift.
#pragma once

#include "compiler/english/sentence.hpp"

#include <vector>

namespace quoin::english {

// Those that are surely wrong; of what may be said in two ways, nothing.
std::vector<WordSlip> find_article_slips(const Sentence& sentence);

}

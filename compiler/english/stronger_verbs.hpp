// What a weak opening could have said of its object.
#pragma once

#include "compiler/english/reading.hpp"

#include <string>
#include <vector>

namespace quoin::english {

// In the past, the likeliest first; none where the object does not tell.
std::vector<std::string> stronger_for(const Sentence& sentence, const WeakPhrase& weak);

}

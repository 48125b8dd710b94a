// Phrases that grammar would cut, as they are listed or as the sentence gives them a short form:
// first aid, attention to detail, augmentative and alternative communication (AAC).
#pragma once

#include "compiler/english/sentence.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace quoin::postings {

// Of each word of `text` how many of the phrase that begins with it; 0: none does.
std::vector<std::size_t> fixed_in(const english::Sentence& sentence, std::string_view text);

}

// What each word of a sentence is to its phrases: outside of them, inside of one, or a verb between
// two.
#pragma once

#include "compiler/english/sentence.hpp"
#include "compiler/postings/phrases.hpp"

#include <cstddef>
#include <vector>

namespace quoin::postings {

enum class Role { outside, inside, verb };

std::vector<Role> roles_in(const english::Sentence& sentence, Opens opens);

bool is_wordy(const english::Sentence& sentence, std::size_t i); // a word or a figure
bool opens_clause(const english::Sentence& sentence, std::size_t i);

}

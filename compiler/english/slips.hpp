// How likely one word is a slip for another: the slips of hand and ear that make it, weighed.
#pragma once

#include <string_view>

namespace quoin::english {

// The least cost of the slips that turn `meant` into `typed`, both in small letters: letters
// swapped, doubled or not, and a wrong vowel are cheap, another consonant is dear. `most` + 1 if it
// is over `most`.
int slip_cost(std::string_view typed, std::string_view meant, int most);

}

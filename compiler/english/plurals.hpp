// One and several: what has the wrong number, or the wrong sign for it.
#pragma once

#include "compiler/english/sentence.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::english {

std::vector<NumberSlip> find_number_slips(const Sentence& sentence);

// In small letters: vessel, vessels.
std::string plural_form(std::string_view noun);

}

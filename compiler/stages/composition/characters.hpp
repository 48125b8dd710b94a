// Text by user-perceived characters, their direction, and capitals.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quoin::composition {

// Bytes of the first grapheme cluster (Unicode Standard Annex #29) of a text that is not empty.
std::size_t first_cluster_length(std::string_view text);

// Of strong direction (Unicode Standard Annex #9, table 4); neither holds for figures and signs.
bool is_right_to_left(char32_t code);
bool is_left_to_right(char32_t code);

// Between letters that are read from right to left what keeps an order of its own or would have to
// be turned round: letters of the other direction, figures, brackets.
bool parts_right_to_left(char32_t code);

bool is_mark(char32_t code); // that stands on the letter before it

// The scripts of its letters by name, "Han and Hiragana"; empty if it has none.
std::string scripts_of(std::string_view text);

std::string upper_case(std::string_view text, const std::string& language); // BCP 47

}

// Phrases in text: several words that stand together, whole.
#pragma once

#include <cstddef>
#include <string_view>

namespace quoin {

// A letter, of ASCII or not, or a figure.
bool is_word_byte(char c);

// Whether `phrase` stands in `text` between the ends of words; both lower case.
bool has_phrase(std::string_view text, std::string_view phrase);
std::size_t find_phrase(std::string_view text, std::string_view phrase); // npos if it does not

}

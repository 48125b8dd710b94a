// Phrases in text: several words that stand together, whole.
#pragma once

#include "compiler/base/ascii.hpp"

#include <cstddef>
#include <string_view>

namespace quoin {

// A letter, of ASCII or not, or a figure.
constexpr bool is_word_byte(char c) {
    return is_ascii_letter(c) || is_figure(c) || static_cast<unsigned char>(c) >= 0x80;
}

// Whether `phrase` stands in `text` between the ends of words; both lower case.
bool has_phrase(std::string_view text, std::string_view phrase);
std::size_t find_phrase(std::string_view text, std::string_view phrase); // npos if it does not

}

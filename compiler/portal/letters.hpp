// Letters by Unicode's general categories (Unicode Standard, section 4.5).
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quoin::portal {

bool is_capital(char32_t code); // title case letters too

struct LetterCount {
    std::size_t letters = 0, capitals = 0, digits = 0, characters = 0;
};
LetterCount count_letters(std::string_view text);

// A letter and nothing else, with what combines with it.
bool is_single_letter(std::string_view text);

std::string in_small_letters(std::string_view text); // simple mapping, the same in every language

}

#include "compiler/portal/letters.hpp"

#include "compiler/base/utf8.hpp"

#include <utf8proc.h>

namespace quoin::portal {

namespace {

utf8proc_category_t category(char32_t code) {
    return utf8proc_category(static_cast<utf8proc_int32_t>(code));
}

template<typename Take>
void each_character(std::string_view text, const Take& take) {
    while (!text.empty()) {
        const Character character = take_character(text);
        take(character.code, character.bytes);
    }
}

}

bool is_capital(char32_t code) {
    return category(code) == UTF8PROC_CATEGORY_LU || category(code) == UTF8PROC_CATEGORY_LT;
}

LetterCount count_letters(std::string_view text) {
    LetterCount count;
    each_character(text, [&](char32_t code, std::string_view) {
        ++count.characters;
        count.letters += is_letter(code);
        count.capitals += is_capital(code);
        count.digits += code >= U'0' && code <= U'9';
    });
    return count;
}

bool is_single_letter(std::string_view text) {
    bool letters_only = true;
    std::size_t letters = 0;
    each_character(text, [&](char32_t code, std::string_view) {
        letters += is_letter(code);
        letters_only = letters_only && (is_letter(code) || category(code) == UTF8PROC_CATEGORY_MN);
    });
    return letters == 1 && letters_only;
}

std::string in_small_letters(std::string_view text) {
    std::string lower;
    each_character(text, [&](char32_t code, std::string_view bytes) {
        const auto small = utf8proc_tolower(static_cast<utf8proc_int32_t>(code));
        if (small == static_cast<utf8proc_int32_t>(code))
            lower += bytes;
        else
            append_utf8(static_cast<char32_t>(small), lower);
    });
    return lower;
}

}

// UTF-8 one character at a time, and how wide a character stands on a terminal.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace quoin {

constexpr std::string_view no_break_space = "\u00A0";
constexpr std::string_view soft_hyphen = "\u00AD";
constexpr std::string_view replacement_character = "\uFFFD";

struct Character {
    char32_t code = U'\uFFFD';
    std::size_t length = 1; // in bytes
    bool well_formed = false;
    std::string_view bytes = {}; // set by take_character
};

// The first character of a text that is not empty. Of an ill-formed one the length is that of the
// longest piece that could begin a character (Unicode Standard 15.0, section 3.9, "U+FFFD
// Substitution of Maximal Subparts").
Character first_character(std::string_view text);
Character take_character(std::string_view& text); // the first, which the text loses

bool all_ascii(std::string_view text);
std::string replaced(std::string text, std::string_view from, std::string_view to); // each one
std::string straight_apostrophes(std::string_view text); // ' for the typographic one
void append_utf8(char32_t code, std::string& text);      // a Unicode scalar value

// `2` for the figure of `CO₂`, which a search then finds.
std::optional<std::string_view> lowered_figure(std::string_view character);

bool continues_character(char byte);              // of a well-formed text: it begins none
std::size_t characters_in(std::string_view text); // likewise

bool is_letter(char32_t code); // of any script

// In small letters without accents, for comparing (Unicode case folding; nonspacing marks left
// out).
std::string folded(std::string_view text);

int terminal_columns(char32_t code); // 0 for combining marks, 2 for wide characters

}

// Letters, figures and blanks of ASCII: the same in every locale. What lies beyond ASCII is none of
// these, and is left as it is.
#pragma once

#include <string>
#include <string_view>

namespace quoin {

constexpr bool is_figure(char c) {
    return c >= '0' && c <= '9';
}

constexpr bool is_small_letter(char c) {
    return c >= 'a' && c <= 'z';
}

constexpr bool is_capital_letter(char c) {
    return c >= 'A' && c <= 'Z';
}

constexpr bool is_ascii_letter(char c) {
    return is_small_letter(c) || is_capital_letter(c);
}

constexpr char small_letter(char c) { // of a capital; all else as it is
    return is_capital_letter(c) ? static_cast<char>(c - 'A' + 'a') : c;
}

constexpr bool is_letter_or_figure(char c) {
    return is_ascii_letter(c) || is_figure(c);
}

constexpr char capital_letter(char c) { // of a small one; all else as it is
    return is_small_letter(c) ? static_cast<char>(c - 'a' + 'A') : c;
}

inline bool is_capitalised(std::string_view word) {
    return !word.empty() && is_capital_letter(word.front());
}

bool has_digit(std::string_view text);
bool all_figures(std::string_view text);       // and not empty
bool all_small_letters(std::string_view text); // or empty
std::string lower_case(std::string_view text);
std::string capitalised(std::string word); // its first letter

// Without what of `around` stands at either end.
std::string_view trimmed(std::string_view text, std::string_view around = " \t");

}

#include "compiler/base/ascii.hpp"

#include <algorithm>

namespace quoin {

bool has_digit(std::string_view text) {
    return std::ranges::any_of(text, is_figure);
}

bool all_figures(std::string_view text) {
    return !text.empty() && std::ranges::all_of(text, is_figure);
}

bool all_small_letters(std::string_view text) {
    return std::ranges::all_of(text, is_small_letter);
}

std::string lower_case(std::string_view text) {
    std::string result(text);
    std::ranges::transform(result, result.begin(), small_letter);
    return result;
}

std::string capitalised(std::string word) {
    if (!word.empty()) word.front() = capital_letter(word.front());
    return word;
}

std::string_view trimmed(std::string_view text, std::string_view around) {
    text.remove_prefix(std::min(text.find_first_not_of(around), text.size()));
    return text.substr(0, text.find_last_not_of(around) + 1);
}

}

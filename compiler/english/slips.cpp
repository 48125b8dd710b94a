// The distance of Damerau and Levenshtein (optimal string alignment) with a cost by kind of slip.
#include "compiler/english/slips.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <cstdlib>

namespace quoin::english {
namespace {

constexpr std::size_t longest_compared = 48;
constexpr int least_cost = 3; // of any slip: three of them never pass for two
constexpr int swap_cost = 3, double_cost = 3, wrong_vowel = 3, vowel_cost = 4, alike_cost = 4,
              added_vowel = 5, consonant_cost = 6, added_consonant = 6, other_cost = 9;

bool is_vowel_or_y(char c) {
    return std::string_view("aeiouy").find(c) != std::string_view::npos;
}

// Letters that sound alike or lie side by side on the keyboard.
bool alike(char a, char b) {
    constexpr std::array<std::string_view, 14> pairs{"cs", "ck", "sz", "mn", "td", "gj", "fv",
                                                     "bp", "bv", "qw", "rt", "gh", "kl", "cx"};
    return std::ranges::any_of(pairs, [&](std::string_view pair) {
        return (pair[0] == a && pair[1] == b) || (pair[0] == b && pair[1] == a);
    });
}

int cost_of_wrong(char typed, char meant) {
    if (typed == meant) return 0;
    if (is_vowel_or_y(typed) && is_vowel_or_y(meant)) return wrong_vowel;
    return alike(typed, meant) ? alike_cost : other_cost;
}

bool is_doubled(std::string_view word, std::size_t i) {
    return (i > 0 && word[i - 1] == word[i]) || (i + 1 < word.size() && word[i + 1] == word[i]);
}

// A letter put into the word is rarer than one left out.
int cost_of_added(std::string_view typed, std::size_t i) {
    if (is_doubled(typed, i)) return double_cost;
    return is_vowel_or_y(typed[i]) ? added_vowel : added_consonant;
}

int cost_of_dropped(std::string_view meant, std::size_t i) {
    if (is_doubled(meant, i)) return double_cost;
    return is_vowel_or_y(meant[i]) ? vowel_cost : consonant_cost;
}

std::uint32_t letter_set(std::string_view word) {
    std::uint32_t set = 0;
    for (const char c : word)
        set |= 1U << (static_cast<unsigned char>(c) & 31U);
    return set;
}

// A slip changes at most two letters of the set; most pairs need no table.
bool surely_over(std::string_view typed, std::string_view meant, int most) {
    const auto lengths = std::abs(static_cast<int>(typed.size()) - static_cast<int>(meant.size()));
    return lengths * least_cost > most ||
           std::popcount(letter_set(typed) ^ letter_set(meant)) * least_cost > 2 * most;
}

}

int slip_cost(std::string_view typed, std::string_view meant, int most) {
    if (typed.size() >= longest_compared || meant.size() >= longest_compared ||
        surely_over(typed, meant, most))
        return most + 1;
    using Row = std::array<int, longest_compared>;
    std::array<Row, 3> rows; // the row before the last one, that one, and this
    Row *before = &rows[0], *last = &rows[1], *row = &rows[2];
    (*last)[0] = 0;
    for (std::size_t j = 0; j < meant.size(); ++j)
        (*last)[j + 1] = (*last)[j] + cost_of_dropped(meant, j);
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const int added = cost_of_added(typed, i);
        (*row)[0] = (*last)[0] + added;
        int least = (*row)[0];
        for (std::size_t j = 0; j < meant.size(); ++j) {
            int cost = std::min({(*last)[j] + cost_of_wrong(typed[i], meant[j]),
                                 (*last)[j + 1] + added, (*row)[j] + cost_of_dropped(meant, j)});
            if (i > 0 && j > 0 && typed[i] == meant[j - 1] && typed[i - 1] == meant[j])
                cost = std::min(cost, (*before)[j - 1] + swap_cost);
            (*row)[j + 1] = cost;
            least = std::min(least, cost);
        }
        // a swap may still reach back over one row
        if (least > most &&
            *std::min_element(last->begin(),
                              last->begin() + static_cast<std::ptrdiff_t>(meant.size()) + 1) > most)
            return most + 1;
        std::swap(before, last);
        std::swap(last, row);
    }
    return std::min((*last)[meant.size()], most + 1);
}

}

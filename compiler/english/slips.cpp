// The distance of Damerau and Levenshtein (optimal string alignment) with a cost by kind of slip.
#include "compiler/english/slips.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace quoin::english {
namespace {

constexpr std::size_t longest_compared = 48;
constexpr int swap_cost = 3, double_cost = 3, wrong_vowel = 3, vowel_cost = 4, alike_cost = 4,
              added_vowel = 5, consonant_cost = 6, added_consonant = 6, near_key = 6,
              other_cost = 9;

constexpr std::uint32_t letter_bit(char c) { // of a small letter; 0 for what is none
    return c >= 'a' && c <= 'z' ? 1U << (c - 'a') : 0U;
}

constexpr std::uint32_t letters_of(std::string_view letters) {
    std::uint32_t set = 0;
    for (const char c : letters)
        set |= letter_bit(c);
    return set;
}

bool is_vowel_or_y(char c) {
    constexpr std::uint32_t vowels = letters_of("aeiouy");
    return (vowels & letter_bit(c)) != 0;
}

// Letters that sound alike or lie side by side on the keyboard.
constexpr std::array<std::uint32_t, 26> alike_letters = [] {
    std::array<std::uint32_t, 26> alike{};
    for (const std::string_view pair :
         {"cs", "ck", "sz", "mn", "td", "gj", "fv", "bp", "bv", "qw", "rt", "gh", "kl", "cx"}) {
        alike[static_cast<std::size_t>(pair[0] - 'a')] |= letter_bit(pair[1]);
        alike[static_cast<std::size_t>(pair[1] - 'a')] |= letter_bit(pair[0]);
    }
    return alike;
}();

bool alike(char a, char b) {
    return letter_bit(a) != 0 &&
           (alike_letters[static_cast<std::size_t>(a - 'a')] & letter_bit(b)) != 0;
}

// A key that lies beside the other on an American keyboard, in its row or in the next one.
bool are_near_keys(char typed, char meant) {
    constexpr std::array<std::string_view, 26> neighbours{
        "qswz",   "fghnv",  "dfsvx", "cefrsx", "drsw", "cdegrtv", "bfhrtvy", "bgjnuy", "jkou",
        "hikmnu", "jilmou", "kop",   "jkn",    "bhjm", "iklp",    "lo",      "aw",     "deft",
        "adewxz", "fgry",   "hijy",  "bcfg",   "aeqs", "cdsz",    "ghtu",    "asx"};
    return is_small_letter(typed) &&
           neighbours[static_cast<std::size_t>(typed - 'a')].find(meant) != std::string_view::npos;
}

int cost_of_wrong(char typed, char meant) {
    if (typed == meant) return 0;
    if (is_vowel_or_y(typed) && is_vowel_or_y(meant)) return wrong_vowel;
    if (alike(typed, meant)) return alike_cost;
    return are_near_keys(typed, meant) ? near_key : other_cost;
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

// The distance by rows, and of each those columns alone that few enough letters added or dropped
// lead to.
int cost_by_table(std::string_view typed, std::string_view meant, int most) {
    using Row = std::array<int, longest_compared>;
    const auto band = static_cast<std::size_t>(most / least_slip_cost);
    const int over = most + 1;
    std::array<Row, 3> rows; // the row before the last one, that one, and this
    Row dropped;
    Row *before = &rows[0], *last = &rows[1], *row = &rows[2];
    (*last)[0] = 0;
    for (std::size_t j = 0; j < meant.size(); ++j)
        (*last)[j + 1] = (*last)[j] + (dropped[j] = cost_of_dropped(meant, j));
    int last_least = 0;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const std::size_t begin = i > band ? i - band : 0;
        const std::size_t end = std::min(meant.size(), i + band + 1);
        const int added = cost_of_added(typed, i);
        (*row)[begin] = begin == 0 ? (*last)[0] + added : over;
        int least = (*row)[begin];
        for (std::size_t j = begin; j < end; ++j) {
            int cost = std::min({(*last)[j] + cost_of_wrong(typed[i], meant[j]),
                                 (*last)[j + 1] + added, (*row)[j] + dropped[j]});
            if (i > 0 && j > 0 && typed[i] == meant[j - 1] && typed[i - 1] == meant[j])
                cost = std::min(cost, (*before)[j - 1] + swap_cost);
            (*row)[j + 1] = cost;
            least = std::min(least, cost);
        }
        if (end < meant.size()) (*row)[end + 1] = over;
        // a swap may still reach back over one row
        if (least > most && last_least > most) return over;
        last_least = least;
        std::swap(before, last);
        std::swap(last, row);
    }
    return std::min((*last)[meant.size()], over);
}

}

int slip_cost(const Compared& typed, const Compared& meant, int most) {
    if (surely_over(typed, meant, most) || typed.word.size() >= longest_compared ||
        meant.word.size() >= longest_compared)
        return most + 1;
    return cost_by_table(typed.word, meant.word, most);
}

}

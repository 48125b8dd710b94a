// How likely one word is a slip for another: the slips of hand and ear that make it, weighed.
#pragma once

#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace quoin::english {

// Which letters a word in small letters has: most pairs are told apart by that.
constexpr std::uint32_t letter_set(std::string_view word) {
    std::uint32_t set = 0;
    for (const char c : word)
        set |= 1U << (static_cast<unsigned char>(c) & 31U);
    return set;
}

struct Compared {
    std::string_view word;
    std::uint32_t letters = letter_set(word);
};

constexpr int least_slip_cost = 3; // of any slip: three of them never pass for two

// A slip changes at most two letters of the set; most pairs need no table.
inline bool surely_over(const Compared& typed, const Compared& meant, int most) {
    const auto lengths =
        std::abs(static_cast<int>(typed.word.size()) - static_cast<int>(meant.word.size()));
    if (lengths * least_slip_cost > most) return true;
    int changed = 2 * (most / least_slip_cost);
    for (std::uint32_t left = typed.letters ^ meant.letters; left != 0; left &= left - 1)
        if (--changed < 0) return true;
    return false;
}

// The least cost of the slips that turn `meant` into `typed`, both in small letters: letters
// swapped, doubled or not, and a wrong vowel are cheap, another consonant is dear. `most` + 1 if it
// is over `most`.
int slip_cost(const Compared& typed, const Compared& meant, int most);
inline int slip_cost(std::string_view typed, std::string_view meant, int most) {
    return slip_cost(Compared{typed}, Compared{meant}, most);
}

}

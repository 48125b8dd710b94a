// How sure it is that a word which no list has is a slip for one near it, and not a word of
// somebody's trade: log-odds.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace quoin::english {

// Of the word that was typed.
struct UnknownWord {
    std::size_t length = 0;
    int oddness = 0; // of its letters: 0, hardly a word has a run of three of them, to 5
    bool compound = false;
    bool has_known_stem = false; // before an ending that makes words: fellness
    bool has_known_rest = false; // behind a beginning that makes words: immunoassays
};

class SlipOdds {
public:
    static constexpr int most_cost = 7; // of a slip, as slips.hpp has it, that tells anything

    void see(int cost, char rank); // a word near the typed one; rank as in WordList
    double of(const UnknownWord& typed) const;

private:
    static constexpr std::size_t rank_count = 4;

    std::array<int, rank_count> least_{most_cost + 1, most_cost + 1, most_cost + 1, most_cost + 1};
};

}

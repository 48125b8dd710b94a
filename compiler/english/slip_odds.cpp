// Weights of a logistic regression: 3,000 slips that were made at random of words of résumés
// (letters dropped, doubled, swapped, from the next key, by the sound) against words that the
// dictionary lacks: of the trades in tests/advice, rare English (SCOWL, size 80) and medicine
// (Debian's hunspell-en-med). At the odds that language.cpp tells from it takes 97 of 100 of the
// slips, and 8 of 100 of the rare words, which few write.
#include "compiler/english/slip_odds.hpp"

#include "compiler/english/word_list.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

constexpr double prior = -5.6;
// of a word of 4 letters, less than was found, for many of the trades are so short; 5, 6, 7, and
// more
constexpr std::array<double, 5> by_length{-3.5, -1.1, -0.7, -0.3, -0.2};
constexpr std::array<double, 6> by_oddness{1.4, -0.7, -0.8, -1.4, -1.8, -2.3};
constexpr double compound = -0.7, known_rest = -1.7, known_stem = -3.5;
constexpr double known_stem_of_slip = -1.5; // truely, close to a word in frequent use

// By the least cost of a slip for a word as frequent as that or more; least cost first.
struct CostStep {
    int most;
    std::array<double, 4> of_rank; // frequent, ordinary, met, rare
};
constexpr std::array<CostStep, 5> by_cost{{
    {3, {1.8, 2.6, 2.6, 5.4}},
    {4, {1.5, 2.2, 1.8, 5.0}},
    {5, {1.6, 1.5, 1.5, 4.8}},
    {6, {1.1, 1.5, 1.3, 5.5}},
    {7, {0.4, 0.6, 1.1, 1.2}},
}};

std::size_t place_of(char rank) {
    switch (rank) {
    case WordList::is_frequent:
        return 0;
    case WordList::is_ordinary:
    case WordList::is_of_resumes:
        return 1;
    case WordList::is_met:
        return 2;
    default:
        return 3;
    }
}

}

void SlipOdds::see(int cost, char rank) {
    int& least = least_[place_of(rank)];
    least = std::min(least, cost);
}

double SlipOdds::of(const UnknownWord& typed) const {
    constexpr std::size_t shortest = 4;
    double odds = prior;
    odds += by_length[std::min(std::max(typed.length, shortest) - shortest, by_length.size() - 1)];
    // units and short forms have odd letters too: mbar
    const int oddness = typed.length == shortest ? std::max(typed.oddness, 1) : typed.oddness;
    odds += by_oddness[static_cast<std::size_t>(oddness)];
    if (typed.compound) odds += compound;
    constexpr int close = 4;
    const bool is_close = std::min(least_[0], least_[1]) <= close;
    if (typed.has_known_stem) odds += is_close ? known_stem_of_slip : known_stem;
    if (typed.has_known_rest) odds += known_rest;
    int least = most_cost + 1;
    for (std::size_t i = 0; i < least_.size(); ++i) {
        least = std::min(least, least_[i]);
        const auto step =
            std::ranges::find_if(by_cost, [&](const CostStep& one) { return least <= one.most; });
        if (step != by_cost.end()) odds += step->of_rank[i];
    }
    return odds;
}

}

// The best choice there is: branch and bound. Bounds come from a relaxation, choices from what it
// takes, made to fit and improved. Work is counted in bounds worked out and not by the clock, so
// that the answer is the same every time; where it does not end in so many, the answer is the best
// that was found, with the bound that is proven.
#pragma once

#include "compiler/tailoring/problem.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>

namespace quoin::tailoring {

struct Choice {
    Taken taken;
    std::int64_t worth = 0;
    std::int64_t bound = 0; // no choice is worth more

    bool is_best() const { return worth == bound; }
};

constexpr std::size_t most_bounds = 6000;

// The lowest that is lawful; empty if nothing is.
Taken lowest_choice(const Problem& problem);

// None if nothing lawful fits: what must be taken is too high.
std::optional<Choice> choose(const Problem& problem, std::size_t bounds = most_bounds);

}

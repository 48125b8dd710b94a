// Optimum-fit line breaking: D. E. Knuth and M. F. Plass, "Breaking Paragraphs into Lines",
// Software: Practice and Experience 11 (1981) 1119-1184.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace quoin::lines {

// The paper's three kinds of item. A break is legal at a penalty under `infinite_penalty`, and at
// glue that follows a box.
struct Item {
    enum class Kind : std::uint8_t { box, glue, penalty };
    Kind kind{};
    double width = 0;
    double stretch = 0, shrink = 0; // glue
    double penalty = 0;             // penalty
    bool flagged = false;           // penalty
};

constexpr double infinite_penalty = 10000;

struct BreakingRules {
    double tolerance = 2;           // the most a line may stretch: the paper's rho
    double flagged_demerits = 3000; // alpha: two flagged lines in a row
    double fitness_demerits = 3000; // gamma: neighbours of unlike fitness
    std::size_t lines = 0;          // exactly so many; 0: as many as come out best
};

struct Break {
    std::size_t item = 0; // the line ends here
    double ratio = 0;     // adjustment ratio of the line
};

struct Breaking {
    std::vector<Break> breaks; // the last is the paragraph's end; empty if none is feasible
    double demerits = 0;
};

// The breaking of least total demerits for lines of one measure. The items end, as the paper has
// it, with finishing glue and a forced break.
Breaking break_justified(std::span<const Item> items, double measure, const BreakingRules& rules);

}

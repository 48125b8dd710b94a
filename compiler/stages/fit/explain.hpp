// Why a fit is as it is: what binds it, what the next better setting lacks, what is left over.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quoin::fit {

enum class Quantity { size, leading, side, top, bottom, gaps };
constexpr std::size_t quantity_count = 6;

struct Chosen { // size in pt, margins in inches, leading a ratio
    double value = 0;
    // Gaps have no bounds here: their value is the height of all together as a share of what it is
    // at the preferred ones, so that 1 is preferred.
    theme::Preference bounds;
};

// One quantity a step nearer to its preferred value, all else the same: size 0.1 pt, leading 0.01,
// margins 0.01 inch, every gap 0.01 em, to the next whole step.
struct NextBetter {
    Quantity quantity{};
    double value = 0;
    double missing = 0; // pt of height, on each page
};

struct LoneWord { // the last line of a paragraph of several: one word, under a quarter of the
                  // measure
    std::size_t paragraph = 0;
    std::string word;
};

struct Explanation {
    std::size_t pages = 0;
    std::array<Chosen, quantity_count> chosen; // in the order of Quantity
    bool is_opened = false;                    // beyond what is preferred, into the room there is
    // A page is full to within a hundredth of a point; a slightly narrower measure takes more
    // lines.
    bool height_binds = false, measure_binds = false;
    // Of the first quantity, in their order, whose step does not fit; none if all is as preferred.
    std::optional<NextBetter> next_better;
    double preferred_missing = 0; // pt of height, on each page; 0 if the preferred setting holds it
    double room = 0;              // pt, at the foot of the last page
    double line = 0;              // pt, of a line of text
    std::vector<double> fullness; // of each page, 0 to 1
    std::vector<LoneWord> lone_words;

    bool is_preferred(Quantity which) const;
    bool is_at_least(Quantity which) const;
};

Explanation explain(const composition::Composition& composition, const theme::Theme& theme,
                    const model::Settings& settings, const Fit& fit);

// How full each page is, from 0 to 1; of two columns the fuller one.
std::vector<double> page_fullness(const composition::Composition& composition, const Fit& fit);

}

// Where an underline is drawn: under the baseline, and clear of the letters that reach through it.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"

#include <vector>

namespace quoin::pdf {

struct Stretch { // pt from a run's start
    double begin = 0, end = 0;
};

struct Underline {
    double middle = 0, thickness = 0; // em; the middle lies under the baseline
    std::vector<Stretch> stretches;
};

// The face's own line within 0.08 to 0.14 em below the baseline, no thicker than that.
Underline underline_of(const composition::Run& run, const pages::PlacedRun& placed);

}

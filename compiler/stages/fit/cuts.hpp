// The cheapest cuts that bring a résumé which is too long onto its pages at the smallest setting.
//
// Whole pieces are offered first, as advisers have it (common practice): a high school beside a
// college, then bullets beyond five in an entry, the last ones first; no more of them than are
// needed, and none that the others make needless.
//
// What is still too much is shortened: each text by one run of words as
// compiler/stages/fit/shorten.hpp has it, or a whole bullet, not the first of its entry. Of all
// sets of such cuts that save height enough the one of fewest characters is taken, and of equals
// the one of fewest cuts. On one page the height is additive and the set the least there is; on
// several, where pages may end matters too, and the set is the least for the height that proves to
// be enough. Of two columns each that is too long is shortened by itself.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace quoin::fit {

struct Cut {
    enum class Kind { entry, bullet, words };
    Kind kind = Kind::words;
    std::uint32_t paragraph = 0;
    std::uint32_t paragraphs = 1; // entries, and bullets with inner ones: that go together
    int lines = 0;                // that it saves
    std::size_t characters = 0;   // Unicode characters that go, spaces and separators too
    std::string words;            // words: those that go
    std::string last_lines;       // words: what the last `lines` lines hold as yet
    std::vector<Place> places; // of what goes, one a source line; for whole pieces, of their text
};

struct Cuts {
    std::vector<Cut> pieces; // in the order of the résumé
    std::vector<Cut> words;  // the fewest characters for each line saved first
    // The pieces are enough by themselves; `words` are enough too, in their stead.
    bool either = false;
    // The pieces and words together, or either alone, are enough.
    bool enough = false;
    // No: of so many ways to shorten a text, only the first were tried.
    bool all_tried = true;
};

// For a résumé that fit() finds too long.
Cuts cheapest_cuts(const composition::Composition& composition, const theme::Theme& theme,
                   const model::Settings& settings);

// Beyond this, shortening is no help, and only whole pieces are offered.
constexpr int most_lines_to_trim = 24;

}

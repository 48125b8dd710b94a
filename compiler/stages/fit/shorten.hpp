// What a text may lose to save lines. Its units are words, parted where a line may end at a space,
// or the items of a list. A parenthesis, a quotation, and what the writer marked as one go whole.
// What goes is one run of units next to each other, with the space or separator before it; the
// first unit of a text opens it and stays; so does a word with a figure, for a measured result is
// what a reader looks for (common practice).
#pragma once

#include "compiler/stages/composition/composition.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace quoin::fit {

struct TextRange { // bytes [begin, end) of a paragraph's text, its label's left out
    std::size_t begin = 0, end = 0;
};

std::string text_of(const composition::Paragraph& paragraph);
composition::Paragraph without(const composition::Paragraph& paragraph, TextRange range);

// All that may go, in the text's order.
std::vector<TextRange> removable_runs(const composition::Paragraph& paragraph);

struct Shortening {
    int lines = 0;              // that it saves
    std::size_t characters = 0; // Unicode characters that go
    TextRange range;
};

// For each number of lines, 1 and up to `most`, the run of fewest characters whose removal saves as
// many, the last of several; every count is that of the shortened text broken anew. None for a
// text of more than `most_units`. What is measured for it is taken off `bytes_left`; where that
// does not suffice it is 0, and some were not tried.
std::vector<Shortening> shortenings(const composition::Paragraph& paragraph, double measure,
                                    int most, std::size_t& bytes_left);

// Of text, each time that it is measured, for all of a résumé: four times what a page of bullets of
// twelve lines each needs.
constexpr std::size_t most_measured = 50'000'000;
constexpr std::size_t most_units = 300; // some 20 lines

}

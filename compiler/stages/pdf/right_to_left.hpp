// Words that are read from right to left, in a line that runs from left to right.
#pragma once

#include "compiler/stages/pdf/shown_glyphs.hpp"

#include <span>

namespace quoin::pdf {

// Moves the glyphs of each such stretch of a line, by their offsets alone, so that the first stands
// right (Unicode Standard Annex #9, rule L2, at level 1): they stay in reading order, in which an
// extractor gets them. Signs and white between two such letters are the stretch's; figures and
// letters of the other direction end it. `tracking` and `word_space` are em added to each glyph and
// each space.
void set_right_to_left(std::span<ShownGlyph> line, double tracking, double word_space);

}

// Words that are read from right to left, in a line that runs from left to right.
#pragma once

#include "compiler/stages/pdf/shown_glyphs.hpp"

#include <span>

namespace quoin::pdf {

// Turns each such stretch of a line round, so that its glyphs come as they stand (Unicode Standard
// Annex #9, rule L2, at level 1). Signs and white between two letters of a stretch are its own;
// figures, brackets and letters of the other direction end it. Most writers of PDFs put such glyphs
// down in this order, and readers that turn them back expect it; those that take glyphs as they
// come give the letters the other way round, in whatever order they are put.
void set_right_to_left(std::span<ShownGlyph> line);

}

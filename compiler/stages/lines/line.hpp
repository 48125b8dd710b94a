// A line of a paragraph, as it is broken and before it has a place.
#pragma once

#include <cstdint>

namespace quoin::lines {

struct Line { // glyphs [begin, end) of a paragraph, its label's left out
    struct Position {
        std::uint32_t run = 0;
        std::uint32_t glyph = 0;
    };
    Position begin, end;
    double width = 0;      // em, without the spaces at its end
    double word_space = 0; // em, added at each space of the line when justified
    bool hyphen = false;
};

}

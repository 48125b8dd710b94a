// Shaping: characters to glyphs, by HarfBuzz, in font units; never done twice for one text.
#pragma once

#include "compiler/stages/fonts/fonts.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::fonts {

struct Glyph {
    std::uint32_t id = 0;
    std::int32_t advance = 0;                // font units, kerning included
    std::int32_t x_offset = 0, y_offset = 0; // font units
    std::uint32_t text_begin = 0;  // the bytes of the shaped text this glyph stands for; a
    std::uint32_t text_length = 0; // ligature has several characters
};

struct ShapingFeatures {
    bool small_caps = false;
    bool oldstyle_figures = false; // but beside capitals, signs and units, where all is high
    bool ligatures = true;         // never in addresses, whose letters are read one by one
    std::string language{};        // BCP 47
};

// Glyphs of `text` in order of reading. U+00A0 is shaped as a space, and U+2010 and U+2011 as
// U+2010 or, where the face lacks that, as U+002D: extractors then give what a reader would type.
// U+00AD, U+200B, U+2060 and U+FEFF give no glyph. A glyph whose id is 0 is missing from the face.
// Letters that are read from right to left are not yet set so (pdf/right_to_left.hpp).
std::vector<Glyph> shape(const Face& face, std::string_view text, const ShapingFeatures& features);

}

// The glyphs of a line with the text that each stands for, as a reader of the PDF shall get it.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"

#include <cstdint>
#include <string_view>
#include <vector>

namespace quoin::pdf {

struct ShownGlyph {
    std::uint32_t id = 0;
    double advance = 0;                // em
    double x_offset = 0, y_offset = 0; // em
    bool space = false;                // stretched when a line is justified
    std::string_view text;             // UTF-8, never empty; lives as long as the composition
    // Set on the first glyph of a cluster that has more glyphs than characters: what they are
    // together, and how many they are.
    std::string_view actual_text;
    std::uint32_t actual_length = 0;
};

// The glyphs of a placed run, the hyphen at a line's end among them. The text of a cluster of
// several glyphs is shared out, a character each and the rest to the last, for some readers take
// no glyph without a text. A no-break space or hyphen gives what a reader would type.
std::vector<ShownGlyph> shown_glyphs(const composition::Paragraph& paragraph,
                                     const pages::PlacedRun& placed);

}

#include "compiler/stages/pdf/right_to_left.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/characters.hpp"

#include <cstddef>

namespace quoin::pdf {

namespace {

using Line = std::span<ShownGlyph>;

char32_t code_of(const ShownGlyph& glyph) {
    return first_character(glyph.text).code;
}

// Nearly all glyphs of nearly all lines are not: by the first byte of the first such letter,
// U+0590.
bool may_be_right_to_left(const ShownGlyph& glyph) {
    return static_cast<unsigned char>(glyph.text.front()) >= 0xD6;
}

// Up to the last letter of the stretch, with its marks.
std::size_t end_of_stretch(Line line, std::size_t begin) {
    std::size_t end = begin;
    for (std::size_t i = begin; i < line.size(); ++i) {
        const char32_t code = code_of(line[i]);
        if (composition::parts_right_to_left(code)) break;
        if (composition::is_right_to_left(code) || (end == i && composition::is_mark(code)))
            end = i + 1;
    }
    return end;
}

void set_stretch(Line stretch, double tracking, double word_space) {
    const auto advance_of = [&](const ShownGlyph& glyph) {
        return glyph.advance + tracking + (glyph.space ? word_space : 0);
    };
    double right = 0;
    for (const ShownGlyph& glyph : stretch)
        right += advance_of(glyph);
    double pen = 0;
    for (ShownGlyph& glyph : stretch) {
        const double advance = advance_of(glyph);
        right -= advance;
        glyph.x_offset += right - pen;
        pen += advance;
    }
}

}

void set_right_to_left(std::span<ShownGlyph> line, double tracking, double word_space) {
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (!may_be_right_to_left(line[i]) || !composition::is_right_to_left(code_of(line[i])))
            continue;
        const std::size_t end = end_of_stretch(line, i);
        set_stretch(line.subspan(i, end - i), tracking, word_space);
        i = end - 1;
    }
}

}

#include "compiler/stages/pdf/right_to_left.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/characters.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>

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

// What a cluster of several glyphs stands for is told by the first of them.
void tell_first(Line stretch) {
    for (std::size_t i = 0; i < stretch.size(); ++i) {
        const std::uint32_t count = stretch[i].actual_length;
        if (count < 2 || count > i + 1) continue;
        ShownGlyph& first = stretch[i + 1 - count];
        std::swap(first.actual_text, stretch[i].actual_text);
        std::swap(first.actual_length, stretch[i].actual_length);
    }
}

}

void set_right_to_left(std::span<ShownGlyph> line) {
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (!may_be_right_to_left(line[i]) || !composition::is_right_to_left(code_of(line[i])))
            continue;
        const std::size_t end = end_of_stretch(line, i);
        std::ranges::reverse(line.subspan(i, end - i));
        tell_first(line.subspan(i, end - i));
        i = end - 1;
    }
}

}

// A face cut down to the glyphs that a document shows, as it is embedded.
#pragma once

#include "compiler/stages/fonts/fonts.hpp"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace quoin::pdf {

struct SubsetFont {
    std::string program;                             // an sfnt with glyf outlines, or CFF alone
    std::map<std::uint32_t, std::uint32_t> glyph_of; // by the face's glyph id: the subset's
    std::vector<double> widths;                      // of the subset's glyphs, in 1/1000 em
    bool cid_keyed = false; // glyphs are shown by the ids that they have in the face
};

// Throws std::runtime_error if the face cannot be subset.
SubsetFont subset_font(const fonts::Face& face, const std::vector<std::uint32_t>& glyphs);

// What goes before the font's name (ISO 32000-1, section 9.6.4): `KQXBAF+`, from the program.
std::string subset_tag(std::string_view program);

}

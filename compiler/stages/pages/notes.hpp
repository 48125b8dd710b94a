// Numbered notes on pages: what is said of some words, and of which.
#pragma once

#include "compiler/stages/pages/text_areas.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace quoin::pages {

// A flag in the margin that bears the note's number.
struct Flag {
    double left = 0, bottom = 0, width = 0, height = 0; // pt
    bool points_right = true;                           // at words to its right
};

struct Note { // on one page
    std::size_t page = 0;
    std::uint32_t element = 0; // of the composition: the block that the words belong to
    std::string number;        // figures
    std::string subject;
    std::string brief, full;   // what the marked words say, and what the flag says
    theme::Colour flag_colour; // figures stand on it in white
    theme::Colour words_colour;
    std::vector<TextArea> words; // all on `page`; empty if the note is about none there
    TextArea beside;             // its first words, or those it stands nearest to
    Flag flag;
};

// Gives every note its flag: level with what it is beside, in the nearer side margin, `margin` pt
// wide; no two over each other, those of one line with their numbers rising from left to right.
constexpr double flag_figures = 8; // pt, their size

void place_flags(std::vector<Note>& notes, const Pages& pages, double margin);

}

// Pages: everything at its place. Points from the page's lower left corner, as PDF has them.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/fit.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace quoin::pages {

// The paragraphs of runs that are artifacts: `Composition::running_head`, and those of
// `Composition::continued` by their index.
constexpr std::uint32_t running_head_index = 0xFFFFFFFF;
constexpr std::uint32_t continued_index(std::size_t index) {
    return running_head_index - 1 - static_cast<std::uint32_t>(index);
}

constexpr theme::Colour pale_colour{0xc6, 0xc6, 0xc6}; // of what is not to be looked at

struct PlacedRun { // glyphs [begin, end) of one run on one line
    std::uint32_t paragraph = 0;
    std::uint32_t run = 0;
    std::uint32_t begin = 0, end = 0;
    double x = 0, y = 0;   // of the first glyph's origin, on the baseline
    double size = 0;       // pt
    double word_space = 0; // pt, added at each space
    double width = 0;    // pt, advance, for links and underlines; without spaces at the line's end
    bool hyphen = false; // a hyphen (U+00AD) follows the last glyph
    bool pale = false;   // in the pale colour, not its run's own
};

bool is_artifact(const PlacedRun& placed);

const composition::Paragraph& paragraph_of(const composition::Composition& composition,
                                           const PlacedRun& placed);

struct PlacedRule {                                // decoration: an artifact
    double x = 0, y = 0, width = 0, thickness = 0; // y of its middle
    theme::Colour colour;
};

struct PlacedIcon {         // decoration: an artifact
    std::uint32_t icon = 0; // of the composition
    double x = 0, y = 0;    // of its square's lower left corner
    double size = 0;        // of its square's side
    bool pale = false;
};

struct Page {
    std::vector<PlacedRun> runs; // in reading order
    std::vector<PlacedRule> rules;
    std::vector<PlacedIcon> icons;
};

struct Pages {
    double width = 0, height = 0; // pt
    std::vector<Page> pages;
};

// Of a document that has `before` pages already; so its pages are numbered.
Pages make_pages(const composition::Composition& composition, const fit::Fit& fit,
                 std::size_t before = 0);

// A rule across the whole paper under the text of a draft's last allowed page, counted from 1.
void mark_end(Pages& pages, const fit::PageSetting& setting, std::size_t page);

}

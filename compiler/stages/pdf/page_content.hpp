// One page drawn: its runs as tagged text, its rules and underlines as artifacts, its links.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/pdf/font_book.hpp"
#include "compiler/stages/pdf/structure_tree.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace quoin::pdf {

struct LinkArea { // of one line
    std::uint32_t element = 0;
    double left = 0, bottom = 0, right = 0, top = 0;
};

std::vector<LinkArea> link_areas(const composition::Composition& composition,
                                 const pages::Page& page);

// The content stream; marks what it shows in `structure`. Links go in between, by `annotate`, so
// that they stand in the structure after the content they belong to.
std::string page_content(const composition::Composition& composition, const pages::Page& page,
                         std::size_t number, const FontBook& fonts, StructureTree& structure);

}

// Where on a page which letters are used, from `pdftohtml -xml -i -zoom 3`.
#pragma once

#include "compiler/portal/reading.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct StyledText { // a piece of a line in one font
    std::size_t page = 0;
    ReadBox box;
    std::size_t font = 0; // those of one family, size and colour have one number
    double size = 0;      // pt
    bool strong = false, slanted = false;
};

std::vector<StyledText> read_styles(std::string_view xml); // in the order they are written

}

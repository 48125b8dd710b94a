// How gladly a line may end at each place.
#pragma once

#include "compiler/stages/theme/theme.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace quoin::composition {

struct LineEnd {
    std::size_t offset = 0; // bytes; of the next line's first character
    double penalty = 0;
    bool hyphen = false;
    std::size_t left_out = 0; // bytes before it: the pattern's separator, which parts nothing then
};

struct LineEndText {
    std::string_view text;
    std::vector<std::size_t> soft_hyphens;  // where a word may be divided
    std::vector<std::size_t> literal_bytes; // begin, end, begin, end … of the pattern's own words
    theme::StyleName style{};
    bool english = false;
    std::vector<std::size_t> kept_bytes{}; // begin, end, begin, end … of what holds together
    bool comma_list = false;               // of items that commas part
};

// A sign that stands between two things and belongs to neither: a dot, a bar, a bullet.
bool is_separator(std::string_view word);

std::vector<LineEnd> line_ends(const LineEndText& text);

}

// Words of which a reader aloud has to know more: their language, or what they are short for.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::composition {

struct GlossedRange { // bytes [begin, end) of a text
    std::size_t begin = 0, end = 0;
    std::uint32_t gloss = 0; // index
};

// Where the glosses' words stand in a text between the ends of words, the longest where several
// do. Typographic signs stand for the typed ones, and a space that does not break for one that
// does. In all capitals the words are looked for in capitals of `language` (BCP 47).
std::vector<GlossedRange> glossed_ranges(std::string_view text,
                                         std::span<const model::Gloss> glosses, bool all_capitals,
                                         const std::string& language);

}

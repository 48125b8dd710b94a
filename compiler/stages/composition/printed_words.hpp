// Source places at their words: what of the composition was made from a place.
#pragma once

#include "compiler/base/place.hpp"
#include "compiler/stages/composition/composition.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace quoin::composition {

struct TextBytes { // bytes [begin, end) of a paragraph's text, its label's left out
    std::uint32_t paragraph = 0;
    std::size_t begin = 0, end = 0;
};

// In the order of the page. Of a piece that is printed in another form than typed (a date, say)
// all that was made of it.
std::vector<TextBytes> printed_words(const Place& place, const Composition& composition);

}

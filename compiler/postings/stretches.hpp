// A posting cut into stretches: a heading with what stands below it, or, where no heading stands
// above, a sentence.
#pragma once

#include "compiler/postings/lines.hpp"

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

namespace quoin::postings {

struct Piece { // a heading, or a sentence of a line
    std::string_view text;
    std::size_t line = 0; // index
    bool heading = false;
};

struct Stretch {
    std::vector<Piece> pieces; // its heading first, if it has one
    bool headed = false;
    bool title = false;
    bool goes_on = false; // in the paragraph of the stretch before it

    std::string_view heading() const { return headed ? pieces.front().text : std::string_view{}; }
};

// They look into `lines`.
std::vector<Stretch> stretches_of(std::span<const Line> lines);

// At stops that end one and at semicolons; points of abbreviations and of names end none.
std::vector<std::string_view> sentences_of(std::string_view text);

}

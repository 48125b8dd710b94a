// What there is to choose from, as plain data: a tree of pieces with heights and worths, and the
// terms that they show. Which of them is a section, an entry or a bullet does not matter here.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace quoin::tailoring {

constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

// What is asked for: the first piece that shows it is worth so much, a second one so much more, and
// further ones nothing. `second` is no more than `first`.
struct Term {
    std::int64_t first = 0, second = 0;
};

struct Piece {
    std::size_t within = none;          // the piece that it is a part of, which stands before it
    std::int64_t height = 0;            // its own, without its parts; never less than nothing
    std::int64_t worth = 0;             // by itself, whatever it shows; never less than nothing
    std::vector<std::size_t> shows{};   // terms, each once
    bool must = false;                  // taken whenever what it is a part of is
    std::size_t least = 0, most = none; // of its parts, when it is taken
};

struct Problem {
    std::vector<Term> terms;
    std::vector<Piece> pieces;
    std::int64_t capacity = 0; // that the heights taken are no more than, together
};

using Taken = std::vector<bool>; // one a piece

// The parts of each piece, in order; last, those that are parts of none.
std::vector<std::vector<std::size_t>> parts_of(const Problem& problem);

// A part with what it is a part of, each piece that must be, and of parts no fewer and no more than
// are allowed. Whether they fit is another matter.
bool is_lawful(const Problem& problem, const Taken& taken);

std::int64_t height_of(const Problem& problem, const Taken& taken);
std::int64_t worth_of(const Problem& problem, const Taken& taken);

}

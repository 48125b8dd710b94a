// What is settled of the pieces already, and what follows from it.
#pragma once

#include "compiler/tailoring/problem.hpp"

#include <cstddef>
#include <vector>

namespace quoin::tailoring {

enum class Settled : signed char { free, in, out };

class Fixing {
public:
    // Both outlive this.
    Fixing(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts);

    Settled operator[](std::size_t piece) const { return settled_[piece]; }
    bool is_free(std::size_t piece) const { return settled_[piece] == Settled::free; }

    // With what must be once it is taken, or left out; false if that contradicts what is settled.
    bool take(std::size_t piece);
    bool leave_out(std::size_t piece);

private:
    bool settle(std::size_t piece, Settled as);

    const Problem* problem_;
    const std::vector<std::vector<std::size_t>>* parts_;
    std::vector<Settled> settled_;
};

}

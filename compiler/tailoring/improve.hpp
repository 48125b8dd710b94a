// From a lawful choice to a good one that fits: the least loss for the height that is too much, the
// greatest gain for the height that is left, then changes of one thing for another.
#pragma once

#include "compiler/tailoring/arrangement.hpp"
#include "compiler/tailoring/problem.hpp"
#include "compiler/tailoring/relaxation.hpp"

#include <cstddef>
#include <vector>

namespace quoin::tailoring {

class Improver {
public:
    // All outlive this. What comes in brings the parts with it that the relaxation picks.
    Improver(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts,
             const Relaxation& relaxation);

    // False if it does not come to fit.
    bool lower(Arrangement& arrangement) const;
    void fill(Arrangement& arrangement) const;
    void exchange(Arrangement& arrangement) const;

private:
    struct Change {
        std::vector<std::size_t> out, in;
        bool is_any() const { return !out.empty() || !in.empty(); }
    };

    std::vector<std::size_t> coming_parts(std::size_t piece, bool all_picked) const;
    // A piece that comes, with as many parts as are picked, or as few as there must be.
    std::vector<std::size_t> with_parts(std::size_t piece, bool all_picked) const;
    std::vector<std::vector<std::size_t>> that_may_come() const;
    Change best_exchange(Arrangement& arrangement) const;
    std::int64_t height(const std::vector<std::size_t>& pieces) const;

    const Problem& problem_;
    const std::vector<std::vector<std::size_t>>& parts_;
    const Relaxation& relaxation_;
};

}

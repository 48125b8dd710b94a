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
    using Pieces = std::vector<std::size_t>;

    // All outlive this. What comes in brings the parts with it that the relaxation picks. After so
    // many looks at pieces it only makes fit what does not.
    Improver(const Problem& problem, const std::vector<Pieces>& parts, const Relaxation& relaxation,
             std::size_t looks);

    // False if it does not come to fit.
    bool lower(Arrangement& arrangement);
    void fill(Arrangement& arrangement);
    void exchange(Arrangement& arrangement);

private:
    struct Change {
        Pieces out, in;
        bool is_any() const { return !out.empty() || !in.empty(); }
    };

    struct Lowering {
        Change change;
        double loss = 0; // of worth, for a unit of height
    };
    struct Tried { // what a change makes of an arrangement
        std::int64_t worth = 0, height = 0;
    };

    bool look(std::size_t pieces); // false once there have been too many
    Tried tried(Arrangement& arrangement, const Pieces& out, const Pieces& in);
    void offer(Arrangement& arrangement, const Pieces& out, const Pieces& in, Lowering& best);
    Change best_lowering(Arrangement& arrangement, const std::vector<Pieces>& coming);
    void drop(Arrangement& arrangement);
    Pieces best_coming(Arrangement& arrangement, const std::vector<Pieces>& coming);
    Pieces coming_parts(std::size_t piece, bool all_picked) const;
    // A piece that comes, with as many parts as are picked, or as few as there must be.
    Pieces with_parts(std::size_t piece, bool all_picked) const;
    std::vector<Pieces> least_coming() const;
    std::vector<Pieces> that_may_come() const;
    Change best_exchange(Arrangement& arrangement);
    std::int64_t height(const Pieces& pieces) const;

    const Problem& problem_;
    const std::vector<Pieces>& parts_;
    const Relaxation& relaxation_;
    std::size_t left_;
};

}

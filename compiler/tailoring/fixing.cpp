#include "compiler/tailoring/fixing.hpp"

namespace quoin::tailoring {

Fixing::Fixing(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts)
    : problem_(&problem), parts_(&parts), settled_(problem.pieces.size(), Settled::free) {
    for (const std::size_t piece : parts.back())
        if (problem.pieces[piece].must) take(piece);
}

// True if it was not so before and may be.
bool Fixing::settle(std::size_t piece, Settled as) {
    if (settled_[piece] != Settled::free) return false;
    settled_[piece] = as;
    return true;
}

bool Fixing::take(std::size_t piece) {
    if (!settle(piece, Settled::in)) return settled_[piece] == Settled::in;
    const std::size_t within = problem_->pieces[piece].within;
    if (within != none && !take(within)) return false;
    for (const std::size_t part : (*parts_)[piece])
        if (problem_->pieces[part].must && !take(part)) return false;
    return true;
}

bool Fixing::leave_out(std::size_t piece) {
    if (!settle(piece, Settled::out)) return settled_[piece] == Settled::out;
    for (const std::size_t part : (*parts_)[piece])
        if (!leave_out(part)) return false;
    const Piece& left = problem_->pieces[piece];
    return !left.must || left.within == none || leave_out(left.within);
}

}

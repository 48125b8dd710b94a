// Bounds by Lagrangian relaxation: height has a price, and a term that is shown has one too, so
// that every piece has a value of its own and the best of a tree is put together from the best of
// its parts. At any prices that is no less than what can be had; at the best ones it is what the
// linear programme gives.
#pragma once

#include "compiler/tailoring/fixing.hpp"
#include "compiler/tailoring/problem.hpp"

#include <cstddef>
#include <vector>

namespace quoin::tailoring {

struct Prices {
    double height = 0;         // of a unit
    std::vector<double> terms; // that a piece is paid for showing it
};

class Relaxation {
public:
    // Both outlive this.
    Relaxation(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts);

    // No lawful choice under `fixing` that fits is worth more; less than nothing without end if
    // there is none.
    double bound(const Prices& prices, const Fixing& fixing);

    // Of the last bound: what it takes, which is lawful, and may be too high.
    const Taken& taken() const { return taken_; }
    // What it would take of the parts of each piece, were that taken.
    bool picks(std::size_t piece) const { return picked_[piece]; }
    double value(std::size_t piece) const { return values_[piece]; }
    // By how much the bound is lower with the piece taken, or with it left out.
    double loss_in(std::size_t piece) const { return loss_in_[piece]; }
    double loss_out(std::size_t piece) const { return loss_out_[piece]; }

    // What is left of the capacity, and how often each term is shown beyond what is paid for.
    double height_left() const { return height_left_; }
    const std::vector<double>& terms_beyond() const { return terms_beyond_; }

    // The lowest choice under `fixing`; empty if none is lawful.
    Taken lowest(const Fixing& fixing);

private:
    double best_of(const Fixing& fixing);
    double pick_parts(std::size_t piece, const Fixing& fixing);
    void weigh_exchanges(std::size_t needed, std::size_t room, std::size_t picked);
    void take_picked(const Fixing& fixing);
    void count(const Prices& prices);

    const Problem& problem_;
    const std::vector<std::vector<std::size_t>>& parts_;
    std::vector<double> values_, loss_in_, loss_out_, terms_beyond_;
    std::vector<bool> picked_;
    Taken taken_;
    double height_left_ = 0;
    std::vector<std::size_t> optional_; // parts of one piece, the most valuable first
};

}

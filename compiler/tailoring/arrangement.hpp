// A choice that is changed piece by piece, its height and worth kept along.
#pragma once

#include "compiler/tailoring/problem.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace quoin::tailoring {

class Arrangement {
public:
    // Both outlive this.
    Arrangement(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts);

    void assign(const Taken& taken);
    void put_in(std::span<const std::size_t> pieces);
    void take_out(std::span<const std::size_t> pieces);

    const Taken& taken() const { return taken_; }
    bool has(std::size_t piece) const { return taken_[piece]; }
    std::int64_t height() const { return height_; }
    std::int64_t worth() const { return worth_; }
    bool fits() const { return height_ <= problem_.capacity; }

    // Whether the law allows one with all below it to go, another to come, or both: none is no
    // piece.
    bool may_go(std::size_t piece) const;
    bool may_come(std::size_t piece) const;
    bool may_change(std::size_t going, std::size_t coming) const;

    // A piece that is taken, with all that is taken below it.
    std::vector<std::size_t> branch(std::size_t piece) const;

private:
    void put_in(std::size_t piece);
    void take_out(std::size_t piece);

    const Problem& problem_;
    const std::vector<std::vector<std::size_t>>& parts_;
    Taken taken_;
    std::vector<std::size_t> counts_; // of parts that are taken
    std::vector<std::size_t> shown_;  // how often each term is
    std::int64_t height_ = 0, worth_ = 0;
};

}

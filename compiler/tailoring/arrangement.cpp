#include "compiler/tailoring/arrangement.hpp"

#include <algorithm>

namespace quoin::tailoring {

Arrangement::Arrangement(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts)
    : problem_(problem), parts_(parts), taken_(problem.pieces.size()),
      counts_(problem.pieces.size()), shown_(problem.terms.size()) {}

void Arrangement::assign(const Taken& taken) {
    taken_.assign(taken_.size(), false);
    std::ranges::fill(counts_, std::size_t{0});
    std::ranges::fill(shown_, std::size_t{0});
    height_ = worth_ = 0;
    for (std::size_t p = 0; p < taken.size(); ++p)
        if (taken[p]) put_in(p);
}

void Arrangement::put_in(std::span<const std::size_t> pieces) {
    for (const std::size_t piece : pieces)
        put_in(piece);
}

void Arrangement::take_out(std::span<const std::size_t> pieces) {
    for (const std::size_t piece : pieces)
        take_out(piece);
}

void Arrangement::put_in(std::size_t piece) {
    const Piece& put = problem_.pieces[piece];
    taken_[piece] = true;
    if (put.within != none) ++counts_[put.within];
    height_ += put.height;
    worth_ += put.worth;
    for (const std::size_t term : put.shows) {
        const std::size_t before = shown_[term]++;
        if (before == 0) worth_ += problem_.terms[term].first;
        if (before == 1) worth_ += problem_.terms[term].second;
    }
}

void Arrangement::take_out(std::size_t piece) {
    const Piece& out = problem_.pieces[piece];
    taken_[piece] = false;
    if (out.within != none) --counts_[out.within];
    height_ -= out.height;
    worth_ -= out.worth;
    for (const std::size_t term : out.shows) {
        const std::size_t after = --shown_[term];
        if (after == 0) worth_ -= problem_.terms[term].first;
        if (after == 1) worth_ -= problem_.terms[term].second;
    }
}

bool Arrangement::may_go(std::size_t piece) const {
    const Piece& going = problem_.pieces[piece];
    if (!taken_[piece] || going.must) return false;
    return going.within == none || counts_[going.within] > problem_.pieces[going.within].least;
}

bool Arrangement::may_come(std::size_t piece) const {
    const std::size_t within = problem_.pieces[piece].within;
    if (taken_[piece]) return false;
    return within == none || (taken_[within] && counts_[within] < problem_.pieces[within].most);
}

bool Arrangement::may_change(std::size_t going, std::size_t coming) const {
    if (going == none) return coming == none || may_come(coming);
    if (coming == none) return may_go(going);
    const std::size_t within = problem_.pieces[coming].within;
    if (problem_.pieces[going].within == within)
        return taken_[going] && !taken_[coming] && !problem_.pieces[going].must;
    for (std::size_t above = within; above != none; above = problem_.pieces[above].within)
        if (above == going) return false;
    return may_go(going) && may_come(coming);
}

std::vector<std::size_t> Arrangement::branch(std::size_t piece) const {
    std::vector<std::size_t> pieces{piece};
    for (std::size_t i = 0; i < pieces.size(); ++i)
        for (const std::size_t part : parts_[pieces[i]])
            if (taken_[part]) pieces.push_back(part);
    return pieces;
}

}

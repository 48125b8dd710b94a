#include "compiler/tailoring/relaxation.hpp"

#include <algorithm>
#include <limits>

namespace quoin::tailoring {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

}

Relaxation::Relaxation(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts)
    : problem_(problem), parts_(parts), values_(problem.pieces.size()),
      loss_in_(problem.pieces.size()), loss_out_(problem.pieces.size()),
      terms_beyond_(problem.terms.size()), picked_(problem.pieces.size()),
      taken_(problem.pieces.size()) {}

double Relaxation::bound(const Prices& prices, const Fixing& fixing) {
    for (std::size_t p = 0; p < values_.size(); ++p) {
        const Piece& piece = problem_.pieces[p];
        double value = static_cast<double>(piece.worth);
        value -= prices.height * static_cast<double>(piece.height);
        for (const std::size_t term : piece.shows)
            value += prices.terms[term];
        values_[p] = value;
    }
    double sum = best_of(fixing) + prices.height * static_cast<double>(problem_.capacity);
    for (std::size_t t = 0; t < problem_.terms.size(); ++t) {
        const Term& term = problem_.terms[t];
        sum += std::max(0.0, static_cast<double>(term.first) - prices.terms[t]);
        sum += std::max(0.0, static_cast<double>(term.second) - prices.terms[t]);
    }
    if (sum > -infinite) {
        take_picked(fixing);
        count(prices);
    }
    return sum;
}

Taken Relaxation::lowest(const Fixing& fixing) {
    for (std::size_t p = 0; p < values_.size(); ++p)
        values_[p] = -static_cast<double>(problem_.pieces[p].height);
    if (best_of(fixing) == -infinite) return {};
    take_picked(fixing);
    return taken_;
}

// From the values of the pieces by themselves to those with their parts.
double Relaxation::best_of(const Fixing& fixing) {
    for (std::size_t p = values_.size(); p-- > 0;)
        values_[p] = fixing[p] == Settled::out ? -infinite : values_[p] + pick_parts(p, fixing);
    return pick_parts(values_.size(), fixing);
}

double Relaxation::pick_parts(std::size_t piece, const Fixing& fixing) {
    const bool is_root = piece == values_.size();
    std::size_t forced = 0;
    double sum = 0;
    optional_.clear();
    for (const std::size_t part : parts_[piece]) {
        picked_[part] = problem_.pieces[part].must || fixing[part] == Settled::in;
        loss_in_[part] = picked_[part] ? 0 : infinite;
        loss_out_[part] = infinite;
        if (picked_[part]) {
            ++forced;
            sum += values_[part];
        } else if (values_[part] > -infinite) {
            optional_.push_back(part);
        }
    }
    const std::size_t least = is_root ? 0 : problem_.pieces[piece].least;
    const std::size_t most = is_root ? none : problem_.pieces[piece].most;
    const std::size_t needed = least - std::min(least, forced);
    if (forced > most || needed > optional_.size()) return -infinite;
    std::sort(optional_.begin(), optional_.end(), [this](std::size_t a, std::size_t b) {
        return values_[a] != values_[b] ? values_[a] > values_[b] : a < b;
    });
    const std::size_t room = std::min(most - forced, optional_.size());
    std::size_t count = 0;
    while (count < room && (count < needed || values_[optional_[count]] > 0))
        ++count;
    for (std::size_t i = 0; i < count; ++i) {
        picked_[optional_[i]] = true;
        sum += values_[optional_[i]];
    }
    weigh_exchanges(needed, room, count);
    return sum;
}

// What it costs to have a part in or out, what it is a part of being taken.
void Relaxation::weigh_exchanges(std::size_t needed, std::size_t room, std::size_t picked) {
    const double last = picked > 0 ? values_[optional_[picked - 1]] : infinite;
    const double next = picked < optional_.size() ? values_[optional_[picked]] : -infinite;
    const double added = std::min(picked < room ? 0.0 : infinite, last);
    const double replaced = std::max(picked > needed ? 0.0 : -infinite, next);
    for (std::size_t i = 0; i < optional_.size(); ++i) {
        const std::size_t part = optional_[i];
        loss_in_[part] = i < picked ? 0 : added - values_[part];
        if (i < picked) loss_out_[part] = values_[part] - replaced;
    }
}

// Down the tree: what is picked of what is taken, and what it costs to have it otherwise.
void Relaxation::take_picked(const Fixing& fixing) {
    for (std::size_t p = 0; p < taken_.size(); ++p) {
        const std::size_t within = problem_.pieces[p].within;
        const bool may = within == none || taken_[within];
        taken_[p] = may && picked_[p] && fixing[p] != Settled::out;
        if (within != none) {
            loss_in_[p] += loss_in_[within];
            loss_out_[p] = taken_[p] ? std::min(loss_out_[p], loss_out_[within]) : 0;
        } else if (!taken_[p]) {
            loss_out_[p] = 0;
        }
    }
}

void Relaxation::count(const Prices& prices) {
    height_left_ = static_cast<double>(problem_.capacity);
    for (std::size_t t = 0; t < terms_beyond_.size(); ++t) {
        const Term& term = problem_.terms[t];
        terms_beyond_[t] = -((prices.terms[t] < static_cast<double>(term.first) ? 1.0 : 0.0) +
                             (prices.terms[t] < static_cast<double>(term.second) ? 1.0 : 0.0));
    }
    for (std::size_t p = 0; p < taken_.size(); ++p) {
        if (!taken_[p]) continue;
        height_left_ -= static_cast<double>(problem_.pieces[p].height);
        for (const std::size_t term : problem_.pieces[p].shows)
            ++terms_beyond_[term];
    }
}

}

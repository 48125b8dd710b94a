#include "compiler/tailoring/choose.hpp"

#include "compiler/tailoring/arrangement.hpp"
#include "compiler/tailoring/fixing.hpp"
#include "compiler/tailoring/improve.hpp"
#include "compiler/tailoring/relaxation.hpp"

#include <algorithm>
#include <cmath>
#include <queue>
#include <utility>

namespace quoin::tailoring {

namespace {

constexpr double rounding = 1e-6;

struct Open { // a part of the search that is still to be looked into
    double bound = 0;
    std::size_t number = 0;
    Fixing fixing;
    Prices prices;

    bool operator<(const Open& other) const { // the highest bound is looked into first
        return bound != other.bound ? bound < other.bound : number > other.number;
    }
};

// Pieces looked at to improve what the bounds take, as many as some bounds look at themselves.
std::size_t looks_for(const Problem& problem, std::size_t bounds) {
    constexpr std::size_t for_each_bound = 16;
    return for_each_bound * bounds * (problem.pieces.size() + 1);
}

class Search {
public:
    Search(const Problem& problem, std::size_t bounds)
        : problem_(problem), parts_(parts_of(problem)), relaxation_(problem, parts_),
          improver_(problem, parts_, relaxation_, looks_for(problem, bounds)),
          arrangement_(problem, parts_), left_(bounds) {
        double heights = 0;
        for (const Piece& piece : problem.pieces)
            heights += static_cast<double>(piece.height);
        mean_height_ = std::max(1.0, heights / static_cast<double>(problem.pieces.size() + 1));
    }

    std::optional<Choice> run() {
        const Fixing fixing(problem_, parts_);
        const Taken lowest = relaxation_.lowest(fixing);
        if (lowest.size() != problem_.pieces.size()) return std::nullopt;
        if (height_of(problem_, lowest) > problem_.capacity) return std::nullopt;
        keep(lowest);
        Prices prices{0, std::vector<double>(problem_.terms.size())};
        for (std::size_t t = 0; t < problem_.terms.size(); ++t)
            prices.terms[t] = static_cast<double>(problem_.terms[t].second);
        Open root{relaxation_.bound(prices, fixing), 0, fixing, std::move(prices)};
        try_taken(true);
        constexpr int steps_at_first = 300, steps = 30;
        look_into(std::move(root), steps_at_first);
        while (!open_.empty() && left_ > 0 && is_worth(open_.top().bound)) {
            Open next = open_.top();
            open_.pop();
            look_into(std::move(next), steps);
        }
        return Choice{best_, best_worth_, proven()};
    }

private:
    static std::int64_t whole(double bound) {
        return static_cast<std::int64_t>(std::floor(bound + rounding));
    }
    bool is_worth(double bound) const {
        return bound + rounding >= static_cast<double>(best_worth_ + 1);
    }

    std::int64_t proven() const {
        return std::max(best_worth_, open_.empty() ? best_worth_ : whole(open_.top().bound));
    }

    void keep(const Taken& taken) {
        const std::int64_t worth = worth_of(problem_, taken);
        if (worth <= best_worth_) return;
        best_worth_ = worth;
        best_ = taken;
    }

    // What the relaxation takes, made to fit.
    void try_taken(bool thoroughly) {
        arrangement_.assign(relaxation_.taken());
        if (!improver_.lower(arrangement_)) return;
        improver_.fill(arrangement_);
        if (thoroughly || arrangement_.worth() > best_worth_) improver_.exchange(arrangement_);
        keep(arrangement_.taken());
    }

    // Subgradient steps towards the prices at which the bound is lowest; false once nothing better
    // than the best can be there. `shares` becomes how often each piece was taken, of late.
    bool lower_bound(Open& open, int steps, std::vector<double>& shares) {
        Prices prices = open.prices;
        double pace = 1;
        int in_vain = 0;
        for (int step = 0; step < steps && left_ > 0; ++step, --left_) {
            const double bound = relaxation_.bound(prices, open.fixing);
            if (bound < open.bound - rounding) {
                open.bound = bound;
                open.prices = prices;
                in_vain = 0;
            } else if (++in_vain % 5 == 0) {
                pace /= 2;
            }
            if (!is_worth(open.bound)) return false;
            if (!settle(bound, open.fixing)) return false;
            average(shares);
            if (!move(prices, bound, pace)) break;
        }
        return true;
    }

    void average(std::vector<double>& shares) const {
        constexpr double newest = 0.15;
        for (std::size_t p = 0; p < shares.size(); ++p)
            shares[p] += newest * ((relaxation_.taken()[p] ? 1.0 : 0.0) - shares[p]);
    }

    // Prices go up for what there is too little of; false where nothing is out of balance.
    bool move(Prices& prices, double bound, double pace) const {
        const double height = relaxation_.height_left() / mean_height_;
        double square = height * height;
        for (const double beyond : relaxation_.terms_beyond())
            square += beyond * beyond;
        if (square == 0) return false;
        const double gap = std::max(1.0, bound - static_cast<double>(best_worth_));
        const double step = pace * gap / square;
        prices.height = std::max(0.0, prices.height - step * height / mean_height_);
        for (std::size_t t = 0; t < prices.terms.size(); ++t) {
            const double moved = prices.terms[t] - step * relaxation_.terms_beyond()[t];
            prices.terms[t] = std::clamp(moved, 0.0, static_cast<double>(problem_.terms[t].first));
        }
        return true;
    }

    // Settles what nothing better than the best can be without, or with; false if that leaves
    // nothing.
    bool settle(double bound, Fixing& fixing) const {
        for (std::size_t p = 0; p < problem_.pieces.size(); ++p) {
            if (!fixing.is_free(p)) continue;
            const bool may_be_in = is_worth(bound - relaxation_.loss_in(p));
            const bool may_be_out = is_worth(bound - relaxation_.loss_out(p));
            if (!may_be_in && !fixing.leave_out(p)) return false;
            if (!may_be_out && !fixing.take(p)) return false;
        }
        return true;
    }

    void look_into(Open open, int steps) {
        std::vector<double> shares(problem_.pieces.size(), 0.5);
        if (!lower_bound(open, steps, shares)) return;
        relaxation_.bound(open.prices, open.fixing);
        try_taken(open.number == 0);
        if (!is_worth(open.bound)) return;
        const std::size_t piece = least_settled(open.fixing, shares);
        if (piece == none) return try_settled(open.fixing);
        Open without = open;
        if (open.fixing.take(piece)) push(std::move(open));
        if (without.fixing.leave_out(piece)) push(std::move(without));
    }

    void push(Open open) {
        const Taken lowest = relaxation_.lowest(open.fixing);
        if (lowest.empty() || height_of(problem_, lowest) > problem_.capacity) return;
        open.number = ++pushed_;
        open_.push(std::move(open));
    }

    // The piece that was taken about as often as it was left out.
    std::size_t least_settled(const Fixing& fixing, const std::vector<double>& shares) const {
        std::size_t chosen = none;
        double most = -1;
        for (std::size_t p = 0; p < problem_.pieces.size(); ++p) {
            if (!fixing.is_free(p)) continue;
            const double doubt = std::min(shares[p], 1 - shares[p]);
            if (doubt <= most) continue;
            most = doubt;
            chosen = p;
        }
        return chosen;
    }

    void try_settled(const Fixing& fixing) {
        Taken taken(problem_.pieces.size());
        for (std::size_t p = 0; p < taken.size(); ++p)
            taken[p] = fixing[p] == Settled::in;
        if (is_lawful(problem_, taken) && height_of(problem_, taken) <= problem_.capacity)
            keep(taken);
    }

    const Problem& problem_;
    std::vector<std::vector<std::size_t>> parts_;
    Relaxation relaxation_;
    Improver improver_;
    Arrangement arrangement_;
    std::priority_queue<Open> open_;
    Taken best_;
    std::int64_t best_worth_ = -1;
    std::size_t left_, pushed_ = 0;
    double mean_height_ = 1;
};

}

Taken lowest_choice(const Problem& problem) {
    const auto parts = parts_of(problem);
    return Relaxation(problem, parts).lowest(Fixing(problem, parts));
}

std::optional<Choice> choose(const Problem& problem, std::size_t bounds) {
    return Search(problem, bounds).run();
}

}

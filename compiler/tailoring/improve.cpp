#include "compiler/tailoring/improve.hpp"

#include <algorithm>

namespace quoin::tailoring {

namespace {

struct Tried { // what a change makes of an arrangement
    std::int64_t worth = 0, height = 0;
};

Tried tried(Arrangement& arrangement, const std::vector<std::size_t>& out,
            const std::vector<std::size_t>& in) {
    arrangement.take_out(out);
    arrangement.put_in(in);
    const Tried after{arrangement.worth(), arrangement.height()};
    arrangement.take_out(in);
    arrangement.put_in(out);
    return after;
}

}

Improver::Improver(const Problem& problem, const std::vector<std::vector<std::size_t>>& parts,
                   const Relaxation& relaxation)
    : problem_(problem), parts_(parts), relaxation_(relaxation) {}

std::int64_t Improver::height(const std::vector<std::size_t>& pieces) const {
    std::int64_t sum = 0;
    for (const std::size_t piece : pieces)
        sum += problem_.pieces[piece].height;
    return sum;
}

// The parts of one piece that come with it.
std::vector<std::size_t> Improver::coming_parts(std::size_t piece, bool all_picked) const {
    std::vector<std::size_t> coming, others;
    for (const std::size_t part : parts_[piece])
        (problem_.pieces[part].must ? coming : others).push_back(part);
    std::ranges::stable_sort(others, [this](std::size_t a, std::size_t b) {
        if (relaxation_.picks(a) != relaxation_.picks(b)) return relaxation_.picks(a);
        return relaxation_.value(a) > relaxation_.value(b);
    });
    const Piece& whole = problem_.pieces[piece];
    for (const std::size_t part : others) {
        const bool wanted = all_picked && relaxation_.picks(part) && coming.size() < whole.most;
        if (coming.size() < whole.least || wanted) coming.push_back(part);
    }
    return coming;
}

std::vector<std::size_t> Improver::with_parts(std::size_t piece, bool all_picked) const {
    std::vector<std::size_t> pieces{piece};
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const std::vector<std::size_t> parts = coming_parts(pieces[i], all_picked);
        pieces.insert(pieces.end(), parts.begin(), parts.end());
    }
    return pieces;
}

bool Improver::lower(Arrangement& arrangement) const {
    while (!arrangement.fits()) {
        Change best;
        double least = 0; // lost for a unit of height
        const auto offer = [&](std::vector<std::size_t> out, std::vector<std::size_t> in) {
            const Tried after = tried(arrangement, out, in);
            if (after.height >= arrangement.height()) return;
            const double loss = static_cast<double>(arrangement.worth() - after.worth) /
                                static_cast<double>(arrangement.height() - after.height);
            if (best.is_any() && loss >= least) return;
            least = loss;
            best = {std::move(out), std::move(in)};
        };
        for (std::size_t p = 0; p < problem_.pieces.size(); ++p) {
            if (!arrangement.has(p) || problem_.pieces[p].must) continue;
            if (arrangement.may_go(p)) offer(arrangement.branch(p), {});
            const std::size_t within = problem_.pieces[p].within;
            for (const std::size_t other : parts_[within == none ? parts_.size() - 1 : within])
                if (arrangement.may_change(p, other))
                    offer(arrangement.branch(p), with_parts(other, false));
        }
        if (!best.is_any()) return false;
        arrangement.take_out(best.out);
        arrangement.put_in(best.in);
    }
    return true;
}

void Improver::fill(Arrangement& arrangement) const {
    while (true) {
        std::vector<std::size_t> best;
        double most = 0; // gained for a unit of height
        for (std::size_t p = 0; p < problem_.pieces.size(); ++p) {
            if (!arrangement.may_come(p)) continue;
            for (const bool all_picked : {true, false}) {
                std::vector<std::size_t> in = with_parts(p, all_picked);
                const Tried after = tried(arrangement, {}, in);
                if (after.height > problem_.capacity || after.worth <= arrangement.worth())
                    continue;
                const double gain = static_cast<double>(after.worth - arrangement.worth()) /
                                    static_cast<double>(after.height - arrangement.height() + 1);
                if (gain <= most) continue;
                most = gain;
                best = std::move(in);
            }
        }
        if (best.empty()) return;
        arrangement.put_in(best);
    }
}

std::vector<std::vector<std::size_t>> Improver::that_may_come() const {
    std::vector<std::vector<std::size_t>> all;
    for (std::size_t p = 0; p < problem_.pieces.size(); ++p)
        for (const bool all_picked : {true, false}) {
            std::vector<std::size_t> in = with_parts(p, all_picked);
            if (all_picked || all.back() != in) all.push_back(std::move(in));
        }
    return all;
}

Improver::Change Improver::best_exchange(Arrangement& arrangement) const {
    Change best;
    std::int64_t most = arrangement.worth();
    const std::vector<std::vector<std::size_t>> coming = that_may_come();
    for (std::size_t p = 0; p < problem_.pieces.size(); ++p) {
        if (!arrangement.has(p) || problem_.pieces[p].must) continue;
        const std::vector<std::size_t> out = arrangement.branch(p);
        const std::int64_t room = problem_.capacity - arrangement.height() + height(out);
        for (const std::vector<std::size_t>& in : coming) {
            if (!arrangement.may_change(p, in.front()) || height(in) > room) continue;
            const Tried after = tried(arrangement, out, in);
            if (after.worth <= most) continue;
            most = after.worth;
            best = {out, in};
        }
    }
    return best;
}

void Improver::exchange(Arrangement& arrangement) const {
    while (true) {
        const Change change = best_exchange(arrangement);
        if (!change.is_any()) return;
        arrangement.take_out(change.out);
        arrangement.put_in(change.in);
        fill(arrangement);
    }
}

}

#include "compiler/tailoring/improve.hpp"

#include <algorithm>
#include <utility>

namespace quoin::tailoring {

Improver::Improver(const Problem& problem, const std::vector<Pieces>& parts,
                   const Relaxation& relaxation, std::size_t looks)
    : problem_(problem), parts_(parts), relaxation_(relaxation), left_(looks) {}

bool Improver::look(std::size_t pieces) {
    left_ -= std::min(left_, pieces);
    return left_ > 0;
}

Improver::Tried Improver::tried(Arrangement& arrangement, const Pieces& out, const Pieces& in) {
    look(out.size() + in.size());
    arrangement.take_out(out);
    arrangement.put_in(in);
    const Tried after{arrangement.worth(), arrangement.height()};
    arrangement.take_out(in);
    arrangement.put_in(out);
    return after;
}

std::int64_t Improver::height(const Pieces& pieces) const {
    std::int64_t sum = 0;
    for (const std::size_t piece : pieces)
        sum += problem_.pieces[piece].height;
    return sum;
}

// The parts of one piece that come with it.
Improver::Pieces Improver::coming_parts(std::size_t piece, bool all_picked) const {
    Pieces coming, others;
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

Improver::Pieces Improver::with_parts(std::size_t piece, bool all_picked) const {
    Pieces pieces{piece};
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Pieces parts = coming_parts(pieces[i], all_picked);
        pieces.insert(pieces.end(), parts.begin(), parts.end());
    }
    return pieces;
}

// What comes with each piece that comes, as few parts as there must be.
std::vector<Improver::Pieces> Improver::least_coming() const {
    std::vector<Pieces> all;
    for (std::size_t p = 0; p < problem_.pieces.size(); ++p)
        all.push_back(with_parts(p, false));
    return all;
}

void Improver::offer(Arrangement& arrangement, const Pieces& out, const Pieces& in,
                     Lowering& best) {
    const Tried after = tried(arrangement, out, in);
    if (after.height >= arrangement.height()) return;
    const double loss = static_cast<double>(arrangement.worth() - after.worth) /
                        static_cast<double>(arrangement.height() - after.height);
    if (best.change.is_any() && loss >= best.loss) return;
    best = {{out, in}, loss};
}

Improver::Change Improver::best_lowering(Arrangement& arrangement,
                                         const std::vector<Pieces>& coming) {
    Lowering best;
    for (std::size_t p = 0; p < problem_.pieces.size() && left_ > 0; ++p) {
        if (!arrangement.has(p) || problem_.pieces[p].must) continue;
        const Pieces out = arrangement.branch(p);
        if (arrangement.may_go(p)) offer(arrangement, out, {}, best);
        const std::int64_t lower_than = height(out);
        const std::size_t within = problem_.pieces[p].within;
        const Pieces& others = parts_[within == none ? parts_.size() - 1 : within];
        look(others.size());
        for (const std::size_t other : others)
            if (!arrangement.has(other) && height(coming[other]) < lower_than)
                offer(arrangement, out, coming[other], best);
    }
    return std::move(best.change);
}

// Of a file that holds more than anybody could choose from: what each is worth by itself decides.
void Improver::drop(Arrangement& arrangement) {
    std::vector<std::pair<double, std::size_t>> by_loss;
    for (std::size_t p = 0; p < problem_.pieces.size(); ++p) {
        if (!arrangement.may_go(p)) continue;
        Lowering alone;
        offer(arrangement, arrangement.branch(p), {}, alone);
        if (alone.change.is_any()) by_loss.emplace_back(alone.loss, p);
    }
    std::ranges::sort(by_loss);
    for (const auto& [loss, p] : by_loss)
        if (!arrangement.fits() && arrangement.may_go(p))
            arrangement.take_out(arrangement.branch(p));
}

bool Improver::lower(Arrangement& arrangement) {
    const std::vector<Pieces> coming = least_coming();
    while (!arrangement.fits() && left_ > 0) {
        const Change best = best_lowering(arrangement, coming);
        if (left_ == 0) break; // not all were looked at
        if (!best.is_any()) return false;
        arrangement.take_out(best.out);
        arrangement.put_in(best.in);
    }
    if (!arrangement.fits()) drop(arrangement);
    return arrangement.fits();
}

Improver::Pieces Improver::best_coming(Arrangement& arrangement,
                                       const std::vector<Pieces>& coming) {
    const Pieces* best = nullptr;
    double most = 0; // gained for a unit of height
    for (const Pieces& in : coming) {
        if (!look(1)) break;
        if (!arrangement.may_come(in.front())) continue;
        const Tried after = tried(arrangement, {}, in);
        if (after.height > problem_.capacity || after.worth <= arrangement.worth()) continue;
        const double gain = static_cast<double>(after.worth - arrangement.worth()) /
                            static_cast<double>(after.height - arrangement.height() + 1);
        if (gain <= most) continue;
        most = gain;
        best = &in;
    }
    return best ? *best : Pieces{};
}

void Improver::fill(Arrangement& arrangement) {
    const std::vector<Pieces> coming = that_may_come();
    while (left_ > 0) {
        const Pieces best = best_coming(arrangement, coming);
        if (best.empty()) return;
        arrangement.put_in(best);
    }
}

std::vector<Improver::Pieces> Improver::that_may_come() const {
    std::vector<Pieces> all;
    for (std::size_t p = 0; p < problem_.pieces.size(); ++p)
        for (const bool all_picked : {true, false}) {
            Pieces in = with_parts(p, all_picked);
            if (all_picked || all.back() != in) all.push_back(std::move(in));
        }
    return all;
}

Improver::Change Improver::best_exchange(Arrangement& arrangement) {
    Change best;
    std::int64_t most = arrangement.worth();
    const std::vector<Pieces> coming = that_may_come();
    for (std::size_t p = 0; p < problem_.pieces.size() && look(coming.size()); ++p) {
        if (!arrangement.has(p) || problem_.pieces[p].must) continue;
        const Pieces out = arrangement.branch(p);
        const std::int64_t room = problem_.capacity - arrangement.height() + height(out);
        for (const Pieces& in : coming) {
            if (!arrangement.may_change(p, in.front()) || height(in) > room) continue;
            const Tried after = tried(arrangement, out, in);
            if (after.worth <= most) continue;
            most = after.worth;
            best = {out, in};
        }
    }
    return best;
}

void Improver::exchange(Arrangement& arrangement) {
    while (left_ > 0) {
        const Change change = best_exchange(arrangement);
        if (!change.is_any()) return;
        arrangement.take_out(change.out);
        arrangement.put_in(change.in);
        fill(arrangement);
    }
}

}

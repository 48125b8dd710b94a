#include "compiler/tailoring/tailor.hpp"

#include "compiler/tailoring/arrangement.hpp"
#include "compiler/tailoring/heights.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <utility>
#include <variant>

namespace quoin::tailoring {

namespace {

// Bounds worked out for one choice: fewer where each takes longer. A résumé of any length has as
// many as prove its best choice; a file of tens of thousands of pieces is none, and is to end soon.
std::size_t bounds_for(const Problem& problem) {
    constexpr std::size_t pieces_looked_at = 1200000, fewest = 600, most_looked_at = 3000000;
    const std::size_t pieces = problem.pieces.size() + 1;
    return std::clamp(pieces_looked_at / pieces, std::min(fewest, most_looked_at / pieces),
                      most_bounds);
}

class Tailoring {
public:
    Tailoring(const model::Resume& resume, const Tools& tools, Diagnostics& diagnostics)
        : resume_(resume), tools_(tools), diagnostics_(diagnostics) {}

    std::optional<Tailored> run(const Demand& demand) {
        offer_ = offer_of(resume_, demand);
        const auto composed = [this](const model::Resume& resume) {
            return composition::compose(resume, tools_.theme, tools_.fonts, diagnostics_);
        };
        if (!set_heights(offer_, resume_, tools_.theme, composed)) return std::nullopt;
        choose_by_the_fit();
        if (best_)
            add_by_the_fit();
        else
            best_ = ask({lowest_choice(offer_.problem), 0, 0});
        if (!best_) return std::nullopt;
        offer_.problem.capacity = std::max(offer_.problem.capacity, best_->height);
        return Tailored{std::move(offer_), std::move(best_->choice), std::move(best_->typeset),
                        asked_};
    }

private:
    struct Answer { // of the fit
        Choice choice;
        stages::Typeset typeset;
        std::int64_t height = 0, left = 0; // as the choice has it; less than nothing: too much

        bool fits() const { return std::holds_alternative<fit::Fit>(typeset.fit); }
    };
    using AnswerOwner = std::unique_ptr<Answer>;

    // Null if it cannot be composed.
    AnswerOwner ask(Choice choice) {
        ++asked_;
        Diagnostics unheard; // the whole was composed before
        auto typeset = stages::typeset_in(reduced(resume_, offer_, choice.taken), tools_.theme,
                                          tools_.folder, tools_.fonts, unheard);
        if (!typeset) return nullptr;
        const double left =
            room_left(typeset->composition, tools_.theme, resume_.settings) * per_point;
        const std::int64_t height = height_of(offer_.problem, choice.taken);
        return std::make_unique<Answer>(Answer{std::move(choice), *std::move(typeset), height,
                                               static_cast<std::int64_t>(std::floor(left))});
    }

    void keep_if_better(AnswerOwner answer) {
        if (answer->fits() && (!best_ || best_->choice.worth < answer->choice.worth))
            best_ = std::move(answer);
    }

    void choose_by_the_fit() {
        constexpr int most_rounds = 6;
        std::int64_t too_high = std::numeric_limits<std::int64_t>::max();
        for (int round = 0; round < most_rounds; ++round) {
            auto choice = choose(offer_.problem, bounds_for(offer_.problem));
            AnswerOwner answer = choice ? ask(*std::move(choice)) : nullptr;
            if (!answer) return;
            const bool fits = answer->fits();
            if (!fits) too_high = std::min(too_high, answer->height);
            const std::int64_t room = std::min(answer->height + answer->left, too_high - 1);
            keep_if_better(std::move(answer));
            if (fits && room <= offer_.problem.capacity) return;
            offer_.problem.capacity = room;
        }
    }

    // Single pieces more, by what they add, as long as the fit takes them.
    void add_by_the_fit() {
        constexpr int most_asked = 12;
        const auto parts = parts_of(offer_.problem);
        for (int left = most_asked; left > 0; --left) {
            const std::size_t piece = most_useful(parts);
            if (piece == none) return;
            Choice choice = best_->choice;
            choice.taken[piece] = true;
            choice.worth = worth_of(offer_.problem, choice.taken);
            choice.bound = std::max(choice.bound, choice.worth);
            tried_.push_back(piece);
            AnswerOwner answer = ask(std::move(choice));
            if (!answer) return;
            keep_if_better(std::move(answer));
        }
    }

    // That may come by itself and could fit, the fit's lines being whole.
    std::size_t most_useful(const std::vector<std::vector<std::size_t>>& parts) const {
        constexpr std::int64_t doubt = 400;
        Arrangement arrangement(offer_.problem, parts);
        arrangement.assign(best_->choice.taken);
        std::size_t best = none;
        std::int64_t most = arrangement.worth();
        for (std::size_t p = 0; p < offer_.parts.size(); ++p) {
            const Piece& piece = offer_.problem.pieces[p];
            if (!arrangement.may_come(p) || piece.least > 0 || !parts[p].empty()) continue;
            if (piece.height > best_->left + doubt) continue;
            if (std::ranges::find(tried_, p) != tried_.end()) continue;
            const std::size_t one[]{p};
            arrangement.put_in(one);
            if (arrangement.worth() > most) {
                most = arrangement.worth();
                best = p;
            }
            arrangement.take_out(one);
        }
        return best;
    }

    const model::Resume& resume_;
    const Tools& tools_;
    Diagnostics& diagnostics_;
    Offer offer_;
    AnswerOwner best_;
    std::vector<std::size_t> tried_;
    int asked_ = 0;
};

bool is_a_line(const Part& part) {
    return part.kind == Part::Kind::bullet || part.kind == Part::Kind::position;
}

// The same, with a piece and all that it is a part of there.
Problem with(const Problem& problem, std::size_t piece) {
    Problem changed = problem;
    for (; piece != none; piece = problem.pieces[piece].within)
        changed.pieces[piece].must = true;
    return changed;
}

}

std::optional<Tailored> tailor(const model::Resume& resume, const Demand& demand,
                               const Tools& tools, Diagnostics& diagnostics) {
    return Tailoring(resume, tools, diagnostics).run(demand);
}

std::vector<Displaced> next_in_line(const Tailored& tailored, std::size_t most) {
    constexpr std::size_t looked_at = 8, bounds = 400;
    const Problem& problem = tailored.offer.problem;
    const Taken& taken = tailored.choice.taken;
    const auto parts = parts_of(problem);
    Arrangement arrangement(problem, parts);
    arrangement.assign(taken);
    std::vector<std::pair<std::int64_t, std::size_t>> left; // by what each would add
    for (std::size_t p = 0; p < taken.size(); ++p) {
        if (taken[p] || !is_a_line(tailored.offer.parts[p])) continue;
        const std::size_t one[]{p};
        arrangement.put_in(one);
        left.emplace_back(tailored.choice.worth - arrangement.worth(), p);
        arrangement.take_out(one);
    }
    std::ranges::sort(left);
    std::vector<Displaced> nearest;
    for (std::size_t i = 0; i < std::min(left.size(), looked_at); ++i) {
        const auto other =
            choose(with(problem, left[i].second), std::min(bounds, bounds_for(problem)));
        if (!other) continue;
        Displaced displaced{left[i].second, {}, 0};
        for (std::size_t p = 0; p < taken.size(); ++p)
            if (taken[p] && !other->taken[p] && is_a_line(tailored.offer.parts[p]))
                displaced.gone.push_back(p);
        displaced.lost =
            1 - static_cast<double>(other->worth) /
                    static_cast<double>(std::max<std::int64_t>(1, tailored.choice.worth));
        nearest.push_back(std::move(displaced));
    }
    std::ranges::stable_sort(nearest, {}, &Displaced::lost);
    nearest.resize(std::min(nearest.size(), most));
    return nearest;
}

}

// Dynamic programming over the offers' groups: of all choices so far, those that no other beats
// both in worth and in cost.
#include "compiler/stages/fit/cheapest.hpp"

#include "compiler/base/counted_work.hpp"

#include <algorithm>
#include <tuple>

namespace quoin::fit {

namespace {

struct PartialSum {
    std::int64_t worth = 0; // no more than what is needed
    std::int64_t cost = 0;
    std::size_t taken = 0;
    std::size_t before = 0; // the state that it adds an offer to
    std::size_t offer = 0;

    auto price() const { return std::tuple(cost, taken); }
};

// Leaves the states that are cheaper than all of greater worth.
void drop_beaten(std::vector<PartialSum>& states) {
    std::stable_sort(states.begin(), states.end(), [](const PartialSum& a, const PartialSum& b) {
        return a.worth != b.worth ? a.worth > b.worth : a.price() < b.price();
    });
    std::vector<PartialSum> kept;
    for (const PartialSum& state : states)
        if (kept.empty() || state.price() < kept.back().price()) kept.push_back(state);
    states = std::move(kept);
}

}

std::optional<std::vector<std::size_t>> cheapest(std::span<const Offer> offers, std::int64_t need) {
    std::vector<PartialSum> all{PartialSum{}}; // every state ever kept, for the way back
    std::vector<std::size_t> front{0};
    for (std::size_t first = 0; first < offers.size();) {
        std::size_t past = first;
        std::vector<PartialSum> next;
        for (; past < offers.size() && offers[past].group == offers[first].group; ++past)
            for (const std::size_t from : front)
                next.push_back({std::min(need, all[from].worth + offers[past].worth),
                                all[from].cost + offers[past].cost, all[from].taken + 1, from,
                                past});
        for (const std::size_t from : front)
            next.push_back(all[from]);
        count_work(Work::sums, next.size());
        drop_beaten(next);
        front.clear();
        for (const PartialSum& state : next) {
            front.push_back(all.size());
            all.push_back(state);
        }
        first = past;
    }
    const PartialSum* best = &all[front.front()]; // of the greatest worth
    if (best->worth < need) return std::nullopt;
    std::vector<std::size_t> taken;
    for (; best->taken > 0; best = &all[best->before])
        taken.push_back(best->offer);
    std::reverse(taken.begin(), taken.end());
    return taken;
}

}

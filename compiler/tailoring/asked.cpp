#include "compiler/tailoring/asked.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <tuple>

namespace quoin::tailoring {

namespace {

// Of a list of which any will do, what was asked first; past the end: a thing of its own.
using Lists = std::map<std::tuple<std::uint32_t, std::uint32_t, std::uint32_t>, std::size_t>;

std::size_t place_of(const postings::Choice& choice, Lists& lists, std::size_t end) {
    if (choice.list == 0) return end;
    return lists.try_emplace({choice.sentence, choice.side, choice.list}, end).first->second;
}

}

Demand asked_of(const matching::Coverage& coverage) {
    Demand demand;
    Lists lists;
    for (const matching::TermCoverage& covered : coverage.terms) {
        const std::size_t at = place_of(covered.term->choice, lists, demand.size());
        if (at == demand.size()) demand.push_back({covered.term->words, covered.term->weight, {}});
        std::vector<Spot>& spots = demand[at].spots;
        for (const matching::Showing& showing : covered.showings)
            if (is_shown_so(showing.how) && std::ranges::find(spots, showing.spot) == spots.end())
                spots.push_back(showing.spot);
    }
    return demand;
}

}

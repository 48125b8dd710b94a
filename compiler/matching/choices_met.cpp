#include "compiler/matching/choices_met.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <tuple>
#include <vector>

namespace quoin::matching {

namespace {

struct Ask {                          // a term, or those of a list of which any will do
    std::vector<TermCoverage*> terms; // the heaviest first
    double weight = 0, shown = 0;

    void add(TermCoverage& covered) {
        terms.push_back(&covered);
        weight = std::max(weight, covered.term->weight);
        shown = std::max(shown, covered.term->weight * credit(covered.verdict));
    }
};

struct Side {
    std::vector<Ask> asks;

    double share() const {
        double weight = 0, shown = 0;
        for (const Ask& ask : asks) {
            weight += ask.weight;
            shown += std::min(ask.shown, ask.weight);
        }
        return weight > 0 ? shown / weight : 0;
    }
};

using Sides = std::map<std::uint32_t, Side>; // of one sentence

std::vector<Sides> sentences_of(Coverage& coverage) {
    std::map<std::uint32_t, std::size_t> index; // of the sentences with choices
    std::vector<Sides> sentences;
    std::map<std::tuple<std::uint32_t, std::uint32_t, std::uint32_t>, std::size_t> lists;
    for (TermCoverage& covered : coverage.terms) {
        const postings::Choice& choice = covered.term->choice;
        std::size_t at = sentences.size();
        if (choice.sentence > 0) at = index.try_emplace(choice.sentence, at).first->second;
        if (at == sentences.size()) sentences.emplace_back();
        std::vector<Ask>& asks = sentences[at][choice.side].asks;
        std::size_t ask = asks.size();
        if (choice.list > 0)
            ask = lists.try_emplace({choice.sentence, choice.side, choice.list}, ask).first->second;
        if (ask == asks.size()) asks.emplace_back();
        asks[ask].add(covered);
    }
    return sentences;
}

void spare(const Ask& ask) {
    for (TermCoverage* covered : ask.terms)
        if (covered->verdict == Verdict::missing) covered->verdict = Verdict::spared;
}

void tell_together(const Ask& ask) {
    const auto whole = [](const TermCoverage* covered) { return !covered->term->choice.within; };
    const auto found = std::ranges::find_if(ask.terms, whole);
    TermCoverage* first = found == ask.terms.end() ? ask.terms.front() : *found;
    for (TermCoverage* covered : ask.terms) {
        covered->told_with_first = covered != first;
        if (covered != first && whole(covered)) first->others.push_back(covered->term);
    }
}

Share& share_of(Coverage& coverage, postings::Standing standing) {
    if (standing == postings::Standing::required) return coverage.required;
    if (standing == postings::Standing::preferred) return coverage.preferred;
    return coverage.rest;
}

// Friendly, calm: no page proves it by its name, and none is held against for lacking it.
bool is_left_to_bullets(const Ask& ask) {
    return ask.shown <= 0 && std::ranges::all_of(ask.terms, [](const TermCoverage* covered) {
               return covered->term->kind == postings::Kind::soft_skill;
           });
}

void count(const Ask& ask, Coverage& coverage) {
    if (is_left_to_bullets(ask)) return tell_together(ask);
    Share& share = share_of(coverage, ask.terms.front()->term->standing);
    share.weight += ask.weight;
    share.shown += std::min(ask.shown, ask.weight);
    ++share.terms;
    if (ask.shown > 0) return spare(ask);
    ++share.missing;
    tell_together(ask);
}

}

void settle_choices(Coverage& coverage) {
    for (const Sides& sides : sentences_of(coverage)) {
        const auto best = std::ranges::max_element(
            sides, {}, [](const auto& side) { return side.second.share(); });
        for (auto side = sides.begin(); side != sides.end(); ++side)
            for (const Ask& ask : side->second.asks)
                if (side == best)
                    count(ask, coverage);
                else if (best->second.share() > 0)
                    spare(ask);
    }
}

}

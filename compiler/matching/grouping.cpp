#include "compiler/matching/grouping.hpp"

#include <algorithm>

namespace quoin::matching {

namespace {

double score_of(const std::vector<RankedEntry>& ranked, std::size_t section, std::size_t entry) {
    double score = 0;
    for (const RankedEntry& one : ranked)
        if (one.spot.section == section && one.spot.entry == entry) score += one.score;
    return score;
}

Grouping grouped(const model::Section& section, std::size_t index,
                 const std::vector<RankedEntry>& ranked) {
    Grouping grouping{index, 0, {}};
    double best = 0;
    for (std::size_t i = 0; i < section.entries.size(); ++i) {
        grouping.entries.push_back({i, score_of(ranked, index, i), false});
        best = std::max(best, grouping.entries.back().score);
    }
    grouping.least = best * relevant_share;
    for (GroupedEntry& entry : grouping.entries)
        entry.relevant = serves(entry.score, best);
    return grouping;
}

}

std::vector<Grouping> group(const model::Resume& resume, const std::vector<RankedEntry>& ranked) {
    std::vector<Grouping> groupings;
    for (std::size_t i = 0; i < resume.sections.size(); ++i) {
        if (resume.sections[i].holds != trade::Holds::experience) continue;
        Grouping grouping = grouped(resume.sections[i], i, ranked);
        const auto relevant = std::ranges::count(grouping.entries, true, &GroupedEntry::relevant);
        if (relevant > 0 && static_cast<std::size_t>(relevant) < grouping.entries.size())
            groupings.push_back(std::move(grouping));
    }
    return groupings;
}

}

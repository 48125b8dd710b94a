// What of a section of work a posting would have under "Relevant", and what under "Additional": a
// section may be parted so, and each part keeps its reverse chronology (common practice).
#pragma once

#include "compiler/matching/rank.hpp"

#include <cstddef>
#include <vector>

namespace quoin::matching {

struct GroupedEntry {
    std::size_t entry = 0; // index in its section
    double score = 0;      // the sum of its positions'
    bool relevant = false;
};

struct Grouping {
    std::size_t section = 0;
    double least = 0;                  // score of what is relevant
    std::vector<GroupedEntry> entries; // as they stand
};

// Of sections of experience that would have entries in both parts.
std::vector<Grouping> group(const model::Resume& resume, const std::vector<RankedEntry>& ranked);

}

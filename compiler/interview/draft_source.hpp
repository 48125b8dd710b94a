// The source of a résumé that answers make, with comments where something could be added.
#pragma once

#include "compiler/interview/plan.hpp"

#include <cstdint>
#include <map>
#include <set>
#include <string>

namespace quoin::interview {

struct DraftSource {
    std::string text;
    std::map<std::uint32_t, Spot> spots; // of the answers, by their lines
};

// The answers of `set_aside` stand in comments, for they cannot be read as what they should be.
DraftSource draft_source(const Plan& plan, const Draft& draft,
                         const std::set<Spot>& set_aside = {});

// The answers alone, without the comments.
std::string answers_alone(const DraftSource& source);

}

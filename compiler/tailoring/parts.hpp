// The résumé as pieces to choose from: what each piece of the problem is.
#pragma once

#include "compiler/stages/model/resume.hpp"
#include "compiler/tailoring/demand.hpp"
#include "compiler/tailoring/problem.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quoin::tailoring {

struct Part {
    enum class Kind {
        heading,
        section,
        position, // an entry, or a further position of one
        bullets,  // all of a position
        bullet,   // with the inner ones below it
        one_of,   // wordings of one thing, or a list in its lengths
        field
    };
    Kind kind{};
    std::size_t section = none, entry = none, further = none;
    std::size_t bullet = none, past = none; // bullets [bullet, past)
    std::size_t field = none;
    std::optional<std::vector<std::size_t>> items{}; // of a list, those that are left; maybe none
};

struct Offer {
    Problem problem;
    std::vector<Part> parts; // one a piece
};

// Without heights. Contact and education must be there, and what is tagged to be kept; of a
// position with bullets two to five, of a section one entry at least.
Offer offer_of(const model::Resume& resume, const Demand& demand);

const model::Entry& position_of(const model::Resume& resume, const Part& part);

// What is taken, in the order of the résumé but for bullets, of which those that serve the posting
// come first, by matching/rank.hpp.
model::Resume reduced(const model::Resume& resume, const Offer& offer, const Taken& taken);

// The bullets of a position that are taken, as parts, in the order they are set in.
std::vector<std::size_t> bullets_in_order(const Offer& offer, const Taken& taken,
                                          std::size_t position);

}

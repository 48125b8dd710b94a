// What is left out of a résumé for a posting, and why.
#pragma once

#include "compiler/base/place.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/tailoring/demand.hpp"
#include "compiler/tailoring/parts.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace quoin::tailoring {

struct LeftOut {
    enum class Why {
        shows_nothing,   // that is asked for
        shown_already,   // `term`, at `by`
        no_room,         // for what shows `term`
        another_wording, // is there
        list_is_shorter,
        list_is_gone
    };
    std::size_t piece = 0;
    Why why{};
    std::string term{};
    Place by{};
};

// Each whole piece that is not there, of what is; of a list, the piece is the length that is taken.
std::vector<LeftOut> left_out(const model::Resume& resume, const Offer& offer, const Taken& taken,
                              const Demand& demand);

// Where a piece begins in the source.
Place place_of(const model::Resume& resume, const Part& part);

}

// A line with neither label nor dash that says several things.
#pragma once

#include "compiler/stages/model/bare_advice.hpp"
#include "compiler/stages/model/bare_forms.hpp"

#include <string_view>
#include <vector>

namespace quoin::model {

// `Deckhand, Ferry Company, Jun 2025 - Aug 2025`: the line of each of them; empty if that cannot be
// told.
struct SeveralLines {
    std::vector<LabelledLine> lines;
    bool opens_entry = false; // below one that has such lines of its own
};
SeveralLines several_lines(std::string_view text, const BarePlace& place);

// The labels that such an entry is called by and that it does not have yet; first the one that a
// line without a label would have.
std::vector<std::string_view> names_wanted(const BarePlace& place);

}

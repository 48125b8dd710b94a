// What to write for a line with neither label nor dash where its place has no use for one.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/model/local_dates.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/trade/kinds.hpp"

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

namespace quoin::model {

struct BarePlace { // of a bare line in an entry
    trade::Holds holds{};
    const syntax::Node* above = nullptr;                // in its block, but for comments
    std::function<bool(std::string_view label)> stands; // whether the entry has it already
    const LocalDates& dates;
};

// The labels that the line is taken for, where that is plain.
std::vector<std::string_view> report_bare_line(const syntax::Node& node, const BarePlace& place,
                                               Diagnostics& diagnostics);

// `contact: (360) 555-0142, ob@ellerystate.example`, which its label does not tell; false of all
// else.
bool report_contacts(const syntax::Node& node, Diagnostics& diagnostics);

// `role: Cook | Marlowe Cafe | 2025`, a label with several lines behind it; false of all else.
bool report_several(const syntax::Node& node, const BarePlace& place, Diagnostics& diagnostics);

// In the heading, where the line is given back as the field that it surely was meant for:
// `Name - Ottoline Brandt` as `name: Ottoline Brandt`.
std::optional<syntax::Node> report_bare_line_in_heading(const syntax::Node& node, bool has_name,
                                                        Diagnostics& diagnostics);

}

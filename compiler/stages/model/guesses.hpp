// What is said of labels that people guess (compiler/trade/guessed_labels.hpp), with the mend.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/trade/kinds.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace quoin::model {

// "'company' is 'employer' here"
void report_guess(const syntax::Node& node, std::string_view meant, Diagnostics& diagnostics);

// A guessed label and a value that cannot be read are told in one message.
void report_together(const Diagnostics& found, Diagnostics& diagnostics);

// Of labels that stand for bullets, for what no résumé tells or for a section; false if this one
// does not. A line alone in its block is mended.
bool report_other_meaning(const syntax::Node& node, std::optional<trade::Holds> holds, bool alone,
                          Diagnostics& diagnostics);

// The same in the heading, and of labels that belong into an entry.
bool report_in_heading(const syntax::Node& node, bool alone, Diagnostics& diagnostics);

// `gpa: N/A`, which is to go; false of all else.
bool report_empty_value(const syntax::Node& node, Diagnostics& diagnostics);

// `First Name:` and `Last Name:` one below the other, which are one line of `name`: how many of the
// nodes from the first on; 0 if it begins no such line. What they are together is read as the
// field. In an entry, `City:` and `State:` are its place.
std::size_t count_pieces(std::span<const syntax::Node> nodes, bool in_heading);
syntax::Node report_pieces(std::span<const syntax::Node> pieces, bool in_heading,
                           Diagnostics& diagnostics);

// `linkedin: brandt`, which no link can be made of; false if one can.
bool report_no_address(const syntax::Node& node, Diagnostics& diagnostics);

// Of a label that is a name itself, such as `Tide Prize: May 2026` among awards, or `major gpa`.
bool report_own_label(const syntax::Node& node, trade::Holds holds, Diagnostics& diagnostics);

// The end of a message: where goes what has no field of its own.
std::string instead_of_label(const syntax::Node& node, trade::Holds holds);

// `from:` and `to:` one below the other, which are one line of dates.
bool are_range(const syntax::Node& from, const syntax::Node& to);
void report_range(const syntax::Node& from, const syntax::Node& to, trade::Holds holds,
                  Diagnostics& diagnostics);

}

// Blocks of a section as its writer meant them, before they are read as entries: an entry that
// blank lines have torn apart is closed up, and a line with neither label nor dash gets the label
// that the section's kind has for it (language.md, "Bare lines").
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/model/build_steps.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/trade/kinds.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace quoin::model {

std::vector<syntax::Block> settled_blocks(std::span<const Nodes> blocks, trade::Holds holds,
                                          const Sources& sources, Diagnostics& diagnostics);

// torn_entries.cpp. Says, in one warning for each entry, which blank lines are too many.
std::vector<syntax::Block> closed_up(std::span<const Nodes> blocks, trade::Holds holds,
                                     const Sources& sources, Diagnostics& diagnostics);

// bare_lines.cpp. Bare lines that stay are for EntryBuilder to report.
std::vector<syntax::Block> with_labels(std::vector<syntax::Block> blocks, trade::Holds holds);

// A line with neither label nor dash has no line that goes on with it, unless it begins small: what
// is indented below it is a line of its own.
syntax::Block unfolded(Nodes block, const Sources& sources);

// table_rows.cpp. A row of labels heads a table, and the rows below it are entries.
std::vector<syntax::Block> rows_as_entries(std::vector<syntax::Block> blocks, trade::Holds holds,
                                           Diagnostics& diagnostics);

// dittos.cpp. `employer: same` as the line of that label above it.
void read_dittos(std::vector<syntax::Block>& blocks, Diagnostics& diagnostics);

// The label that a bare line of such a section goes without; none: it needs one.
std::optional<std::string_view> label_of_bare(trade::Holds holds);

// Whether it is the rest of the line above it, which has lost its indentation.
bool goes_on(const syntax::Node& node, const syntax::Node* above);

}

// What a line can be read as, though its writer surely meant another thing.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"

#include <string_view>

namespace quoin::syntax {

// `  role: Tutor`, which goes on with the line above as an indented bullet does; `text` is the next
// line of the node.
void warn_of_indented_label(const Node& node, const Slice& text, Diagnostics& diagnostics);

// `# 1 seller`, below a bullet: what was folded has lost its indentation.
void warn_of_numbered_comment(const Node* above, const Slice& text, Diagnostics& diagnostics);

// `### Shop Assistant`, which other markup takes for a heading
void warn_of_foreign_heading(std::string_view line, const Place& place, Diagnostics& diagnostics);

}

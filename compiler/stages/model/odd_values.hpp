// What is typed as another markup, or another program, has it: it is printed as it stands, with a
// warning that says what to type.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/trade/kinds.hpp"

namespace quoin::model {

void warn_of_odd_field(const syntax::Node& field, Diagnostics& diagnostics);
void warn_of_odd_bullet(const syntax::Node& bullet, trade::Holds holds, Diagnostics& diagnostics);
void warn_of_odd_title(const syntax::Node& section, Diagnostics& diagnostics);

// lone_tags.cpp: `- Wrote a parser for {JSON}`, where braces that are meant as text end a line.
void warn_of_lone_tags(const syntax::Tree& tree, Diagnostics& diagnostics);

}

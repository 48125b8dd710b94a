// From a source file to its syntax tree.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/syntax/tree.hpp"

namespace quoin::syntax {

// What `{…}` at the end of a value is: tags in a résumé, text in a theme, whose patterns are full
// of braces.
enum class Braces { tags, text };

// Never fails as a whole: a line that is not of the grammar is reported and left out, and reading
// goes on at the next line.
Tree parse(const Sources& sources, std::uint32_t file, Diagnostics& diagnostics,
           Braces braces = Braces::tags);

}

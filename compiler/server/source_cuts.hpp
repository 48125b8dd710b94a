// Words that a cut takes out of the page, as changes of the source.
#pragma once

#include "compiler/base/edit.hpp"
#include "compiler/session/session.hpp"
#include "compiler/stages/fit/cuts.hpp"

namespace quoin::server {

// With the space or the separator before them; a line that is left empty goes whole.
Edits edits_of_cut(const session::State& state, const fit::Cut& cut);

}

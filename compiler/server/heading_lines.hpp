// A line added to the heading block of a résumé, where its settings stand.
#pragma once

#include "compiler/server/edits.hpp"

#include <string>

namespace quoin::server {

// Below the last line of the heading's first lines.
EditBook with_heading_line(const Desk& desk, const session::State& state, Ranges& ranges,
                           const std::string& line);

// By what `quoin mend` does, in every file of the résumé.
EditBook all_safe_mends(const Desk& desk, const session::State& state);

}

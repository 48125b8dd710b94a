// What of a theme can be judged only when all of it is read. Each fault is told where it was made.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <optional>

namespace quoin::theme {

// Gives what is set in the accent its colour.
void check_accents(Theme& theme, Diagnostics& diagnostics);

// `own_size` is where the theme itself, not one that it is based on, sets the size of the text.
void check_sizes(const Theme& theme, std::optional<Place> own_size, Diagnostics& diagnostics);

void check_fills(const Theme& theme, Diagnostics& diagnostics);

}

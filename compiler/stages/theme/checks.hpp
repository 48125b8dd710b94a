// What of a theme can be judged only when all of it is read. Each fault is told where it was made.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <functional>
#include <initializer_list>
#include <optional>
#include <string_view>

namespace quoin::theme {

// Gives what is set in the accent its colour.
void check_accents(Theme& theme, Diagnostics& diagnostics);

// `own_size` is where the theme itself, not one that it is based on, sets the size of the text.
void check_sizes(const Theme& theme, std::optional<Place> own_size, Diagnostics& diagnostics);

void check_fills(const Theme& theme, Diagnostics& diagnostics);

// Of settings that do not go together, where the last of them was made.
using SettingPlace = std::function<Place(std::initializer_list<std::string_view> labels)>;

// That there is room for headings in the margin and for columns of skills.
void check_geometry(const Theme& theme, const SettingPlace& place_of, Diagnostics& diagnostics);

}

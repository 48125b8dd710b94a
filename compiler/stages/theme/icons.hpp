// Icons: drawings in plain text, one block each, for the signs beside contact details.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "compiler/stages/theme/values.hpp"

#include <optional>
#include <string>

namespace quoin::theme {

// `icon: NAME`: lower-case words, joined by hyphens.
std::optional<std::string> read_icon_name(const ThemeLine& line, Diagnostics& diagnostics);

// `path: M 10 10 L 90 10 L 90 90 Z`; several lines make one drawing.
void read_icon_line(const ThemeLine& line, Path& path, Diagnostics& diagnostics);

struct IconWidth { // of the drawing itself, within its square
    double left = 0, right = 0;
};
IconWidth width_of(const Path& path);

// Reports each icon that a pattern asks for and the theme does not have.
void check_icons(const Theme& theme, Diagnostics& diagnostics);

}

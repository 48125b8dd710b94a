// The settings of a theme and of its styles: each label with what it sets and its bounds.
#pragma once

#include "compiler/source/diagnostics.hpp"
#include "compiler/theme/theme.hpp"
#include "compiler/theme/values.hpp"

#include <optional>
#include <string_view>

namespace quoin {

void read_theme_setting(const ThemeLine& line, Theme& theme, Diagnostics& diagnostics);
void read_style_setting(const ThemeLine& line, Style& style, Diagnostics& diagnostics);

std::optional<StyleName> read_style_name(const ThemeLine& line, Diagnostics& diagnostics);
std::string_view name_of(StyleName style);

}

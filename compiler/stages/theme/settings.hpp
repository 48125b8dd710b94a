// The settings of a theme and of its styles: each label with what it sets and its bounds.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "compiler/stages/theme/values.hpp"

#include <optional>
#include <string_view>

namespace quoin::theme {

void read_theme_setting(const ThemeLine& line, Theme& theme, Diagnostics& diagnostics);
void read_style_setting(const ThemeLine& line, Style& style, Diagnostics& diagnostics);

std::optional<StyleName> read_style_name(const ThemeLine& line, Diagnostics& diagnostics);
// `field: NAME`, and a line under it.
std::optional<trade::FieldName> read_field_block(const ThemeLine& line, Diagnostics& diagnostics);
void read_field_setting(const ThemeLine& line, FieldLetters& letters, Diagnostics& diagnostics);

std::string_view name_of(StyleName style);
std::string_view name_of(Align align);

}

// The values of a theme's settings: read by the grammar, kept within their bounds.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::theme {

struct ThemeLine { // `label: value`; the syntax tree leaves out lines without a value
    std::string label;
    Place label_place;
    syntax::Value value;
    Place place; // of the value
};

// Each reports what is wrong with the value and gives none.
std::optional<Preference> read_preference(const ThemeLine& line, const Bounds& bounds,
                                          Diagnostics& diagnostics);
std::optional<double> read_number(const ThemeLine& line, const Bounds& bounds,
                                  Diagnostics& diagnostics);
std::optional<Colour> read_colour(const ThemeLine& line, Diagnostics& diagnostics);
// The index of the word that was chosen.
std::optional<std::size_t> read_choice(const ThemeLine& line,
                                       std::span<const std::string_view> words,
                                       Diagnostics& diagnostics);

std::vector<std::string> parted_by_commas(const std::string& list);

// Contrast ratio on white, 1 to 21 (Web Content Accessibility Guidelines 2.1, section 1.4.3).
double contrast_on_white(const Colour& colour);
constexpr double least_contrast = 4.5;

}

// Patterns: `*{role}*[, {dates}]` read into pieces, and checked to lose no field.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace quoin::theme {

struct PatternName { // what may stand in braces
    std::string_view name;
    PatternPiece::Kind kind{};
    trade::FieldName field{};
};

std::optional<std::vector<PatternPiece>> read_pattern(const syntax::Value& value,
                                                      std::span<const PatternName> names,
                                                      Diagnostics& diagnostics);

// Reports each name that the lines, taken together, print twice, never, or only if another field
// has a value too: whatever a résumé says has one place on the page. `form` is what the lines are
// called in messages, at `form_place`.
void check_coverage(std::span<const PatternLine* const> lines, std::span<const PatternName> names,
                    std::string_view form, Place form_place, Diagnostics& diagnostics);

}

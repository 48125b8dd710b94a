// How high the pieces of a résumé are, by its own composition at the tightest setting.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "compiler/tailoring/parts.hpp"

#include <functional>
#include <optional>

namespace quoin::tailoring {

constexpr double per_point = 100; // heights are whole numbers while they are chosen among

using Compose = std::function<std::optional<composition::Composition>(const model::Resume&)>;

// Sets the heights of the pieces and the capacity, and takes out the lengths of lists that save no
// line. False if it cannot be composed, which is reported by who composes.
bool set_heights(Offer& offer, const model::Resume& resume, const theme::Theme& theme,
                 const Compose& compose);

// The points left on the pages allowed, at the tightest setting; less than nothing if it does not
// fit.
double room_left(const composition::Composition& composition, const theme::Theme& theme,
                 const model::Settings& settings);

}

// What changed in the settings of two drafts.
#pragma once

#include "compiler/redlining/redline.hpp"

#include <vector>

namespace quoin::redlining {

// A setting that is stated or left out with the same effect is no change.
std::vector<Change> setting_changes(const model::Settings& before, const model::Settings& after);

}

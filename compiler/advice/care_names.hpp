// Names of those in the writer's care, which are theirs.
#pragma once

#include "compiler/advice/bullets.hpp"

#include <optional>

namespace quoin::advice {

std::optional<english::Extent> name_in_care(const WordedBullet& bullet,
                                            const english::Language& language);

}

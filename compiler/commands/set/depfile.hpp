// What outputs depend on, as make reads it.
#pragma once

#include <filesystem>
#include <span>
#include <string>

namespace quoin::commands {

// One rule, `targets: prerequisites`, and an empty rule for each prerequisite, so that make goes on
// when one is deleted. Spaces, `#` and `$` are escaped as GNU make asks.
std::string depfile(std::span<const std::string> targets,
                    std::span<const std::filesystem::path> prerequisites);

}

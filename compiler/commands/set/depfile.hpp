// What outputs depend on, as make reads it.
#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <string_view>

namespace quoin::commands {

// One rule, `targets: prerequisites`, and an empty rule for each prerequisite, so that make goes on
// when one is deleted. Spaces, `#`, `:` and `$` are escaped as GNU make asks.
std::string depfile(std::span<const std::string> targets,
                    std::span<const std::filesystem::path> prerequisites);

// The sign in the name that make has no way to read, such as `;` or `%`; empty if it can read all.
std::string_view unholdable(std::string_view path);

}

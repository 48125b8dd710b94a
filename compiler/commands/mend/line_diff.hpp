// What a mend changes, in the unified format of diff and patch.
#pragma once

#include <string>
#include <string_view>

namespace quoin::commands {

// Of two texts that differ here and there, as a mend has it. Empty if they are the same.
std::string line_diff(const std::string& name, std::string_view before, std::string_view after);

}

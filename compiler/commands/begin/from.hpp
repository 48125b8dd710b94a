// `quoin begin --from`: a draft from an old document.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <string>

namespace quoin::commands {

// `output` is no file that is there, or `-`.
ExitCode begin_from(const std::string& old, const std::string& output);

}

// `quoin language-server`: what `set` and `proof` know, beside the line while it is typed.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/commands/command_line.hpp"

namespace quoin::commands {

struct LanguageServerRequest {
    advice::OfficeChoice office = {}; // whose rules are followed
};

// Speaks with an editor over standard input and output until it says `exit`, or hangs up.
// ExitCode::errors if it did so without `shutdown` before.
ExitCode run_language_server(const LanguageServerRequest& request);

}

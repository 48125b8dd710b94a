// `quoin tailor`: from a full résumé, the selection that serves a posting best and fits the page.
#pragma once

#include "compiler/commands/command_line.hpp"
#include "compiler/stages/typeset.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct TailorRequest {
    std::vector<std::string> operands; // a résumé and a posting; one of them may be `-`
    std::string output;                // `-` is standard output
    stages::Choices choices;
    bool explain = false; // print what was chosen, and what would have been next
};

// The source of the tailored résumé, to its output. ExitCode::does_not_fit if what must be there is
// too long by itself.
ExitCode run_tailor(const TailorRequest& request);

}

// `quoin match`: how much of what a posting asks for a résumé shows, and where.
#pragma once

#include "compiler/commands/command_line.hpp"
#include "compiler/stages/typeset.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct MatchRequest {
    std::vector<std::string> inputs; // the résumé, the posting, and what else tells of the job
    std::string format = "text";     // or `json`
    std::string report;              // an HTML page to write; empty: none
    stages::Choices choices;
    bool explain = false;
};

// To standard output. ExitCode::errors if the résumé or a posting cannot be read.
ExitCode run_match(const MatchRequest& request);

}

// `quoin glance`: what a reader takes in first, and when, by the model of compiler/stages/glance.
#pragma once

#include "compiler/commands/command_line.hpp"
#include "compiler/stages/typeset.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct GlanceRequest {
    std::vector<std::string> inputs; // `-` is standard input
    std::string format = "text";     // or `json`
    stages::Choices choices;
    // Write the pages, what is not reached in grey, to this PDF; `-`: standard output; of several,
    // the folder that each goes to.
    std::string marked;
};

// To standard output, file by file. ExitCode::errors if one cannot be set or written.
ExitCode run_glance(const GlanceRequest& request);

}

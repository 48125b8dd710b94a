// `quoin posting`: what a posting asks for.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct PostingRequest {
    std::vector<std::string> inputs; // `-` is standard input
    std::string format = "text";     // or `json`
    bool explain = false;            // the arithmetic, and what was left out
};

// To standard output, file by file. ExitCode::errors if one cannot be read.
ExitCode run_posting(const PostingRequest& request);

}

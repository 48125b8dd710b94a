// `quoin scan`: what an applicant portal gets out of PDFs, ours or not.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct ScanRequest {
    std::vector<std::string> inputs;
    std::string format = "text"; // or `json`
};

// Reports every input, in order, to standard output; one that cannot be read to standard error
// too. ExitCode::errors if one cannot be read or has a fault that is more than to be considered.
ExitCode run_scan(const ScanRequest& request);

}

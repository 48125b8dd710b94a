// `quoin help`: what a verb does, and the references of the markup, of themes and of the checks.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct HelpRequest {
    std::vector<std::string> topics; // verbs or references; none: what quoin does
    std::string format;              // text, or json: the tables of verbs and options
};

// A topic that is both, such as `themes`, gives both.
ExitCode run_help(const HelpRequest& request);

}

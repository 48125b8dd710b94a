// `quoin redline`: what changed between two drafts, for an adviser to tell.
#pragma once

#include "compiler/commands/command_line.hpp"
#include "compiler/stages/typeset.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct RedlineRequest {
    std::vector<std::string> drafts; // the old one and the new, or one with `since`
    std::string since;               // a revision in git; empty: HEAD
    std::string as;                  // the file that the drafts are of, where they are copies
    std::string format = "text";     // or `json`
    stages::Choices choices;
    std::string marked; // write the new page with its changes to this PDF; `-`: standard output
};

// Whatever changed, ExitCode::done; of drafts that are the same nothing is printed as text.
ExitCode run_redline(const RedlineRequest& request);

}

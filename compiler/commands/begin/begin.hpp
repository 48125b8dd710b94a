// `quoin begin`: a first draft, by questions or as a source of comments to fill in.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <string>

namespace quoin::commands {

struct BeginRequest {
    std::string output;       // empty: draft.resume; `-`: standard output
    std::string stage, field; // both: without questions
    std::string from;         // an old document that the draft is made of
};

ExitCode run_begin(const BeginRequest& request);

}

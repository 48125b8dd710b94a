// `quoin proof`: what a career adviser would say of a résumé, before one has to.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/commands/command_line.hpp"
#include "compiler/stages/typeset.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct ProofRequest {
    std::vector<std::string> inputs; // `-` is standard input
    std::string format = "text";     // or `json`, `sarif`
    stages::Choices choices;
    bool strict = false;        // a should fails, too
    bool summary = false;       // a few lines in place of the findings
    bool roster = false;        // one line in their place
    bool ignore_accept = false; // what the résumé sets aside is a finding as any other
    // Write the pages with their findings to this PDF; `-`: standard output; of several, the folder
    // that each goes to.
    std::string marked;
    advice::OfficeChoice office = {}; // whose rules are followed
};

// Findings go to standard output, errors in a file to standard error. ExitCode::errors if there is
// an error or a must, or with `strict` a should.
ExitCode run_proof_command(const ProofRequest& request);

}

// `quoin checks`: what proof looks at, told without a résumé.
#pragma once

#include "compiler/advice/proof.hpp"
#include "compiler/commands/command_line.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct ChecksRequest {
    std::vector<std::string> names; // print what these are about; none: list all
    bool reference = false;         // print the reference page
};

ExitCode run_checks(const ChecksRequest& request);

// From the table of checks
std::string list_of_checks();
std::string explanation_of(const advice::Check& check);
std::string reference_page(); // grammar/checks.md

}

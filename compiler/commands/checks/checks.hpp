// `quoin checks`: what proof looks at, told without a résumé.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/advice/proof.hpp"
#include "compiler/commands/command_line.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct ChecksRequest {
    std::vector<std::string> names;   // print what these are about; none: list all
    bool reference = false;           // print the reference page
    advice::OfficeChoice office = {}; // whose effect is told
};

ExitCode run_checks(const ChecksRequest& request);

// From the table of checks, and what an office changes of it
std::string list_of_checks(const office::Office* office = nullptr);
std::string explanation_of(const advice::Check& check, const office::Office* office = nullptr);
std::string reference_page(); // grammar/checks.md

}

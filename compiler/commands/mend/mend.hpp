// `quoin mend`: the mends that change form alone, made in the source files.
#pragma once

#include "compiler/advice/offices.hpp"
#include "compiler/commands/command_line.hpp"
#include "compiler/english/language.hpp"
#include "compiler/stages/model/resume.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct MendRequest {
    std::vector<std::string> inputs;  // `-` is standard input
    bool dry_run = false;             // print what would change
    advice::OfficeChoice office = {}; // whose rules are followed: what is off is not mended
};

// To mend is not to judge: ExitCode::errors for errors alone, whatever is left.
ExitCode run_mend(const MendRequest& request);

// What mending needs beside the résumé; one for all inputs of a call.
struct MendTools {
    const english::Language& language;
    model::Date read_on;                // SOURCE_DATE_EPOCH, else the clock's day
    advice::Offices* offices = nullptr; // whose rules are followed; null: none
};

// The safe mends of one input: made in place, or for `dry_run` and standard input printed.
struct MendOutcome {
    std::string output;       // for standard output
    std::string messages;     // for standard error
    std::string once_written; // for standard error, when the output is out
    bool failed = false;
};
MendOutcome mend_input(const std::string& input, const MendTools& tools, bool dry_run);

}

// `quoin set`: résumés in, PDFs out.
#pragma once

#include "compiler/commands/command_line.hpp"
#include "compiler/stages/typeset.hpp"

#include <string>
#include <vector>

namespace quoin::commands {

struct SetRequest {
    std::vector<std::string> inputs; // `-` is standard input
    std::string output;              // empty: beside the input; for several inputs a folder
    std::string plain, deps;         // empty: not asked for; for several inputs folders
    std::string entry;               // the one that `plain` holds; empty: all
    std::string posting;             // what each is tailored to; empty: none
    std::string format = "text";
    stages::Choices choices;
    bool verify = false;       // read each PDF back before it takes its target's place
    bool explain = false;      // print the proof of each fit
    bool ascii = false;        // of `plain`
    bool at_preferred = false; // as the theme likes it best, on as many pages as it takes
    bool draft = false;        // set also what does not fit, on as many pages as it takes
    bool watch = false;        // set again whenever something that was read has changed
    bool if_changed = false;   // only what something has changed of that it is made of
    std::string asked;         // all options, as they were given
};

// Sets every input, on all cores when there are several, and prints messages in input order. An
// input that fails leaves its outputs as they were and does not stop the others.
ExitCode run_set(const SetRequest& request);

}

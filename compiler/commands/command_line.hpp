// The command line: `quoin VERB …` to the verb's request, faults to exit codes.
#pragma once

#include <string>
#include <string_view>

namespace quoin::commands {

enum class ExitCode : int {
    done = 0,
    errors = 1,    // in the résumé, or in reading and writing files
    wrong_use = 2, // of the command line or the environment
    does_not_fit = 3,
};

const char* version();    // as the project's CMakeLists.txt has it
const char* built_from(); // the commit, as git describes it; empty if it is not known

// Of a verb; of the program if none is named.
std::string help_on(std::string_view verb);

// Never throws: what escapes a verb is reported as a fault of quoin's own.
int run_command_line(int argc, char** argv);

}

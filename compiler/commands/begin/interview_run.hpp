// An interview held on standard input and output, kept on the disk after each answer.
#pragma once

#include "compiler/commands/command_line.hpp"
#include "compiler/interview/draft.hpp"

#include <string>

namespace quoin::commands {

// What is said when a draft has been written there.
std::string written(const std::string& output);

// For a draft that is to be written to `output`; goes on from what is kept beside it, else begins
// with `draft`.
ExitCode run_interview(const std::string& output, interview::Draft draft);

}

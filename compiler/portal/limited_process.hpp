// Programs that read files nobody vouches for: each in a process of its own, with little memory,
// little time, and nothing it can write to but a pipe.
#pragma once

#include <chrono>
#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace quoin::portal {

struct Tool {
    std::string name; // looked for on PATH
    std::vector<std::string> arguments;
    std::vector<std::string> environment = {}; // NAME=value; beside these only LC_ALL and PATH
};

struct ToolLimits {
    std::size_t memory = std::size_t{1} << 29; // bytes of address space
    unsigned cpu_seconds = 5;
    std::chrono::milliseconds patience{15'000}; // by the clock on the wall
    std::size_t output = std::size_t{1} << 24;  // bytes
};

enum class ToolEnd {
    done,
    missing,
    unlimited, // not run, for its limits could not be set
    too_long,
    too_large,
    no_memory,
    broken, // by a signal, of a fault in the tool
    not_run // for one before it was not done
};

struct ToolResult {
    ToolEnd end = ToolEnd::not_run;
    int code = 0; // of a tool that is done; the signal, of one that is broken
    std::string output;
    std::string messages; // standard error, its beginning
};

// Runs the tools, two at a time, and gives their results in order. A tool that breaks a limit is
// killed with all it started, and none is started after it; one that would write a file gets EFBIG
// and goes on. Throws std::system_error if the system refuses a process or a pipe.
std::vector<ToolResult> run_limited(std::span<const Tool> tools, const ToolLimits& limits = {});

}

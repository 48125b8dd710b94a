// What came of one input of `quoin set`.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <set>
#include <string>

namespace quoin::commands {

struct SetOutcome {
    ExitCode code = ExitCode::done;
    std::string messages;                       // for standard error
    std::string explanation = {};               // that was asked for
    nlohmann::ordered_json fit = {}, cuts = {}; // for programs, if it was asked for
    std::string state = {};                     // of the page, in a few words
    std::set<std::filesystem::path> read = {};  // files
};

}

// `quoin themes`: which themes there are, and a specimen page of one.
#pragma once

#include "compiler/commands/command_line.hpp"

#include <string>

namespace quoin::commands {

struct ThemesRequest {
    std::string specimen;        // a theme's name or path; empty: all are listed
    std::string output;          // of the specimen; empty: NAME.pdf in the current folder
    std::string format = "text"; // of the list
};

ExitCode run_themes(const ThemesRequest& request);

}

// Where the outputs of one call go.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/commands/set/set.hpp"

#include <optional>
#include <string>
#include <vector>

namespace quoin::commands {

struct Outputs { // of one input; empty: not written; `-`: standard output
    std::string pdf, plain, deps;
};

// Whether one of the files that were read is written over; devices and pipes are not.
bool would_write_over(const std::string& output, const Sources& sources);

// One Outputs for each input, or what is wrong with the request: several inputs and no folder, two
// outputs of one name, an output that would overwrite a source.
std::optional<std::string> plan_outputs(const SetRequest& request, std::vector<Outputs>& outputs);

}

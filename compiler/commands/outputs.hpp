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

// Whether a page or a report would take the place of one of them, or of what by its name is another
// source: a résumé, a theme, an office's rules.
bool would_spoil(const std::string& output, const Sources& sources);
bool is_source(const std::string& output); // by its name, and it is there

// One Outputs for each input, or what is wrong with the request: several inputs and no folder, two
// outputs of one name, an output that would overwrite a source.
std::optional<std::string> plan_outputs(const SetRequest& request, std::vector<Outputs>& outputs);

}

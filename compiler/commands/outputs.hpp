// Where the outputs of one call go.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/commands/set/set.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

struct Outputs { // of one input; empty: not written; `-`: standard output
    std::string pdf, plain, deps;
};

bool is_same_file(const std::string& a, const std::string& b); // by whichever names

// Whether one of the files that were read is written over; devices and pipes are not.
bool would_write_over(const std::string& output, const Sources& sources);

// Whether a page or a report would take the place of one of them, or of what by its name is another
// source: a résumé, a theme, an office's rules.
bool would_spoil(const std::string& output, const Sources& sources);

// False if it would, or could not be written, which is said for the verb.
bool write_beside(const Sources& sources, const std::string& output, const std::string& bytes,
                  std::string_view verb);

// One Outputs for each input, or what is wrong with the request: several inputs and no folder, two
// outputs of one name, an output that would overwrite a source.
std::optional<std::string> plan_outputs(const SetRequest& request, std::vector<Outputs>& outputs);

}

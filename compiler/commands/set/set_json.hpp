// What came of one input of `quoin set`, for programs; grammar/schemas/set.schema.json holds its
// form.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/commands/outputs.hpp"
#include "compiler/commands/set/set_outcome.hpp"
#include "compiler/stages/fit/cuts.hpp"
#include "compiler/stages/typeset.hpp"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <vector>

namespace quoin::commands {

// Null if it does not fit.
nlohmann::ordered_json fit_json(const stages::Typeset& typeset);

nlohmann::ordered_json cuts_json(int lines_too_many, const fit::Cuts& cuts,
                                 const stages::Typeset& typeset, const Sources& sources);

// All of one call, in the order of the inputs.
std::string set_json(const std::vector<std::string>& inputs, const std::vector<Outputs>& outputs,
                     const std::vector<SetOutcome>& outcomes);

}

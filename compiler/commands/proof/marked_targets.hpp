// Where the marked proofs of one call go.
#pragma once

#include "compiler/commands/proof/proof.hpp"

#include <optional>
#include <string>
#include <vector>

namespace quoin::commands {

// One for each input, none without --marked; or what is wrong with the request. `--marked` names a
// file for one résumé, or the folder that each goes to: fall.resume to fall.marked.pdf.
std::optional<std::string> plan_marked(const ProofRequest& request,
                                       std::vector<std::string>& targets);

}

// What was chosen of a résumé for a posting, and what would have been next.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/commands/tailor/for_posting.hpp"

#include <string>

namespace quoin::commands {

std::string tailor_report(const ForPosting& chosen, const Sources& sources);

}

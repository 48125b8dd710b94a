// A form whose answers stand below their captions, as a portal shows them before they are sent.
#pragma once

#include "compiler/transcription/old_text.hpp"

#include <vector>

namespace quoin::transcription {

// Each caption with its answer on one line, `Job Title: Aide`; other pages as they are.
std::vector<OldLine> answers_beside(const std::vector<OldLine>& lines);

}

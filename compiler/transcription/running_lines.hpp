// A page's own head and foot: its number, the name again.
#pragma once

#include "compiler/transcription/old_text.hpp"

#include <vector>

namespace quoin::transcription {

void mark_running_lines(std::vector<OldLine>& lines);

}

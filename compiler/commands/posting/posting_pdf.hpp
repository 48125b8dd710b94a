// The text of a posting's PDF with its headings marked as plain text marks them: `## Duties`. A
// heading is a short line in letters that are heavier or larger than most; heavy words that open a
// line and end with a stop are one too, and so is a short line that hangs over indented ones.
#pragma once

#include "compiler/portal/scan.hpp"

#include <string>

namespace quoin::commands {

std::string text_with_headings(const portal::StyledReading& reading);

}

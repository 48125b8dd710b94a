// Colours of messages on a terminal: how much something weighs, and the words at fault.
#pragma once

#include <string>
#include <string_view>

namespace quoin::commands {

// `always`, `never`, or `auto`, which is also what holds before: on a terminal that is not `dumb`,
// and never with the environment's NO_COLOR.
void choose_colours(std::string_view when);

// Lines of the form `place: weight: words` for where `descriptor` goes, with colours if it is to
// have them: the weight by its own, what stands in quotes bold, and what points at a place below a
// line.
std::string with_colours(std::string text, int descriptor);

}

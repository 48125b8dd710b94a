// `quoin set --watch`: inputs set again as often as what they are made from changes.
#pragma once

#include "compiler/commands/set/set_outcome.hpp"

#include <cstddef>
#include <functional>

namespace quoin::commands {

// Sets all, then goes on until a signal ends it. Each is told of in one line on standard output,
// and its messages go to standard error. False if standard output cannot be written any more.
bool watch_and_set(std::size_t inputs, const std::function<SetOutcome(std::size_t)>& set_one);

}

// What can be wrong with what a build asks for.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::stages::messages {

inline constexpr Message nothing_tagged = "nothing here is tagged '{}'{}";

}

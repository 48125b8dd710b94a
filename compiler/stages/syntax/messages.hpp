// What can be wrong with lines beyond a rule of their grammar.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::syntax::messages {

inline constexpr Message faults_left_out =
    "there are {} faults in all, of which the first {} are shown";
inline constexpr Message title_alone = "{} opens no section: write 'section: {}'";
inline constexpr Message indented_label =
    "an indented line goes on with the line above: '{}:' starts in the first column";

}

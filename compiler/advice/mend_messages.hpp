// What is said of mends that were not made.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::advice::messages {

inline constexpr Message left_to_mend = "left for you to mend, for made by itself the change would "
                                        "have the file read in another way";

}

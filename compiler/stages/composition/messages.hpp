// What can be wrong with the fonts for a text.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::composition::messages {

inline constexpr Message unknown_family = "theme '{}' asks for the font family '{}', which is not "
                                          "known; expected one of {}{}";
inline constexpr Message no_glyph = "no font of theme '{}' has the character '{}' (U+{:04X})";
inline constexpr Message right_to_left =
    "from '{}' (U+{:04X}) on, words that are read from right to left would stand in the wrong "
    "order: write them in Latin letters";

}

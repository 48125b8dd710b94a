// What can be wrong with the fonts for a text.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::composition::messages {

inline constexpr Message unknown_family = "theme '{}' asks for the font family '{}', which is not "
                                          "known; expected one of {}{}";
inline constexpr Message face_lacks =
    "{} asks for {}, and the font '{}' has none: choose another family, or leave them out";
inline constexpr Message no_glyph =
    "no font of theme '{}' has the sign {} (U+{:04X}): leave it out, or say it in words";
inline constexpr Message no_letters =
    "no font of theme '{}' has {} letters, as in {}: name a font file that has them in the theme's "
    "'family-file', or write the words in Latin letters";
inline constexpr Message no_family_file =
    "there is no font file {}: expected a path, or one below /usr/share/fonts such as "
    "'truetype/noto/NotoSansArabic-Regular.ttf'";
inline constexpr Message right_to_left =
    "from '{}' (U+{:04X}) on, words that are read from right to left would stand in the wrong "
    "order: write them in Latin letters";

}

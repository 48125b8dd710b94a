// What can be wrong with the list of font families and with the files that it names.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::fonts::messages {

// The list
inline constexpr Message unknown_label = "unknown label '{}' in a font family{}";
inline constexpr Message expected_labels = "; expected family, licence, package or a style";
inline constexpr Message second_label = "second '{}' in one font family; expected one, so leave a "
                                        "blank line before the next family";
inline constexpr Message no_label = "font family without '{}'; add the line";
inline constexpr Message second_family = "second font family '{}'; expected each name once";
inline constexpr Message bullet = "bullet in a font family; expected 'label: value'";
inline constexpr Message section =
    "section in a list of font families; expected blocks of fields alone";

// The files
inline constexpr Message no_style = "font family '{}' has no file for this style";
inline constexpr Message no_file = "font file '{}' is missing; the Debian package '{}' carries it";
inline constexpr Message unreadable = "font file '{}' cannot be read";
inline constexpr Message no_font = "file '{}' is not an OpenType font";
inline constexpr Message no_letter =
    "font file '{}' lacks the letter '{}', which text is measured by";

}

// The settings of a theme that are one number or one of two words: what each sets stands above its
// row, so that one is added here and nowhere else in this room.
#pragma once

#include <array>
#include <string_view>

namespace quoin::theme {

struct Measures {
    double bullet_indent = 0; // em, from the margin to the bullet
    double bullet_hang = 0;   // em, from the bullet to its text
    double body_indent = 0;   // em, of all that stands under a section's heading
    double word_space = 0;    // em of a line's size; 0: the font's own
    double icon_gap = 0.35;   // em, from an icon to its text
    double fill_gap = 1.5;    // em of a line's size, the least white at a `{fill}`
    bool draws_icons = false;
    bool hyphenate = false;
    bool hang_punctuation = false; // at the margins, so that the edge of the letters is even
    bool two_columns = false;      // under the heading: a main one and a narrow one at its side
    bool side_left = false;
    double column_gap = 2;        // em, between columns, and beside headings in the margin
    bool margin_headings = false; // of sections, beside their first lines
};

struct Bounds {
    double least = 0;
    double most = 0;
    std::string_view unit;
};

struct NumberSetting {
    std::string_view label;
    double Measures::*of;
    Bounds bounds;
};
inline constexpr NumberSetting number_settings[] = {
    {"bullet-indent", &Measures::bullet_indent, {0, 3, "em"}},
    {"bullet-hang", &Measures::bullet_hang, {0.4, 3, "em"}},
    {"body-indent", &Measures::body_indent, {0, 12, "em"}},
    {"column-gap", &Measures::column_gap, {1, 6, "em"}},
    {"word-space", &Measures::word_space, {0.15, 0.5, "em"}},
    {"icon-gap", &Measures::icon_gap, {0, 2, "em"}},
    {"fill-gap", &Measures::fill_gap, {0.5, 6, "em"}},
};

struct EitherSetting { // the first word or the second
    std::string_view label;
    std::array<std::string_view, 2> words;
    bool Measures::*of;
};
inline constexpr EitherSetting either_settings[] = {
    {"hyphenate", {"no", "yes"}, &Measures::hyphenate},
    {"hang-punctuation", {"no", "yes"}, &Measures::hang_punctuation},
    {"columns", {"one", "two"}, &Measures::two_columns},
    {"side", {"right", "left"}, &Measures::side_left},
    {"headings", {"above", "margin"}, &Measures::margin_headings},
    {"icons", {"none", "drawn"}, &Measures::draws_icons},
};

}

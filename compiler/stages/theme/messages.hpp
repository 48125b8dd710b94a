// What can be wrong with a theme.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::theme::messages {

// The file
inline constexpr Message no_theme =
    "there is no theme '{}': expected one of {}, or a path to a theme file{}";
inline constexpr Message no_theme_file = "there is no theme file {}";
inline constexpr Message not_a_theme_file =
    "{} is not a theme: expected a regular file whose own name ends in '.theme'";
inline constexpr Message based_too_deep =
    "more than {} themes, each based on the next; base it on one of them that stands further on";
inline constexpr Message based_on_itself = "a theme cannot be based on itself: {}{}";
inline constexpr Message section_in_theme =
    "a theme has no sections: expected 'style: NAME', 'field: NAME', 'form: NAME' or 'icon: NAME'";
inline constexpr Message bullet_in_theme = "expected 'label: value' in a theme, found a bullet";
inline constexpr Message expected_icon = "expected 'icon: NAME', found '{}'";
inline constexpr Message given_twice = "'{}' is given twice";
inline constexpr Message theme_lacks = "theme '{}' has no '{}'";

// Settings
inline constexpr Message no_setting = "there is no setting '{}' {}: expected one of {}{}";
inline constexpr Message outside = "'{}' of {:.3g} {} is outside {:.3g} to {:.3g}";
inline constexpr Message prefers_outside =
    "'{}' prefers {:.3g}, which is outside its own bounds {:.3g} to {:.3g}";
inline constexpr Message cannot_be = "'{}' cannot be '{}': expected one of {}{}";
inline constexpr Message no_section_holds = "no section holds '{}': expected some of {}, or none{}";
inline constexpr Message too_light = "'{}' has a contrast of {:.2f}:1 on white, and text needs "
                                     "{:.1f}:1 to be read by all: choose a darker colour";
inline constexpr Message no_accent =
    "style '{}' is set in the theme's accent, and theme '{}' has no 'accent'";
inline constexpr Message too_small = "style '{}' would be set at {:.3g} pt, and the least is "
                                     "{:.3g} pt: make its size at least {:.3g}";

// Settings that do not go together
inline constexpr Message margin_of_columns = "a page of two columns has no margin for headings: "
                                             "expected 'headings: above' or 'columns: one'";
inline constexpr Message margin_narrow = "a body-indent of {:.3g} em is too narrow for headings in "
                                         "the margin: expected {:.3g} em at least";
inline constexpr Message margin_align =
    "a heading in the margin cannot be set '{}': expected 'align: left' or 'align: right'";
inline constexpr Message margin_rule =
    "a heading in the margin has no rule below: expected 'rule: above' or 'rule: none'";
inline constexpr Message margin_size = "style 'section' is {:.3g} times the text, and the lines of "
                                       "a heading in the margin stand level "
                                       "with the text's: expected a size of at most {:.3g}";
inline constexpr Message skills_of_columns =
    "a page of two columns has no room for columns of skills: expected 'skill-columns: one' or "
    "'columns: one'";
inline constexpr Message skills_narrow =
    "a column of skills may be as narrow as {:.3g} em, and needs {:.3g}: expected fewer "
    "'skill-columns', or less 'body-indent' or 'column-gap'";

// Forms and the patterns in them
inline constexpr Message no_line = "there is no line '{}' in {}: expected one of {}{}";
inline constexpr Message no_field = "there is no field '{}' here: expected one of {}{}";
inline constexpr Message no_ways =
    "the theme names no ways: expected 'ways: NAME, NAME' among its settings";
inline constexpr Message fill_misplaced =
    "'{{fill}}' is misplaced: expected it once in a line, outside of groups and marks";
inline constexpr Message fill_in_running_head =
    "a running head has no '{{fill}}': expected its pieces side by side";
inline constexpr Message fill_not_left =
    "'{{fill}}' sends text to the right edge, and style '{}' is set '{}': expected 'align: left'";
inline constexpr Message not_one_field = "'{}' is set once for each value of a field: expected one "
                                         "field in it, outside of groups";
inline constexpr Message page_before_end =
    "'{{page}}' is followed by something: expected it at the end";
inline constexpr Message printed_twice = "{} prints '{}' twice";
inline constexpr Message unprinted = "{} does not print '{}': every field needs its place";
inline constexpr Message lost_field =
    "'{}' would be lost where '{}' has no value: give each a group of its own";

inline constexpr Message no_word =
    "no page says '{}' by itself: expected a word such as '{{courses-word}}', of {}{}";

// Icons
inline constexpr Message no_icon =
    "there is no icon '{}': expected one of {}, or a block 'icon: {}' with its path{}";
inline constexpr Message icon_name =
    "an icon cannot be called '{}': expected letters a to z and hyphens";
inline constexpr Message no_icon_setting = "there is no setting '{}' of an icon: expected path{}";
inline constexpr Message path_beyond =
    "an icon is drawn in a square of {:.3g} by {:.3g}, and this path goes beyond it";

}

// What can be wrong with lines beyond a rule of their grammar.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::syntax::messages {

inline constexpr Message faults_left_out =
    "there are {} faults in all, of which the first {} are shown";
inline constexpr Message title_alone = "{} opens no section: write 'section: {}'";
inline constexpr Message bullets_need_no_label =
    "{} is not needed: bullets stand right below the fields; take the line out";
inline constexpr Message setting_line =
    "{} has a sign of equality, as files of settings have it: write '{}'";
inline constexpr Message value_below =
    "{} has its value on the line below it: write both on one line, as '{} {}'";
inline constexpr Message list_below =
    "{} has its list on the lines below it: write all on one line, as '{}: one, two'";
inline constexpr Message foreign_heading =
    "{} is a comment, which is not printed: write 'role: {}', or the label that it is; a comment "
    "begins with one '#'";
inline constexpr Message numbered_comment =
    "this line is a comment, which is not printed: begin it with a space if it goes on with the "
    "bullet above it";
inline constexpr Message pushed_in = "{} and what stands below it down to line {} is indented, so "
                                     "it goes on with the line above, and "
                                     "there is none: start each line in the first column";
inline constexpr Message item_of_list =
    "{} is an item of a list, as other formats have entries, and so is what stands below it down "
    "to line {}: take out the dash, and start each line in the first column";
inline constexpr Message indented_label =
    "an indented line goes on with the line above: '{}:' starts in the first column";

}

// What can be wrong with what a build asks for.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::stages::messages {

inline constexpr Message nothing_tagged = "nothing here is tagged '{}'{}";

// A page that does not hold it
inline constexpr Message page_too_long = "{} too long for {} at {}; {}";
inline constexpr Message with_smallest_margins = "{} and the smallest margins allowed";
inline constexpr Message with_margins = "{} and margins of {} in, the smallest allowed";
inline constexpr Message set_as_draft = "set as a draft, with a rule across where its pages end";
inline constexpr Message nothing_written = "nothing was written";
inline constexpr Message cut_high_school =
    "a high school beside a college is the first to go; without this entry {} fewer";
inline constexpr Message cut_bullet =
    "bullet {} of its entry, where five are the usual most; without it {} fewer";
inline constexpr Message fewest_words = "{}the fewest words that bring it onto {}: {} in {}";
inline constexpr Message not_all_tried =
    "there are so many ways to shorten this that not all were tried, and fewer words may do";
inline constexpr Message cheapest_follow = "; the cheapest {} of them follow";
inline constexpr Message characters_save = "{} fewer {} {}";
inline constexpr Message whole_bullet = "{}: this bullet, whole";
inline constexpr Message say_words = "{}, say {}";
inline constexpr Message last_lines_hold = " (the last {} only {})";
inline constexpr Message words_will_not_do =
    "shorter words will not do; take out whole entries or sections";
inline constexpr Message more_like_these = "{} more like these";

}

// What an office asks for, in words. A part of messages.hpp.
#pragma once

#include "compiler/advice/finding_row.hpp"
#include "compiler/base/message.hpp"

namespace quoin::advice::messages {

inline constexpr Message office_sets = "sets '{}' to {}";
inline constexpr Message office_weighs = "makes this a {}";
inline constexpr Message office_keeps = "does not let it be set aside";
inline constexpr Message office_leaves_out = "leaves out {} of [{}]";
inline constexpr Message office_asks = "asks for this";
inline constexpr Message office_warns = "warns of it";
inline constexpr Message office_quotes = "warns of it by {}";
inline constexpr Message office_prefers = "prefers {}";
inline constexpr FindingRow avoided_words{"{} is to be avoided"};
inline constexpr Message say_otherwise = "say it in another word, or show it";
inline constexpr FindingRow office_phrase{"{} is not liked here"};
inline constexpr FindingRow section_order{"{} stands above {}"};
inline constexpr Message ordered_so = "the order is {}";
inline constexpr FindingRow other_theme{"the theme is '{}'"};
inline constexpr Message choose_theme = "set 'theme' to {}";
inline constexpr FindingRow other_dates{"dates are printed as '{}'"};
inline constexpr Message choose_dates = "set 'dates-as' to {}";
inline constexpr FindingRow near_name{"{} is spelled otherwise in the office's list"};

}

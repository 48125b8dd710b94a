// Whether a hyphen between two figures stands for a range.
#pragma once

#include <string_view>

namespace quoin::model {

// "12-15" and "$1.2M-$1.5M" are ranges, and so is "2019-21". A score ("3-2"), a postal code with
// its four further figures ("98221-0142") and a telephone number without its area code are none: a
// range goes up, and one of three and four figures has a word of what is counted after it.
bool is_figure_range(std::string_view before, std::string_view from_hyphen);

// `Calculus I-III`; not `I-V curves`, which are of current and voltage.
bool is_roman_range(std::string_view before, std::string_view from_hyphen);

}

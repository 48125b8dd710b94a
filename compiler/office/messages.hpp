// What can be wrong with an office's rules.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::office::messages {

inline constexpr Message section_in_rules =
    "an office's rules have no sections: expected 'label: value'";
inline constexpr Message bullet_in_rules =
    "an office's rules have no bullets: expected 'label: value'";
inline constexpr Message no_label = "there is no rule {}{}";
inline constexpr Message no_check = "there is no check {}{}";
inline constexpr Message no_choice = "{} cannot be {}: expected {}{}";
inline constexpr Message no_theme = "there is no theme {}: expected one of {}, or the name of a "
                                    "theme file, which ends in '.theme'{}";
inline constexpr Message given_twice = "{} is given twice, first in line {}";
inline constexpr Message otherwise =
    "{} is said in line {} to be {}, and here {}: keep one of them";
inline constexpr Message always_and_off =
    "{} is off by line {}, and 'always' keeps it: keep one of them";
inline constexpr Message avoided_and_preferred =
    "{} is to be avoided by line {}, and is preferred here: keep one of them";
inline constexpr Message opens_block =
    "'for' opens a block: put it first, below a blank line, and its rules under it";
inline constexpr Message not_in_block =
    "{} is of the whole office: it stands in no block that 'for' opens";
inline constexpr Message under_phrase = "{} belongs right below a 'phrase', in the same block";
inline constexpr Message phrase_without_advice =
    "{} has no advice: add a line 'advice:' right below, with what to do in its place";
inline constexpr Message outside = "{} of {} is outside {:.3g} to {:.3g} {}";
inline constexpr Message whole_number = "{} counts {}: expected a whole number, found {}";
inline constexpr Message one_number = "{} is one number: expected such as '{:.3g}', found {}";
inline constexpr Message backwards =
    "{} runs from {:.3g} down to {:.3g}; did you mean '{:.3g}..{:.3g}'?";
inline constexpr Message leaves_out_what_it_shows =
    "a GPA is left out under {:.3g} and shown from {:.3g} on: the first is to be no more than the "
    "second";

}

// What is said of words that are spelled wrong, as messages.hpp says the rest.
#pragma once

#include "compiler/advice/finding_row.hpp"
#include "compiler/base/message.hpp"

namespace quoin::advice::messages {

inline constexpr FindingRow misspelt{"{} is not in the dictionary of US English"};
inline constexpr FindingRow known_slip{"{} is a slip that is often made"};
inline constexpr FindingRow run_together{"{} is two words without the blank between"};
inline constexpr FindingRow misspelt_elsewhere{"{} is not in the dictionary of {}"};
inline constexpr FindingRow spelled_to_here{
    "no word from {} on is looked at: {} different ones before it are in no dictionary",
    "if the page is in another language, say so with 'language'"};
inline constexpr Message near_words = "{}? If it is right as it is, add it to 'words'";
inline constexpr FindingRow word_slip{"{} is a slip here for {}"};
inline constexpr Message write_word = "write {}";
inline constexpr Message write_word_or_keep =
    "write {}. If it is right as it is, add it to 'words'";
// Of the title of a section
inline constexpr Message title_meant = "did you mean '{}'?";

}

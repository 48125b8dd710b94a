// What can be wrong with the words of a page.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::page_words::messages {

inline constexpr Message no_language =
    "a page has no words in {} yet; expected one of {}, or a file '{}' with its words beside them";
inline constexpr Message no_words_at_all =
    "no words of a page are in '{}': this copy of quoin's data is not whole";
inline constexpr Message no_such_words = "no page says '{}': expected a label as in 'words/en'";
inline constexpr Message count_of_words = "'{}' has {} words with commas between, found {}";
inline constexpr Message words_missing = "there is no '{}' in these words of a page: add the line";

}

// What a word is to the words beside it: its closed class, or what part of speech it may be.
#pragma once

#include "compiler/english/sentence.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace quoin::english {

using Kinds = std::uint32_t; // one bit a kind

// Of `@name` in words/word_slips.txt; none if there is no such kind.
std::optional<Kinds> kind_named(std::string_view name);

// Of the token at `i`, which may be past either end.
Kinds kinds_of(const Sentence& sentence, std::size_t i);

}

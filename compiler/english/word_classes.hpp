// The closed classes of English words, and what a word's ending tells of the open ones.
#pragma once

#include "compiler/english/lexicon.hpp"

#include <cstdint>
#include <string_view>

namespace quoin::english {

namespace word_class {
constexpr std::uint32_t determiner = 1u << 0; // a, the, each, several
constexpr std::uint32_t possessive = 1u << 1; // my, their
constexpr std::uint32_t preposition = 1u << 2;
constexpr std::uint32_t conjunction = 1u << 3; // and, but
constexpr std::uint32_t relative = 1u << 4;    // that, which, where: opens a clause of its own
constexpr std::uint32_t pronoun = 1u << 5;     // them, it
constexpr std::uint32_t be = 1u << 6;
constexpr std::uint32_t have = 1u << 7;
constexpr std::uint32_t modal = 1u << 8;
constexpr std::uint32_t adverb = 1u << 9;
constexpr std::uint32_t particle = 1u << 10; // out, up, down: goes with a verb
constexpr std::uint32_t number = 1u << 11;   // two to a million, zero, dozens
constexpr std::uint32_t negation = 1u << 12;
constexpr std::uint32_t past_be = 1u << 13;    // was, were
constexpr std::uint32_t present_be = 1u << 14; // am, is, are
}

// `word` is in small letters. Adverbs in -ly are adverbs.
std::uint32_t word_classes(std::string_view word, const Lexicon& lexicon);

}

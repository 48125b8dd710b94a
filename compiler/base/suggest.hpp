// The nearest known word to one that is not known, for "did you mean".
#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace quoin {

// The candidate with the least optimal-string-alignment distance to `word` (ASCII case ignored), if
// that is near enough to be a slip: at most one edit for every three letters, and at least one.
std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> candidates);

// The same, of a word long enough to be near to none by chance, and that begins alike: what it
// surely is a slip of.
std::optional<std::string_view> slip_of(std::string_view word,
                                        std::span<const std::string_view> candidates);

}

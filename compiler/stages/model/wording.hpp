// The words in which messages about the model name what was found and what was expected.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace quoin::model {

// `text` in single quotes, cut to a length that can be read in a message.
std::string in_quotes(std::string_view text);

// "'a', 'b' or 'c'"
std::string listed(std::span<const std::string_view> words);

// "; did you mean 'x'?" or nothing.
std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates);

}

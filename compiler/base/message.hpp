// Messages: the text of a table with what was found put into it.
#pragma once

#include <fmt/format.h>

#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace quoin {

// What a table `messages` holds: what is wrong and how to mend it, in the form that fmt takes. Its
// places are filled by `fill` alone, so that too many or too few do not compile.
struct Message {
    consteval Message(const char* words) : text(words) {}

    std::string_view text;
};

constexpr std::size_t places_in(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++at)
        if (text[at] == '{' && text[++at] != '{') ++count; // `{{` prints a brace
    return count;
}

// Of a row with a `text`: a message, or one with more to it.
template<const auto& row, typename... Found>
std::string fill(Found&&... found) {
    static_assert(places_in(row.text) == sizeof...(Found), "a message takes a word for each place");
    return fmt::format(fmt::format_string<Found...>(row.text), std::forward<Found>(found)...);
}

// Text of the user's in single quotes, cut to a length that can be read in a message.
std::string in_quotes(std::string_view text);

// The message of a rule of the grammar, which may or may not name what was found.
template<const Message& message>
std::string worded(std::string_view found) {
    if constexpr (places_in(message.text) == 0)
        return fill<message>();
    else
        return fill<message>(in_quotes(found));
}

// "'a', 'b' or 'c'"
std::string listed(std::span<const std::string_view> words);

// "; did you mean 'x'?" or nothing.
std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates);

}

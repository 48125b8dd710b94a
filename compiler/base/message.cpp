#include "compiler/base/message.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/base/suggest.hpp"
#include "compiler/base/utf8.hpp"


namespace quoin {

std::string in_quotes(std::string_view text) {
    constexpr std::size_t most = 40; // characters
    std::size_t end = 0;
    for (std::size_t count = 0; end < text.size() && count < most; ++count)
        end += first_character(text.substr(end)).length;
    return fmt::format("'{}{}'", text.substr(0, end), end < text.size() ? "…" : "");
}

std::string listed(std::span<const std::string_view> words) {
    const auto quoted = [](std::string_view word) { return "'" + std::string(word) + "'"; };
    return joined(words, " or ", all_of_them, quoted);
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates) {
    const auto near = nearest(word, candidates);
    return near ? fmt::format("; did you mean '{}'?", *near) : std::string{};
}

}

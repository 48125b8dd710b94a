// Numbers written in figures.
#pragma once

#include <charconv>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>

namespace quoin {

// The number that a text is from its first byte to its last; none if it is no such, or beyond what
// `Number` holds. `base` as std::from_chars takes it.
template<typename Number, typename... Base>
std::optional<Number> number_from(std::string_view text, Base... base) {
    Number number{};
    const char* const end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number, base...);
    return read.ec == std::errc{} && read.ptr == end ? std::optional(number) : std::nullopt;
}

// The same where commas may group the figures: `1,200`.
inline std::optional<double> grouped_number(std::string_view text) {
    std::string plain(text);
    std::erase(plain, ',');
    return number_from<double>(plain);
}

}

// Reading `3.62 / 4.00` and its like.
#include "compiler/advice/gpa.hpp"

#include "compiler/advice/walk.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace quoin::advice {

namespace {

struct Number {
    double value = 0;
    std::size_t decimals = 0;
    std::size_t end = 0; // after it
};

std::size_t skip_blanks(std::string_view text, std::size_t at) {
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t'))
        ++at;
    return at;
}

std::optional<Number> number_at(std::string_view text, std::size_t at) {
    constexpr std::size_t most_figures = 12;
    std::size_t end = at;
    std::size_t point = std::string_view::npos;
    while (end < text.size() && end - at < most_figures) {
        if (text[end] == '.' && point == std::string_view::npos && end > at)
            point = end;
        else if (!is_figure(text[end]))
            break;
        ++end;
    }
    if (end == at || !is_figure(text[at])) return std::nullopt;
    if (point == end - 1) {
        const bool letter_follows = end < text.size() && is_ascii_letter(text[end]);
        if (letter_follows) return std::nullopt; // `3.x`
        --end;                                   // the end of a sentence
        point = std::string_view::npos;
    }
    Number number;
    std::from_chars(text.data() + at, text.data() + end, number.value);
    if (point != std::string_view::npos) number.decimals = end - point - 1;
    number.end = end;
    return number;
}

// `Major: 3.85`, `Cumulative GPA 3.6`: words that may stand before the number.
std::size_t skip_words(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size() && (is_ascii_letter(text[at]) || text[at] == ' ' || text[at] == ':'))
        ++at;
    return at;
}

// Where the scale begins: after `/`, `out of`, `on a`, or `of`; none if none is given.
std::optional<std::size_t> scale_begin(std::string_view text, std::size_t at) {
    at = skip_blanks(text, at);
    for (const std::string_view word : {"/", "out of", "of", "on a", "on"})
        if (text.substr(at).starts_with(word)) return skip_blanks(text, at + word.size());
    return std::nullopt;
}

// One scale for several numbers, `3.6, in the major 3.8 / 4.0`, or the one of `(4.0 scale)`.
std::optional<double> scale_behind(std::string_view text, std::size_t from) {
    for (std::size_t at = from; at < text.size(); ++at) {
        if (text[at] == '/')
            if (const auto number = number_at(text, skip_blanks(text, at + 1)))
                return number->value;
        const bool begins = is_figure(text[at]) && !is_figure(text[at - 1]) && text[at - 1] != '.';
        if (!begins) continue;
        const auto number = number_at(text, at);
        if (!number) continue;
        const std::string_view after = text.substr(skip_blanks(text, number->end));
        if (after.starts_with("scale") || after.starts_with("-point")) return number->value;
        at = number->end - 1;
    }
    return std::nullopt;
}

}

std::optional<Gpa> read_gpa(std::string_view text) {
    const auto value = number_at(text, skip_words(text));
    if (!value) return std::nullopt;
    const std::string_view rest = text.substr(value->end);
    if (rest.size() > 1 && rest[0] == ',' && is_figure(rest[1])) return std::nullopt; // `3,62`
    Gpa gpa{value->value, std::nullopt, value->decimals};
    const auto begin = scale_begin(text, value->end);
    if (!begin) {
        gpa.scale = scale_behind(text, value->end);
        return gpa;
    }
    const auto scale = number_at(text, *begin);
    if (!scale) return std::nullopt;
    gpa.scale = scale->value;
    return gpa;
}

}

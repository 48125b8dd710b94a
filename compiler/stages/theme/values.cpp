// Numbers, colours and words out of their text, and the contrast of a colour.
#include "compiler/stages/theme/values.hpp"

#include "compiler/base/numbers.hpp"
#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/read_by_grammar.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace quoin::theme {

namespace {

namespace rules = grammar::theme;

double to_number(std::string_view text) {
    return number_from<double>(text).value_or(0);
}

template<typename Rule>
struct PreferenceAction : tao::pegtl::nothing<Rule> {};
template<>
struct PreferenceAction<rules::preferred> {
    template<typename Input>
    static void apply(const Input& in, Preference& value) {
        value.least = value.preferred = value.most = to_number(in.string_view());
    }
};
template<>
struct PreferenceAction<rules::least> {
    template<typename Input>
    static void apply(const Input& in, Preference& value) {
        value.least = to_number(in.string_view());
    }
};
template<>
struct PreferenceAction<rules::most> {
    template<typename Input>
    static void apply(const Input& in, Preference& value) {
        value.most = to_number(in.string_view());
    }
};

template<typename Rule>
struct ColourAction : tao::pegtl::nothing<Rule> {};
template<>
struct ColourAction<rules::channels> {
    template<typename Input>
    static void apply(const Input& in, Colour& colour) {
        const std::string_view digits = in.string_view();
        const auto channel = [&](std::size_t at) {
            return number_from<std::uint8_t>(digits.substr(at, 2), 16).value_or(0);
        };
        colour = {channel(0), channel(2), channel(4)};
    }
};

bool within(double value, const ThemeLine& line, const Bounds& bounds, Diagnostics& diagnostics) {
    if (value >= bounds.least && value <= bounds.most) return true;
    diagnostics.error(line.place, fill<messages::outside>(line.label, value, bounds.unit,
                                                          bounds.least, bounds.most));
    return false;
}

// The inverse of the sRGB transfer curve, as WCAG 2.1 defines relative luminance.
double linear(std::uint8_t channel) {
    const double value = channel / 255.0;
    return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

}

std::optional<Preference> read_preference(const ThemeLine& line, const Bounds& bounds,
                                          Diagnostics& diagnostics) {
    Preference value;
    if (!read_by_grammar<rules::preference, PreferenceAction>(line.value, value, diagnostics))
        return std::nullopt;
    if (value.least > value.preferred || value.preferred > value.most) {
        diagnostics.error(line.place, fill<messages::prefers_outside>(line.label, value.preferred,
                                                                      value.least, value.most));
        return std::nullopt;
    }
    if (!within(value.least, line, bounds, diagnostics) ||
        !within(value.most, line, bounds, diagnostics))
        return std::nullopt;
    return value;
}

std::optional<double> read_number(const ThemeLine& line, const Bounds& bounds,
                                  Diagnostics& diagnostics) {
    Preference value;
    if (!read_by_grammar<rules::plain_number, PreferenceAction>(line.value, value, diagnostics) ||
        !within(value.preferred, line, bounds, diagnostics))
        return std::nullopt;
    return value.preferred;
}

std::optional<Colour> read_colour(const ThemeLine& line, Diagnostics& diagnostics) {
    Colour colour;
    if (!read_by_grammar<rules::colour, ColourAction>(line.value, colour, diagnostics))
        return std::nullopt;
    return colour;
}

std::optional<std::size_t> read_choice(const ThemeLine& line,
                                       std::span<const std::string_view> words,
                                       Diagnostics& diagnostics) {
    const std::string word = line.value.joined();
    const auto match = std::ranges::find(words, std::string_view(word));
    if (match != words.end()) return static_cast<std::size_t>(match - words.begin());
    diagnostics.error(line.place,
                      fill<messages::cannot_be>(line.label, word, fmt::join(words, ", "),
                                                did_you_mean(word, words)));
    return std::nullopt;
}

std::vector<std::string> parted_by_commas(const std::string& list) {
    std::vector<std::string> items;
    for (std::size_t begin = 0; begin <= list.size();) {
        const std::size_t end = std::min(list.find(',', begin), list.size());
        const std::size_t first = std::min(list.find_first_not_of(" \t", begin), end);
        const std::size_t last = list.find_last_not_of(" \t", end - (end > first ? 1 : 0));
        if (first < end) items.push_back(list.substr(first, last + 1 - first));
        begin = end + 1;
    }
    return items;
}

double contrast_on_white(const Colour& colour) {
    const double luminance =
        0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
    return 1.05 / (luminance + 0.05);
}

}

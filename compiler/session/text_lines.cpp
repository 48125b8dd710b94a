#include "compiler/session/text_lines.hpp"

#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::session {

namespace {

constexpr char32_t last_of_one_unit = 0xFFFF; // of UTF-16; all beyond take two

std::uint32_t units_of(const Character& character, Units units) {
    if (units == Units::utf8) return static_cast<std::uint32_t>(character.length);
    return character.code > last_of_one_unit ? 2 : 1;
}

}

std::uint32_t units_in(std::string_view text, Units units) {
    if (units == Units::utf8) return static_cast<std::uint32_t>(text.size());
    std::uint32_t count = 0;
    while (!text.empty())
        count += units_of(take_character(text), units);
    return count;
}

TextLines::TextLines(std::string_view text) : text_(text), starts_{0} {
    for (std::size_t at = text.find_first_of("\r\n"); at != text.npos;
         at = text.find_first_of("\r\n", at)) {
        at += text.substr(at).starts_with("\r\n") ? 2 : 1;
        starts_.push_back(at);
    }
}

std::string_view TextLines::line(std::uint32_t number) const {
    if (number >= starts_.size()) return {};
    const std::string_view rest = text_.substr(starts_[number]);
    return rest.substr(0, rest.find_first_of("\r\n"));
}

std::size_t TextLines::offset_of(Position position, Units units) const {
    if (position.line >= starts_.size()) return text_.size();
    const std::string_view whole = line(position.line);
    std::string_view rest = whole;
    for (std::uint32_t left = position.character; !rest.empty();) {
        const Character character = first_character(rest);
        const std::uint32_t taken = units_of(character, units);
        if (taken > left) break;
        left -= taken;
        rest.remove_prefix(character.length);
    }
    return starts_[position.line] + (whole.size() - rest.size());
}

Position TextLines::position_of(std::size_t offset, Units units) const {
    const auto after = std::ranges::upper_bound(starts_, offset);
    const auto number = static_cast<std::uint32_t>(after - starts_.begin() - 1);
    const std::size_t within = offset - starts_[number];
    return {number, units_in(line(number).substr(0, within), units)};
}

}

// UTF-8 as Table 3-7 of the Unicode Standard has it: well-formed byte sequences.
#include "compiler/base/utf8.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>

namespace quoin {

namespace {

struct Lead { // a row of Table 3-7, but the first, ASCII
    unsigned char first = 0, last = 0;
    std::size_t length = 0;
    unsigned char second_least = 0x80, second_most = 0xBF; // later bytes are 80..BF in every row
};

constexpr std::array<Lead, 8> leads{{{0xC2, 0xDF, 2},
                                     {0xE0, 0xE0, 3, 0xA0, 0xBF},
                                     {0xE1, 0xEC, 3},
                                     {0xED, 0xED, 3, 0x80, 0x9F},
                                     {0xEE, 0xEF, 3},
                                     {0xF0, 0xF0, 4, 0x90, 0xBF},
                                     {0xF1, 0xF3, 4},
                                     {0xF4, 0xF4, 4, 0x80, 0x8F}}};

char32_t lead_bits(unsigned char byte, std::size_t length) {
    return byte & (0xFFU >> (length + 1));
}

}

Character first_character(std::string_view text) {
    const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(text[at]); };
    if (byte(0) < 0x80) return {byte(0), 1, true};
    const auto lead = std::find_if(leads.begin(), leads.end(), [&](const Lead& row) {
        return row.first <= byte(0) && byte(0) <= row.last;
    });
    if (lead == leads.end()) return {};
    char32_t code = lead_bits(byte(0), lead->length);
    for (std::size_t at = 1; at < lead->length; ++at) {
        const unsigned char least = at == 1 ? lead->second_least : 0x80;
        const unsigned char most = at == 1 ? lead->second_most : 0xBF;
        if (at == text.size() || byte(at) < least || byte(at) > most) return {.length = at};
        code = (code << 6U) | (byte(at) & 0x3FU);
    }
    return {code, lead->length, true};
}

Character take_character(std::string_view& text) {
    Character first = first_character(text);
    first.bytes = text.substr(0, first.length);
    text.remove_prefix(first.length);
    return first;
}

std::string replaced(std::string text, std::string_view from, std::string_view to) {
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
        text.replace(at, from.size(), to);
    return text;
}

std::string straight_apostrophes(std::string_view text) {
    return replaced(std::string(text), "\u2019", "'");
}

bool all_ascii(std::string_view text) {
    return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

void append_utf8(char32_t code, std::string& text) {
    std::array<utf8proc_uint8_t, 4> bytes{};
    const auto length = utf8proc_encode_char(static_cast<utf8proc_int32_t>(code), bytes.data());
    text.append(bytes.begin(), bytes.begin() + length);
}

std::optional<std::string_view> lowered_figure(std::string_view character) {
    constexpr std::string_view figures = "0123456789", first = "\u2080";
    if (character.size() != first.size() || !character.starts_with(first.substr(0, 2))) return {};
    const auto which = static_cast<std::size_t>(static_cast<unsigned char>(character[2]) -
                                                static_cast<unsigned char>(first[2]));
    if (which >= figures.size()) return {};
    return figures.substr(which, 1);
}

bool continues_character(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

std::size_t characters_in(std::string_view text) {
    return text.size() - static_cast<std::size_t>(std::ranges::count_if(text, continues_character));
}

bool is_letter(char32_t code) {
    switch (utf8proc_category(static_cast<utf8proc_int32_t>(code))) {
    case UTF8PROC_CATEGORY_LU:
    case UTF8PROC_CATEGORY_LL:
    case UTF8PROC_CATEGORY_LT:
    case UTF8PROC_CATEGORY_LM:
    case UTF8PROC_CATEGORY_LO:
        return true;
    default:
        return false;
    }
}

std::string folded(std::string_view text) {
    utf8proc_uint8_t* made = nullptr;
    const auto length =
        utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                     static_cast<utf8proc_ssize_t>(text.size()), &made,
                     static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_DECOMPOSE |
                                                    UTF8PROC_STRIPMARK | UTF8PROC_CASEFOLD));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner(made, std::free);
    if (length < 0) return std::string(text);
    return {made, made + length};
}

int terminal_columns(char32_t code) {
    return utf8proc_charwidth(static_cast<utf8proc_int32_t>(code));
}

}

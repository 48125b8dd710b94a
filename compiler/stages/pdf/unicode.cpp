// UTF-8 in, UTF-16BE and hexadecimal out.
#include "compiler/stages/pdf/unicode.hpp"

#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::pdf {

namespace {

void append_unit(std::string& bytes, char32_t unit) {
    bytes += static_cast<char>(unit >> 8 & 0xFF);
    bytes += static_cast<char>(unit & 0xFF);
}

}

void append_utf16be(std::string& bytes, char32_t character) {
    if (character < 0x10000) {
        append_unit(bytes, character);
    } else {
        append_unit(bytes, 0xD800 + ((character - 0x10000) >> 10));
        append_unit(bytes, 0xDC00 + ((character - 0x10000) & 0x3FF));
    }
}

std::string utf16be(std::string_view utf8) {
    std::string bytes;
    while (!utf8.empty())
        append_utf16be(bytes, take_character(utf8).code);
    return bytes;
}

bool is_ascii(std::string_view text) {
    return std::ranges::all_of(text, [](char c) { return c >= ' ' && c <= '~'; });
}

void append_hex(std::string& text, std::string_view bytes) {
    constexpr std::string_view digits = "0123456789ABCDEF";
    for (const char byte : bytes) {
        const auto value = static_cast<unsigned char>(byte);
        text += digits[value >> 4];
        text += digits[value & 15];
    }
}

}

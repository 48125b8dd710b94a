// CMap resources as text (Adobe Technical Note 5411), with bfchar lines alone: texts of several
// characters need them, and they compress well.
#include "compiler/pdf/to_unicode.hpp"

#include "compiler/pdf/unicode.hpp"

#include <algorithm>

namespace quoin {

namespace {

constexpr std::size_t most_in_a_block = 100;

constexpr std::string_view head = "/CIDInit /ProcSet findresource begin\n"
                                  "12 dict begin\n"
                                  "begincmap\n"
                                  "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS)"
                                  " /Supplement 0>> def\n"
                                  "/CMapName /Adobe-Identity-UCS def\n"
                                  "/CMapType 2 def\n"
                                  "1 begincodespacerange\n"
                                  "<0000> <FFFF>\n"
                                  "endcodespacerange\n";
constexpr std::string_view tail = "endcmap\n"
                                  "CMapName currentdict /CMap defineresource pop\n"
                                  "end\n"
                                  "end\n";

// PDF/UA-1, 7.21.7 forbids U+0000, U+FEFF and U+FFFE; PDF/A-2, 6.2.11.7.3 a private-use character
// without a replacement text, which nobody could give here.
bool is_interchangeable(char32_t c) {
    const bool private_use = (c >= 0xE000 && c <= 0xF8FF) || c >= 0xF0000;
    return c != 0 && c != 0xFEFF && c != 0xFFFE && c != 0xFFFF && !private_use;
}

// Inside a ligature's text they said where a line might have ended.
bool is_line_break_control(char32_t c) {
    return c == 0x00AD || c == 0x200B || c == 0x2060;
}

void append_text(std::string& map, std::string_view utf8) {
    std::string units;
    while (!utf8.empty()) {
        const char32_t character = take_character(utf8);
        const bool alone = units.empty() && utf8.empty();
        if (is_line_break_control(character) && !alone) continue;
        append_utf16be(units, is_interchangeable(character) ? character : U'\uFFFD');
    }
    map += '<';
    append_hex(map, units);
    map += '>';
}

void append_code(std::string& map, std::uint32_t code) {
    const char bytes[] = {static_cast<char>(code >> 8 & 0xFF), static_cast<char>(code & 0xFF)};
    map += '<';
    append_hex(map, {bytes, sizeof bytes});
    map += '>';
}

}

std::string to_unicode_cmap(const std::map<std::uint32_t, std::string_view>& texts) {
    std::string map(head);
    std::size_t left = texts.size(), in_block = 0;
    for (const auto& [code, text] : texts) {
        if (in_block == 0) {
            in_block = std::min(left, most_in_a_block);
            map += std::to_string(in_block) + " beginbfchar\n";
        }
        append_code(map, code);
        append_text(map, text);
        map += '\n';
        --left;
        if (--in_block == 0) map += "endbfchar\n";
    }
    map += tail;
    return map;
}

}

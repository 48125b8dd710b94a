// CMap resources as text (Adobe Technical Notes 5014 and 5411).
#include "compiler/stages/pdf/to_unicode.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/pdf/unicode.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <vector>

namespace quoin::pdf {

namespace {

constexpr std::size_t most_in_a_block = 100;

constexpr std::string_view cmap_head = "/CIDInit /ProcSet findresource begin\n"
                                       "12 dict begin\n"
                                       "begincmap\n"
                                       "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS)"
                                       " /Supplement 0>> def\n"
                                       "/CMapName /Adobe-Identity-UCS def\n"
                                       "/CMapType 2 def\n"
                                       "1 begincodespacerange\n"
                                       "<0000> <FFFF>\n"
                                       "endcodespacerange\n";
constexpr std::string_view cmap_tail = "endcmap\n"
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

std::string text_units(std::string_view utf8) {
    std::string units;
    while (!utf8.empty()) {
        const char32_t character = take_character(utf8).code;
        const bool alone = units.empty() && utf8.empty();
        if (is_line_break_control(character) && !alone) continue;
        append_utf16be(units, is_interchangeable(character) ? character : U'\uFFFD');
    }
    return units;
}

struct Range { // of codes: the text of each one is that of the one before, its last byte one higher
    std::uint32_t first = 0, last = 0;
    std::string units; // of the first
};

bool continues(const Range& range, std::uint32_t code, std::string_view units) {
    constexpr std::size_t one_unit = 2;
    const std::uint32_t step = code - range.first;
    return code == range.last + 1 && (code & 0xFF) != 0 && units.size() == one_unit &&
           range.units.size() == one_unit && units[0] == range.units[0] &&
           static_cast<unsigned char>(units[1]) ==
               static_cast<unsigned char>(range.units[1]) + step;
}

std::vector<Range> find_ranges(const std::map<std::uint32_t, std::string_view>& texts) {
    std::vector<Range> ranges;
    for (const auto& [code, text] : texts) {
        const std::string units = text_units(text);
        if (!ranges.empty() && continues(ranges.back(), code, units))
            ranges.back().last = code;
        else
            ranges.push_back({code, code, units});
    }
    return ranges;
}

void append_string(std::string& map, std::string_view bytes) {
    map += '<';
    append_hex(map, bytes);
    map += '>';
}

void append_code(std::string& map, std::uint32_t code) {
    const char bytes[] = {static_cast<char>(code >> 8 & 0xFF), static_cast<char>(code & 0xFF)};
    append_string(map, {bytes, sizeof bytes});
}

// `kind` is `bfchar`, which has one code in each line, or `bfrange`, which has two.
void append_blocks(std::string& map, std::string_view kind, std::span<const Range> ranges) {
    while (!ranges.empty()) {
        const std::span<const Range> block = ranges.first(std::min(ranges.size(), most_in_a_block));
        map += fmt::format("{} begin{}\n", block.size(), kind);
        for (const Range& range : block) {
            append_code(map, range.first);
            if (kind == "bfrange") append_code(map, range.last);
            append_string(map, range.units);
            map += '\n';
        }
        map += fmt::format("end{}\n", kind);
        ranges = ranges.subspan(block.size());
    }
}

}

std::string to_unicode_cmap(const std::map<std::uint32_t, std::string_view>& texts) {
    std::vector<Range> ranges = find_ranges(texts);
    const auto alone = std::stable_partition(
        ranges.begin(), ranges.end(), [](const Range& range) { return range.first != range.last; });
    std::string map(cmap_head);
    append_blocks(map, "bfrange", {ranges.begin(), alone});
    append_blocks(map, "bfchar", {alone, ranges.end()});
    map += cmap_tail;
    return map;
}

}

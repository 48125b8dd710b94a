#include "compiler/base/strange_signs.hpp"

#include "compiler/base/encoding.hpp"
#include "compiler/base/utf8.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>

namespace quoin {

namespace {

struct CodeRange {
    char32_t first, last;
};

template<std::size_t Size>
bool is_in(const std::array<CodeRange, Size>& ranges, char32_t code) {
    return std::ranges::any_of(ranges, [code](const CodeRange& range) {
        return range.first <= code && code <= range.last;
    });
}

// Letters that invisible signs join or part, from the block names of the Unicode Standard: from
// Hebrew to Sinhala, Thai to Myanmar, Khmer and Mongolian; and pictures.
constexpr std::array<CodeRange, 7> with_invisible{{{0x0590, 0x109F},
                                                   {0x1780, 0x18AF},
                                                   {0xA840, 0xABFF},
                                                   {0xFB1D, 0xFDFF},
                                                   {0xFE70, 0xFEFE},
                                                   {0x10800, 0x1CFFF},
                                                   {0x1E800, 0x1FAFF}}};

// Kana, ideographs, Hangul.
constexpr std::array<CodeRange, 3> with_wide{
    {{0x3040, 0x30FF}, {0x3400, 0x9FFF}, {0xAC00, 0xD7A3}}};
constexpr std::array<CodeRange, 2> wide{{{0x3000, 0x3000}, {0xFF01, 0xFFEE}}};

constexpr std::array<CodeRange, 17> different_looks{{{0x0132, 0x0133},
                                                     {0x013F, 0x0140},
                                                     {0x017F, 0x017F},
                                                     {0x01C4, 0x01CC},
                                                     {0x01F1, 0x01F3},
                                                     {0x2000, 0x2006},
                                                     {0x2008, 0x200A},
                                                     {0x205F, 0x205F},
                                                     {0x2103, 0x2103},
                                                     {0x2109, 0x2109},
                                                     {0x2160, 0x217F},
                                                     {0x3371, 0x33DF},
                                                     {0xFB00, 0xFB06},
                                                     {0xFB13, 0xFDFB},
                                                     {0xFE4D, 0xFE6B},
                                                     {0xFE70, 0xFEFC},
                                                     {0x1D400, 0x1D7FF}}};

void append_compatible(char32_t code, std::string& text) {
    std::array<utf8proc_int32_t, 32> parts{};
    const auto count = utf8proc_decompose_char(
        static_cast<utf8proc_int32_t>(code), parts.data(),
        static_cast<utf8proc_ssize_t>(parts.size()),
        static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT), nullptr);
    for (utf8proc_ssize_t at = 0; at < count; ++at)
        append_utf8(static_cast<char32_t>(parts.at(static_cast<std::size_t>(at))), text);
}

// As much of it as a message shows.
std::string next_word(std::string_view line) {
    constexpr std::size_t longest = 24;
    std::string word;
    while (!line.empty() && word.size() < longest) {
        const Character character = take_character(line);
        const bool blank = character.code == U' ' || character.code == U'\t';
        if (blank && !word.empty()) break;
        if (!blank && !is_invisible(character.code)) word += character.bytes;
    }
    return word;
}

}

bool is_invisible(char32_t code) {
    const auto* property = utf8proc_get_property(static_cast<utf8proc_int32_t>(code));
    return property->category == UTF8PROC_CATEGORY_CF && property->ignorable;
}

bool separates_lines(char32_t code) {
    return code == 0x2028 || code == 0x2029;
}

KeptSigns kept_signs(std::string_view line) {
    KeptSigns kept;
    if (all_ascii(line)) return kept;
    while (!line.empty()) {
        const char32_t code = take_character(line).code;
        kept.invisible = kept.invisible || is_in(with_invisible, code);
        kept.wide = kept.wide || is_in(with_wide, code);
    }
    return kept;
}

bool only_looks_different(char32_t code, KeptSigns kept) {
    return code > 0x131 && (is_in(different_looks, code) || (!kept.wide && is_in(wide, code)));
}

std::string plain_signs(std::string_view text, KeptSigns kept) {
    if (all_ascii(text)) return std::string(text);
    std::string plain;
    for (std::string_view rest = text; !rest.empty();) {
        const Character character = take_character(rest);
        if (separates_lines(character.code))
            plain += ' ';
        else if (only_looks_different(character.code, kept))
            append_compatible(character.code, plain);
        else if (kept.invisible || !is_invisible(character.code))
            plain += character.bytes;
    }
    return to_nfc(plain);
}

std::vector<InvisibleSigns> invisible_signs(std::string_view line, KeptSigns kept) {
    std::vector<InvisibleSigns> found;
    if (all_ascii(line)) return found;
    std::size_t offset = 0; // of the plain signs, up to `seen`
    std::size_t seen = 0;   // bytes of the line: the last invisible sign and all before it
    for (std::size_t at = 0; at < line.size();) {
        const Character character = first_character(line.substr(at));
        const bool separates = separates_lines(character.code);
        if (separates || (is_invisible(character.code) && !kept.invisible)) {
            const bool further =
                !found.empty() && seen == at && found.back().separates == separates;
            offset += plain_signs(line.substr(seen, at - seen), kept).size();
            if (!further) found.push_back({offset, 0, character.code, separates, {}});
            ++found.back().count;
            offset += separates ? 1 : 0;
            seen = at + character.length;
        } else if (!found.empty() && seen == at) {
            found.back().before = next_word(line.substr(at));
        }
        at += character.length;
    }
    return found;
}

}

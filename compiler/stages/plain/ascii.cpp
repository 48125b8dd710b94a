// Letters without their marks, by the Unicode Standard's compatibility decomposition (Annex #15),
// and those that have none by the spelling that passports use (ICAO Doc 9303, part 3, section 6).
#include "compiler/base/utf8.hpp"
#include "compiler/stages/plain/plain.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdlib>

namespace quoin::plain {

namespace {

struct Spelling {
    char32_t letter = 0;
    std::string_view ascii;
};

constexpr std::array<Spelling, 22> spellings = {{
    {U'ß', "ss"},  {U'ẞ', "SS"},  {U'Æ', "AE"},   {U'æ', "ae"},     {U'Œ', "OE"}, {U'œ', "oe"},
    {U'Ø', "O"},   {U'ø', "o"},   {U'Þ', "TH"},   {U'þ', "th"},     {U'Ð', "D"},  {U'ð', "d"},
    {U'Đ', "D"},   {U'đ', "d"},   {U'Ł', "L"},    {U'ł', "l"},      {U'ı', "i"},  {U'×', "x"},
    {U'€', "EUR"}, {U'£', "GBP"}, {U'°', "deg "}, {U'\u2044', "/"},
}};

std::string without_marks(std::string_view text) {
    utf8proc_uint8_t* mapped = nullptr;
    const auto size = utf8proc_map(
        reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
        static_cast<utf8proc_ssize_t>(text.size()), &mapped,
        static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_STRIPMARK));
    std::string plain(size < 0 ? std::string(text)
                               : std::string(reinterpret_cast<const char*>(mapped),
                                             static_cast<std::size_t>(size)));
    std::free(mapped);
    return plain;
}

}

std::string in_ascii(std::string_view text) {
    constexpr char32_t last_of_ascii = 0x7F;
    const std::string letters = without_marks(text);
    std::string result;
    for (std::string_view rest = letters; !rest.empty();) {
        const Character character = first_character(rest);
        const auto* row = std::ranges::find(spellings, character.code, &Spelling::letter);
        if (character.code <= last_of_ascii)
            result += static_cast<char>(character.code);
        else
            result += row == spellings.end() ? "?" : row->ascii;
        rest.remove_prefix(character.length);
    }
    return result;
}

}

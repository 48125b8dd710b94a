#include "compiler/stages/composition/glosses.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/characters.hpp"

#include <utf8proc.h>

#include <algorithm>

namespace quoin::composition {

namespace {

// The sign as it is typed.
char32_t typed(char32_t code) {
    switch (code) {
    case U'\u00A0':
        return U' ';
    case U'‘':
    case U'’':
        return U'\'';
    case U'“':
    case U'”':
        return U'"';
    case U'–':
    case U'\u2011':
        return U'-';
    default:
        return code;
    }
}

bool is_word_character(char32_t code) {
    const auto category = utf8proc_category(static_cast<utf8proc_int32_t>(code));
    return is_letter(code) || category == UTF8PROC_CATEGORY_MN || category == UTF8PROC_CATEGORY_ND;
}

// Bytes of `text` that read as `words` from its beginning; 0 if it begins with others or goes on
// with the same word.
std::size_t length_of(std::string_view words, std::string_view text) {
    std::size_t length = 0;
    bool in_word = false;
    while (!words.empty()) {
        if (length == text.size()) return 0;
        const Character wanted = take_character(words);
        const Character found = first_character(text.substr(length));
        if (typed(wanted.code) != typed(found.code)) return 0;
        in_word = is_word_character(found.code);
        length += found.length;
    }
    const bool goes_on = in_word && length < text.size() &&
                         is_word_character(first_character(text.substr(length)).code);
    return goes_on ? 0 : length;
}

}

std::vector<GlossedRange> glossed_ranges(std::string_view text,
                                         std::span<const model::Gloss> glosses, bool all_capitals,
                                         const std::string& language) {
    std::vector<std::string> words;
    for (const model::Gloss& gloss : glosses)
        words.push_back(all_capitals ? upper_case(gloss.words, language) : gloss.words);
    std::vector<GlossedRange> ranges;
    bool in_word = false;
    for (std::size_t at = 0; at < text.size();) {
        GlossedRange longest{at, at, 0};
        for (std::uint32_t i = 0; i < words.size() && !in_word; ++i)
            if (const std::size_t length = length_of(words[i], text.substr(at));
                at + length > longest.end)
                longest = {at, at + length, i};
        const Character here = first_character(text.substr(at));
        in_word = longest.end > at || is_word_character(here.code);
        at = std::max(longest.end, at + here.length);
        if (longest.end > longest.begin) ranges.push_back(longest);
    }
    return ranges;
}

}

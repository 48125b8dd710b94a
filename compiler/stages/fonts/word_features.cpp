// Words tell by their signs what they are.
#include "compiler/stages/fonts/word_features.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/trade/units.hpp"

#include <algorithm>
#include <string>
#include <string_view>

namespace quoin::fonts {

namespace {

using Codes = std::span<const hb_codepoint_t>;

constexpr hb_tag_t kerning = HB_TAG('k', 'e', 'r', 'n');

bool is_figure_code(hb_codepoint_t code) {
    return code >= '0' && code <= '9';
}

// Of ASCII the tables of Unicode are not asked.
bool is_ascii_code(hb_codepoint_t code) {
    return code < 0x80;
}

bool is_capital_code(hb_codepoint_t code) {
    if (is_ascii_code(code)) return is_capital_letter(static_cast<char>(code));
    return hb_unicode_general_category(hb_unicode_funcs_get_default(), code) ==
           HB_UNICODE_GENERAL_CATEGORY_UPPERCASE_LETTER;
}

bool is_letter_or_figure(hb_codepoint_t code) {
    if (is_ascii_code(code)) return quoin::is_letter_or_figure(static_cast<char>(code));
    const auto category = hb_unicode_general_category(hb_unicode_funcs_get_default(), code);
    return category >= HB_UNICODE_GENERAL_CATEGORY_LOWERCASE_LETTER &&
           category <= HB_UNICODE_GENERAL_CATEGORY_UPPERCASE_LETTER;
}

// Signs that stand as high as capitals, or at the middle of them.
bool is_high_sign(hb_codepoint_t code) {
    constexpr std::u32string_view signs = U"$€£¥¢%‰+−/#°×=<>~&@±½¼¾";
    return !is_letter_or_figure(code) && signs.find(static_cast<char32_t>(code)) != signs.npos;
}

Codes word_before(Codes codes, WordRange word) {
    if (word.begin == 0) return {};
    std::size_t begin = word.begin - 1;
    while (begin > 0 && codes[begin - 1] != ' ')
        --begin;
    return codes.subspan(begin, word.begin - 1 - begin);
}

Codes word_after(Codes codes, WordRange word) {
    if (word.end >= codes.size()) return {};
    std::size_t end = word.end + 1;
    while (end < codes.size() && codes[end] != ' ')
        ++end;
    return codes.subspan(word.end + 1, end - word.end - 1);
}

// `3.62 / 4.00`: a sign alone
bool is_lone_sign(Codes word) {
    return word.size() == 1 && is_high_sign(word.front());
}

bool is_all_capitals(Codes word) {
    const auto capitals = std::ranges::count_if(word, is_capital_code);
    return capitals > 1 && capitals == std::ranges::count_if(word, is_letter_or_figure);
}

bool is_unit(Codes word) {
    constexpr std::size_t longest = 12; // with the punctuation after it
    if (word.size() > longest) return false;
    std::string text;
    for (const hb_codepoint_t code : word)
        append_utf8(static_cast<char32_t>(code), text);
    const std::size_t end = text.find_last_not_of(".,;:)");
    return end != text.npos && trade::is_unit_symbol(std::string_view(text).substr(0, end + 1));
}

bool has_oldstyle(Codes codes, WordRange range) {
    const Codes word = codes.subspan(range.begin, range.end - range.begin);
    if (std::ranges::any_of(
            word, [](hb_codepoint_t code) { return is_capital_code(code) || is_high_sign(code); }))
        return false;
    if (!std::ranges::any_of(word, is_figure_code)) return true;
    const Codes before = word_before(codes, range), after = word_after(codes, range);
    return !is_all_capitals(before) && !is_all_capitals(after) && !is_unit(after) &&
           !is_lone_sign(before) && !is_lone_sign(after);
}

// `name@host`, `host.example/page`: an at sign, a full stop or two slashes between letters.
bool is_address(Codes word) {
    for (std::size_t i = 1; i + 1 < word.size(); ++i) {
        const bool inside = is_letter_or_figure(word[i - 1]) && is_letter_or_figure(word[i + 1]);
        if (inside && (word[i] == '@' || word[i] == '.')) return true;
        if (word[i] == '/' && word[i + 1] == '/') return true;
    }
    return false;
}

// Two slashes are not kerned: a face that lets them overlap by a fifth of an em (Lato does) has
// readers part `https:/` from what follows. Nor is an at sign, which some faces crowd. HarfBuzz
// takes time for each range of a feature in each other, so text with more of them than any résumé
// has is not kerned at all.
void leave_signs_apart(Codes codes, WordRange word, std::vector<hb_feature_t>& list) {
    constexpr std::size_t most_ranges = 64;
    const std::size_t before = list.size();
    for (std::size_t i = word.begin; i < word.end; ++i) {
        const std::size_t begin = i;
        while (i + 1 < word.end && codes[i] == '/' && codes[i + 1] == '/')
            ++i;
        const std::size_t end = codes[i] == '@' ? i + 1 : i;
        if (end > begin)
            list.push_back({kerning, 0, static_cast<unsigned>(begin), static_cast<unsigned>(end)});
    }
    if (list.size() - before <= most_ranges) return;
    list.resize(before);
    list.push_back({kerning, 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END});
}

constexpr hb_feature_t switched(const char (&tag)[5], bool on) {
    return {HB_TAG(tag[0], tag[1], tag[2], tag[3]), on ? 1U : 0U, HB_FEATURE_GLOBAL_START,
            HB_FEATURE_GLOBAL_END};
}

}

std::vector<hb_feature_t> word_features(std::span<const hb_codepoint_t> codes, WordRange word,
                                        const ShapingFeatures& features) {
    const bool oldstyle = features.oldstyle_figures && has_oldstyle(codes, word);
    constexpr std::size_t most = 4; // but where signs are left apart
    std::vector<hb_feature_t> list;
    list.reserve(most);
    list.push_back(switched(oldstyle ? "onum" : "lnum", true));
    if (features.small_caps) list.push_back(switched("smcp", true));
    if (!features.ligatures || is_address(codes.subspan(word.begin, word.end - word.begin))) {
        list.push_back(switched("liga", false));
        list.push_back(switched("clig", false));
    }
    leave_signs_apart(codes, word, list);
    return list;
}

}

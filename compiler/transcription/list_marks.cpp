#include "compiler/transcription/list_marks.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/portal/found.hpp"

namespace quoin::transcription {

namespace {

// Arrows, boxes, ticks, stars and other pictures (Unicode blocks Arrows to Miscellaneous Symbols
// and Arrows), and signs of symbol fonts, which have private codes.
bool is_picture(char32_t code) {
    return (code >= 0x2190 && code <= 0x2BFF && code != 0x2212) ||
           (code >= 0x1F000 && code <= 0x1FAFF) || (code >= 0xF000 && code <= 0xF0FF);
}

bool is_sure_bullet(char32_t code) {
    constexpr std::u32string_view bullets =
        U"\u2022\u25E6\u2023\u2043\u00B7\u2219\u00BB\u203A\u2027\u25AA";
    return is_picture(code) || bullets.find(code) != bullets.npos;
}

bool is_number(std::string_view word) {
    if (word.starts_with('(')) word.remove_prefix(1);
    if (word.size() < 2 || word.size() > 3) return false;
    const std::string_view figures = word.substr(0, word.size() - 1);
    const bool counts =
        all_figures(figures) || (figures.size() == 1 && is_small_letter(figures[0]));
    return counts && (word.ends_with('.') || word.ends_with(')'));
}

}

bool is_list_mark(std::string_view word) {
    if (portal::is_bullet_sign(word) || is_number(word)) return true;
    constexpr std::string_view typed[] = {"o", ">", "+", "~", "->", "=>"};
    if (is_one_of(word, typed)) return true;
    return !word.empty() && list_mark_at(word) == word.size();
}

std::size_t list_mark_at(std::string_view word) {
    if (word.empty()) return 0;
    const Character first = first_character(word);
    return is_sure_bullet(first.code) ? first.length : 0;
}

}

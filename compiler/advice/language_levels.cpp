// The words for how well a language is spoken.
#include "compiler/advice/language_levels.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/phrases.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>
#include <string>

namespace quoin::advice {

namespace {

bool has_any_phrase(std::string_view text, List phrases) {
    const Phrased phrased(text);
    return std::ranges::any_of(listed(phrases), [&](auto phrase) { return phrased.has(phrase); });
}

// "3", "3+", "0+": levels of ILR
bool is_grade(std::string_view word) {
    if (word.ends_with('+')) word.remove_suffix(1);
    return word.size() == 1 && is_figure(word[0]) && word[0] <= '6';
}

// A grade alone, or after the scale that it is of: "3+", "ASL 3", "HSK 4", "JLPT N2". "3 years" is
// none.
bool is_graded(std::string_view inner) {
    const std::size_t space = inner.rfind(' ');
    const std::string_view last = inner.substr(space == std::string_view::npos ? 0 : space + 1);
    return is_grade(last) || (last.starts_with('n') && is_grade(last.substr(1)));
}

}

bool has_language_level(std::string_view lower) {
    if (has_any_phrase(lower, List::levels)) return true;
    const std::size_t open = lower.find('('), close = lower.rfind(')');
    if (open == std::string_view::npos || close == std::string_view::npos || close < open)
        return false;
    const std::string_view inner = trimmed(lower.substr(open + 1, close - open - 1), " ");
    return is_graded(inner) || has_any_phrase(inner, List::abilities);
}

std::vector<std::string_view> usual_levels() {
    return listed(List::levels);
}

}

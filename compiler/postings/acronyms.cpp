#include "compiler/postings/acronyms.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>

namespace quoin::postings {

namespace {

// Two to ten characters, at most two words, a letter among them, a letter or figure first.
bool is_short_form(std::string_view text) {
    return text.size() >= 2 && text.size() <= 10 && word_count(text) <= 2 &&
           is_letter_or_figure(text.front()) && std::ranges::any_of(text, is_capital_letter);
}

// The words before a parenthesis in which the long form may be: min(|SF| + 5, 2 |SF|).
std::string_view words_before(std::string_view text, std::size_t most) {
    std::size_t begin = text.size();
    for (std::size_t words = 0; begin > 0; --begin)
        if (text[begin - 1] == ' ' && ++words > most) break;
    return text.substr(begin);
}

std::size_t longest_long_form(std::string_view short_form) {
    return std::min(short_form.size() + 5, short_form.size() * 2);
}

}

namespace {

// The words at the end whose initials are the short form: personal protective equipment of PPE,
// which the letters within its words would end too soon.
std::string_view words_with_initials(std::string_view short_form, std::string_view candidate) {
    std::size_t at = candidate.size();
    for (std::size_t s = short_form.size(); s-- > 0;) {
        const std::size_t blank = candidate.substr(0, at).find_last_of(" -");
        const std::size_t begin = blank == candidate.npos ? 0 : blank + 1;
        if (begin >= at || small_letter(candidate[begin]) != small_letter(short_form[s])) return {};
        if (s == 0) return candidate.substr(begin);
        if (begin == 0) return {};
        at = begin - 1;
        for (const std::string_view small : {" and", " of", " for", " the"})
            if (candidate.substr(0, at).ends_with(small)) at -= small.size();
    }
    return {};
}

}

std::string_view best_long_form(std::string_view short_form, std::string_view candidate) {
    if (const auto words = words_with_initials(short_form, candidate); !words.empty()) return words;
    std::size_t at = candidate.size();
    for (std::size_t s = short_form.size(); s-- > 0;) {
        const char sought = small_letter(short_form[s]);
        if (!is_letter_or_figure(sought)) continue;
        for (;; --at) {
            if (at == 0) return {};
            const bool found = small_letter(candidate[at - 1]) == sought;
            const bool opens_word = at == 1 || !is_letter_or_figure(candidate[at - 2]);
            if (found && (s > 0 || opens_word)) break;
        }
        --at;
    }
    const std::size_t blank = candidate.rfind(' ', at);
    const std::string_view found = candidate.substr(blank == candidate.npos ? 0 : blank + 1);
    return found.size() > short_form.size() ? found : std::string_view{};
}

std::vector<Acronym> acronyms_in(std::string_view sentence) {
    std::vector<Acronym> found;
    for (std::size_t open = sentence.find(" ("); open != sentence.npos;
         open = sentence.find(" (", open + 1)) {
        const std::size_t close = sentence.find(')', open);
        if (close == sentence.npos) break;
        std::string_view inner = sentence.substr(open + 2, close - open - 2);
        inner = trimmed(inner.substr(0, inner.find_first_of(",;")));
        const std::string_view before = sentence.substr(0, open);
        if (is_short_form(inner)) {
            const auto whole =
                best_long_form(inner, words_before(before, longest_long_form(inner)));
            if (!whole.empty()) found.push_back({std::string(inner), std::string(whole)});
            continue;
        }
        const std::string_view last = words_before(before, 1);
        const std::string_view word = last.substr(last.rfind(' ') + 1);
        if (is_short_form(word) && best_long_form(word, inner) == inner)
            found.push_back({std::string(word), std::string(inner)});
    }
    return found;
}

}

#include "compiler/transcription/kept_words.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::transcription {

namespace {

bool tells(char c) {
    return is_letter_or_figure(c) || static_cast<unsigned char>(c) >= 0x80;
}

// None for what has neither letter nor figure: a sign between words.
std::string bare_word(std::string_view word) {
    bool letters = false;
    for (std::string_view left = word; !left.empty();) {
        const Character character = take_character(left);
        letters = letters || is_letter(character.code) ||
                  (character.code < 0x80 && is_figure(static_cast<char>(character.code)));
    }
    if (!letters) return {};
    while (!word.empty() && !tells(word.front()))
        word.remove_prefix(1);
    while (!word.empty() && !tells(word.back()))
        word.remove_suffix(1);
    return straight_apostrophes(folded(word));
}

template<typename Take>
void each_word(std::string_view text, const Take& take) {
    constexpr std::string_view blanks = " \n\t";
    while (!text.empty()) {
        const std::size_t begin = std::min(text.find_first_not_of(blanks), text.size());
        text.remove_prefix(begin);
        const std::size_t end = std::min(text.find_first_of(blanks), text.size());
        if (end > 0) take(text.substr(0, end));
        text.remove_prefix(end);
    }
}

}

void WordBag::add(std::string_view text) {
    each_word(text, [&](std::string_view word) {
        if (std::string bare = bare_word(word); !bare.empty()) ++words_[std::move(bare)];
    });
}

std::string WordBag::take_out(std::string_view text) {
    std::string missing;
    bool gap = false;
    each_word(text, [&](std::string_view word) {
        const std::string bare = bare_word(word);
        if (bare.empty()) return;
        if (const auto found = words_.find(bare); found != words_.end() && found->second > 0) {
            --found->second;
            gap = !missing.empty();
            return;
        }
        missing.append(missing.empty() ? "" : gap ? " \u2026 " : " ").append(word);
        gap = false;
    });
    return missing;
}

}

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

}

GlossTree::GlossTree(std::span<const std::string> words) {
    for (std::uint32_t i = 0; i < words.size(); ++i) {
        std::uint32_t node = 0;
        for (std::string_view rest = words[i]; !rest.empty();) {
            const auto fresh = static_cast<std::uint32_t>(nodes_.size());
            const auto [to, is_new] =
                nodes_[node].next.try_emplace(typed(take_character(rest).code), fresh);
            node = to->second;
            if (is_new) nodes_.emplace_back();
        }
        if (node != 0 && !nodes_[node].gloss) nodes_[node].gloss = i;
    }
}

// Empty if what begins there is none of them, or goes on with the same word.
GlossedRange GlossTree::longest_at(std::string_view text, std::size_t at) const {
    GlossedRange longest{at, at, 0};
    const Node* node = nodes_.data();
    for (std::string_view rest = text.substr(at); !rest.empty();) {
        const char32_t code = take_character(rest).code;
        const auto to = node->next.find(typed(code));
        if (to == node->next.end()) break;
        node = &nodes_[to->second];
        const bool goes_on = is_word_character(code) && !rest.empty() &&
                             is_word_character(first_character(rest).code);
        if (node->gloss && !goes_on) longest = {at, text.size() - rest.size(), *node->gloss};
    }
    return longest;
}

std::vector<GlossedRange> GlossTree::ranges_in(std::string_view text) const {
    std::vector<GlossedRange> ranges;
    if (nodes_.size() == 1) return ranges;
    bool in_word = false;
    for (std::size_t at = 0; at < text.size();) {
        const GlossedRange longest = in_word ? GlossedRange{at, at, 0} : longest_at(text, at);
        const Character here = first_character(text.substr(at));
        in_word = longest.end > at || is_word_character(here.code);
        at = std::max(longest.end, at + here.length);
        if (longest.end > longest.begin) ranges.push_back(longest);
    }
    return ranges;
}

GlossedWords::GlossedWords(std::span<const model::Gloss> glosses, const std::string& language) {
    if (glosses.empty()) return;
    std::vector<std::string> words, capitals;
    for (const model::Gloss& gloss : glosses) {
        words.push_back(gloss.words);
        capitals.push_back(upper_case(gloss.words, language));
    }
    typed_ = GlossTree(words);
    capitals_ = GlossTree(capitals);
}

}

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
        const Signs signs = signs_of(words[i]);
        for (std::size_t at = signs.size(); at-- > 0;) {
            const auto fresh = static_cast<std::uint32_t>(nodes_.size());
            const auto [to, is_new] = nodes_[node].next.try_emplace(typed(signs[at].code), fresh);
            node = to->second;
            if (is_new) nodes_.emplace_back().length = signs.size() - at;
        }
        if (node != 0 && !nodes_[node].gloss) nodes_[node].gloss = i;
    }
    link_beginnings();
}

GlossTree::Signs GlossTree::signs_of(std::string_view text) {
    Signs signs;
    for (std::string_view rest = text; !rest.empty();) {
        const char32_t code = take_character(rest).code;
        signs.push_back({code, text.size() - rest.size()});
    }
    return signs;
}

// Shorter ones first, for a longer one's are found by them.
void GlossTree::link_beginnings() {
    std::vector<std::uint32_t> found{0};
    for (std::size_t i = 0; i < found.size(); ++i) {
        const std::uint32_t node = found[i];
        for (const auto& [code, to] : nodes_[node].next) {
            const std::uint32_t shorter = node == 0 ? 0 : step(nodes_[node].fallback, code);
            nodes_[to].fallback = shorter;
            nodes_[to].shorter = nodes_[shorter].gloss ? shorter : nodes_[shorter].shorter;
            found.push_back(to);
        }
    }
}

std::uint32_t GlossTree::step(std::uint32_t node, char32_t code) const {
    while (true) {
        const auto to = nodes_[node].next.find(code);
        if (to != nodes_[node].next.end()) return to->second;
        if (node == 0) return 0;
        node = nodes_[node].fallback;
    }
}

// Of those that begin at a sign the longest that does not go on with the same word; null if there
// is none.
const GlossTree::Node* GlossTree::longest_at(std::size_t begin, std::uint32_t node,
                                             const Signs& signs) const {
    for (std::uint32_t at = nodes_[node].gloss ? node : nodes_[node].shorter; at != 0;
         at = nodes_[at].shorter) {
        const std::size_t end = begin + nodes_[at].length;
        if (end == signs.size() || !is_word_character(signs[end - 1].code) ||
            !is_word_character(signs[end].code))
            return &nodes_[at];
    }
    return nullptr;
}

std::vector<GlossedRange> GlossTree::ranges_in(std::string_view text) const {
    std::vector<GlossedRange> ranges;
    if (nodes_.size() == 1) return ranges;
    const Signs signs = signs_of(text);
    std::vector<const Node*> longest(signs.size()); // that begin at each
    std::uint32_t node = 0;
    for (std::size_t i = signs.size(); i-- > 0;) {
        node = step(node, typed(signs[i].code));
        const bool in_word = i > 0 && is_word_character(signs[i - 1].code);
        if (!in_word) longest[i] = longest_at(i, node, signs);
    }
    for (std::size_t i = 0; i < signs.size(); ++i) {
        if (!longest[i]) continue;
        const std::size_t last = i + longest[i]->length - 1;
        ranges.push_back({i == 0 ? 0 : signs[i - 1].end, signs[last].end, *longest[i]->gloss});
        i = last + 1; // none begins right behind it
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

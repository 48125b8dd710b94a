#include "compiler/base/phrases.hpp"

namespace quoin {

std::size_t word_count(std::string_view text) {
    std::size_t words = 0;
    for (std::size_t i = 0; i < text.size(); ++i)
        words += text[i] != ' ' && (i == 0 || text[i - 1] == ' ');
    return words;
}

std::size_t find_phrase(std::string_view text, std::string_view phrase) {
    for (std::size_t at = text.find(phrase); at != std::string_view::npos;
         at = text.find(phrase, at + 1)) {
        const std::size_t end = at + phrase.size();
        const bool begins = at == 0 || !is_word_byte(text[at - 1]);
        if (begins && (end == text.size() || !is_word_byte(text[end]))) return at;
    }
    return std::string_view::npos;
}

Phrased::Phrased(std::string_view text) : text_(text) {
    for (std::size_t at = 0; at + 1 < text.size(); ++at)
        if (at == 0 || !is_word_byte(text[at - 1])) pairs_.set(pair_at(text, at));
}

bool has_phrase(std::string_view text, std::string_view phrase) {
    return find_phrase(text, phrase) != std::string_view::npos;
}

}

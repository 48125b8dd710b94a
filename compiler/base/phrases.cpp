#include "compiler/base/phrases.hpp"

#include "compiler/base/ascii.hpp"

namespace quoin {

bool is_word_byte(char c) {
    return is_ascii_letter(c) || is_figure(c) || static_cast<unsigned char>(c) >= 0x80;
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

bool has_phrase(std::string_view text, std::string_view phrase) {
    return find_phrase(text, phrase) != std::string_view::npos;
}

}

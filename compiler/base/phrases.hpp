// Phrases in text: several words that stand together, whole.
#pragma once

#include "compiler/base/ascii.hpp"

#include <bitset>
#include <cstddef>
#include <string_view>

namespace quoin {

// A letter, of ASCII or not, or a figure.
constexpr bool is_word_byte(char c) {
    return is_ascii_letter(c) || is_figure(c) || static_cast<unsigned char>(c) >= 0x80;
}

std::size_t word_count(std::string_view text); // of words that blanks part

// Whether `phrase` stands in `text` between the ends of words; both lower case.
bool has_phrase(std::string_view text, std::string_view phrase);
std::size_t find_phrase(std::string_view text, std::string_view phrase); // npos if it does not

// A text in which many phrases are looked for. Most are not there, which is told by the two letters
// that they begin with.
class Phrased {
public:
    explicit Phrased(std::string_view text);

    std::size_t find(std::string_view phrase) const { // as find_phrase() has it
        const bool may_be = phrase.size() < 2 || pairs_.test(pair_at(phrase, 0));
        return may_be ? find_phrase(text_, phrase) : std::string_view::npos;
    }
    bool has(std::string_view phrase) const { return find(phrase) != std::string_view::npos; }

private:
    static constexpr std::size_t pairs = 1024; // several of letters may be one
    static std::size_t pair_at(std::string_view text, std::size_t at) {
        return (static_cast<unsigned char>(text[at]) * 32U +
                static_cast<unsigned char>(text[at + 1])) %
               pairs;
    }

    std::string_view text_;
    std::bitset<pairs> pairs_; // that words begin with
};

}

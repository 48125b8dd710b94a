// The closed classes are a list; the rest goes by endings.
#include "compiler/english/word_classes.hpp"

#include <array>
#include <utility>

namespace quoin::english {
namespace {

namespace w = word_class;

constexpr std::array<std::pair<std::string_view, std::uint32_t>, 15> names{{
    {"determiner", w::determiner},
    {"possessive", w::possessive},
    {"preposition", w::preposition},
    {"conjunction", w::conjunction},
    {"relative", w::relative},
    {"pronoun", w::pronoun},
    {"be", w::be},
    {"past_be", w::past_be},
    {"present_be", w::present_be},
    {"have", w::have},
    {"modal", w::modal},
    {"adverb", w::adverb},
    {"particle", w::particle},
    {"number", w::number},
    {"negation", w::negation},
}};

}

std::uint32_t word_classes(std::string_view word, const Lexicon& lexicon) {
    if (const auto said = lexicon.said_of(word, List::closed_classes)) {
        std::uint32_t classes = 0;
        for (const auto& [name, one] : names)
            if (has_word(*said, name)) classes |= one;
        return classes;
    }
    const bool in_ly = word.size() > 4 && word.ends_with("ly");
    return in_ly && !lexicon.has(word, List::ly_without_adverb) ? w::adverb : 0;
}

}

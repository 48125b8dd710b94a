// The closed classes are a list; the rest goes by endings.
#include "compiler/english/word_classes.hpp"

#include <algorithm>
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

std::uint32_t class_named(std::string_view name) {
    const auto* found = std::ranges::find(names, name, &decltype(names)::value_type::first);
    return found == names.end() ? 0 : found->second;
}

std::uint32_t classes_named(std::string_view said) { // parted by blanks
    std::uint32_t classes = 0;
    while (!said.empty()) {
        const std::size_t end = std::min(said.find(' '), said.size());
        classes |= class_named(said.substr(0, end));
        said.remove_prefix(std::min(end + 1, said.size()));
    }
    return classes;
}

}

std::uint32_t word_classes(std::string_view word, const Lexicon& lexicon) {
    if (const auto said = lexicon.said_of(word, List::closed_classes)) return classes_named(*said);
    const bool in_ly = word.size() > 4 && word.ends_with("ly");
    return in_ly && !lexicon.has(word, List::ly_without_adverb) ? w::adverb : 0;
}

}

// The lists of endings and beginnings are those that make words freely; common practice.
#include "compiler/english/unknown_word.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace quoin::english {
namespace {

constexpr std::array<std::string_view, 27> endings{
    "ness", "ly",   "er",    "ers",  "able", "less", "ism", "ist", "like",
    "wise", "ish",  "ful",   "ment", "ity",  "ic",   "al",  "ous", "ize",
    "ized", "izes", "izing", "ier",  "iest", "y",    "s",   "es",  "ed"};
constexpr std::array<std::string_view, 50> beginnings{
    "un",   "re",    "pre",     "non",    "over",  "under",  "sub",   "super",   "inter",
    "anti", "co",    "de",      "dis",    "mis",   "out",    "micro", "macro",   "multi",
    "bio",  "geo",   "hydro",   "photo",  "neuro", "cardio", "hyper", "hypo",    "poly",
    "mono", "semi",  "tele",    "trans",  "ultra", "thermo", "auto",  "counter", "cyber",
    "eco",  "hemo",  "immuno",  "intra",  "iso",   "nano",   "neo",   "ortho",   "osteo",
    "para", "phyto", "electro", "pseudo", "socio"};
constexpr std::size_t shortest_stem = 4, shortest_part = 3;

bool is_listed(const WordList& words, const std::string& word) {
    return words.class_of(word) != WordList::is_none;
}

bool has_known_stem(const std::string& word, const WordList& words) {
    return std::ranges::any_of(endings, [&](std::string_view ending) {
        if (word.size() < ending.size() + shortest_stem || !word.ends_with(ending)) return false;
        const std::string stem = word.substr(0, word.size() - ending.size());
        const bool takes_e =
            std::string_view("aeiouy").find(ending.front()) != std::string_view::npos;
        return is_listed(words, stem) || (takes_e && is_listed(words, stem + 'e'));
    });
}

bool has_known_rest(const std::string& word, const WordList& words) {
    return std::ranges::any_of(beginnings, [&](std::string_view beginning) {
        return word.size() >= beginning.size() + shortest_stem && word.starts_with(beginning) &&
               is_listed(words, word.substr(beginning.size()));
    });
}

bool is_compound(const std::string& word, const WordList& words) {
    for (std::size_t at = shortest_part; at + shortest_part <= word.size(); ++at)
        if (is_in_use(words.class_of(word.substr(0, at))) &&
            is_in_use(words.class_of(word.substr(at))))
            return true;
    return false;
}

int oddness(const std::string& word, const WordList& letters) {
    constexpr int most = 5; // class, of runs that many words have
    const std::string whole = '^' + word + '$';
    int least = most;
    for (std::size_t i = 0; i + 3 <= whole.size(); ++i) {
        const char of_run = letters.class_of(whole.substr(i, 3));
        least = std::min(least, of_run == WordList::is_none ? 0 : of_run - '0');
    }
    return least;
}

}

UnknownWord look_at(const std::string& small, const WordList& words, const WordList& letters) {
    return {small.size(), oddness(small, letters), is_compound(small, words),
            has_known_stem(small, words), has_known_rest(small, words)};
}

}

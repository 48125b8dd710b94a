// WordNet's lists, with the words of the trade that it lacks.
#include "compiler/english/nouns.hpp"

#include "compiler/english/verb_table.hpp"

#include <algorithm>
#include <span>
#include <string>

namespace quoin::english {
namespace {

bool ends_in(std::string_view word, std::span<const std::string_view> endings) {
    return std::ranges::any_of(endings, [&](std::string_view e) {
        return word.size() > e.size() + 1 && word.ends_with(e);
    });
}

}

bool is_person_noun(std::string_view word, const Lexicon& lexicon) {
    // of words that WordNet has not; these endings are seldom a thing's
    constexpr std::string_view endings[] = {"ist", "eer", "grapher", "keeper", "maker", "person"};
    if (lexicon.has(word, List::persons_not_in_wordnet) || said_of(word, person_nouns()))
        return true;
    const std::size_t hyphen = word.rfind('-');
    if (hyphen != word.npos) return is_person_noun(word.substr(hyphen + 1), lexicon); // co-author
    return word.size() > 5 && ends_in(word, endings) && !word.ends_with("list");
}

bool is_agent_noun(std::string_view word, const Lexicon& lexicon) {
    return is_person_noun(word, lexicon) && !lexicon.has(word, List::served);
}

bool is_plural_noun(std::string_view word, const Lexicon& lexicon) {
    constexpr std::string_view singular[] = {"ss", "us", "is", "'s", "ics"};
    if (lexicon.has(word, List::irregular_plurals)) return true;
    return word.size() > 3 && word.ends_with('s') && !ends_in(word, singular);
}

bool is_deed_noun(std::string_view word, const Lexicon& lexicon) {
    constexpr std::string_view endings[] = {"ing",  "tion", "sion", "ment",
                                            "ance", "ysis", "work", "ship"};
    if (lexicon.has(word, List::stuff)) return false;
    return lexicon.has(word, List::deeds) || ends_in(word, endings);
}

bool is_in_either_number(std::string_view word, List list, const Lexicon& lexicon) {
    if (lexicon.has(word, list)) return true;
    if (word.ends_with("ies"))
        return lexicon.has(std::string(word.substr(0, word.size() - 3)) + 'y', list);
    if (!word.ends_with('s')) return false;
    const std::string_view one = word.substr(0, word.size() - 1);
    return lexicon.has(one, list) ||
           (one.ends_with('e') && lexicon.has(one.substr(0, one.size() - 1), list));
}

bool is_noun_compound(const Sentence& sentence, std::size_t i) {
    const std::string pair = sentence.word(i) + ' ' + sentence.word(i + 1);
    const auto listed = [&](const std::string& compound) {
        return sentence.lexicon().has(compound, List::compounds) ||
               said_of(compound, noun_compounds());
    };
    if (listed(pair)) return true;
    if (pair.ends_with("ies") && listed(pair.substr(0, pair.size() - 3) + 'y')) return true;
    return pair.ends_with('s') && listed(pair.substr(0, pair.size() - 1));
}

}

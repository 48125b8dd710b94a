// What kind of thing a noun names, by WordNet, by its ending and by the lists of words/nouns.txt.
#pragma once

#include "compiler/english/sentence.hpp"

#include <cstddef>
#include <string_view>

namespace quoin::english {

// All take small letters.
bool is_person_noun(std::string_view word,
                    const Lexicon& lexicon); // guitarist, student: one person
// The same, but nobody who is served or taught.
bool is_agent_noun(std::string_view word, const Lexicon& lexicon);
bool is_plural_noun(std::string_view word, const Lexicon& lexicon); // clerks, people
bool is_deed_noun(std::string_view word, const Lexicon& lexicon);   // testing, design: what is done
// In a list of nouns in the singular: sheet, sheets.
bool is_in_either_number(std::string_view word, List list, const Lexicon& lexicon);

// The same of a bullet's words.
inline bool is_person_noun(const Sentence& sentence, std::size_t i) {
    return is_person_noun(sentence.word(i), sentence.lexicon());
}
inline bool is_agent_noun(const Sentence& sentence, std::size_t i) {
    return is_agent_noun(sentence.word(i), sentence.lexicon());
}
inline bool is_plural_noun(const Sentence& sentence, std::size_t i) {
    return is_plural_noun(sentence.word(i), sentence.lexicon());
}
inline bool is_deed_noun(const Sentence& sentence, std::size_t i) {
    return is_deed_noun(sentence.word(i), sentence.lexicon());
}

// A noun of two words, the first at `i`, which may be a verb: peer review, dining room.
bool is_noun_compound(const Sentence& sentence, std::size_t i);

}

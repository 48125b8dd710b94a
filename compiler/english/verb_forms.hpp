// Which forms of which verb a word may be, and the forms of a verb.
#pragma once

#include "compiler/english/lexicon.hpp"
#include "compiler/english/verb_table.hpp"

#include <string>
#include <string_view>

namespace quoin::english {

constexpr std::size_t longest_english = 40; // bytes; no word is longer

struct VerbForms {
    const VerbEntry* verb = nullptr; // null: no form of a verb that is known
    bool base = false;
    bool third = false; // counts
    bool past = false;
    bool participle = false;
    bool gerund = false;
    bool base_of_other = false; // a past that is the base of another verb too: fell, ground
    // `co-` of co-led, `re` of reimagined: no part of verb->base. It lies in the word asked for.
    std::string_view prefix = {};

    bool none() const { return verb == nullptr; }
    bool either_tense() const { return base && past; }
    bool present() const { return base || third; }
    bool only_participle() const { return participle && !past && !present() && !gerund; }
};

bool is_vowel(char letter); // a, e, i, o, u

// `word` is in small letters.
VerbForms verb_forms(std::string_view word, const Lexicon& lexicon = {});

std::string past_form(std::string_view base);
std::string third_person(std::string_view base);
std::string gerund_form(std::string_view base);

// As WordNet's tagged texts have it: three times as often the one as the other.
bool mostly_noun(const VerbEntry& verb);
bool mostly_verb(const VerbEntry& verb);

}

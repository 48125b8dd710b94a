// Each sign speaks for a verb or for a noun by so much; where they are at odds, nothing is said.
#include "compiler/english/verb_odds.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/verb_table.hpp"

#include <cmath>

namespace quoin::english {
namespace {

namespace w = word_class;

// What it takes to be sure: odds of twelve to one.
constexpr double sure = 2.5;

double of_counts(const VerbEntry& verb) {
    return std::log((verb.verb_count + 1.0) / (verb.noun_count + verb.adjective_count + 1.0));
}

// `210 visits and report outliers`: what is counted is joined to what is counted, so this is not.
bool joins_unlike(const Sentence& sentence, const JoinedWord& joined) {
    for (std::size_t i = joined.joiner; i-- > joined.verb + 1;) {
        if (sentence.is(i, w::preposition)) return false;
        if (sentence.starts_object(i)) return true;
    }
    return false;
}

// `to the pediatrician`, behind the things.
bool is_given_to_someone(const Sentence& sentence, std::size_t i) {
    return sentence.is_word(i, {"to", "for"}) && sentence.starts_object(i + 1);
}

// `report sparks to`: the verb's own preposition, behind its object.
bool goes_with_goal(const Sentence& sentence, const VerbEntry& verb, std::size_t i) {
    const auto prepositions = sentence.lexicon().said_of(verb.base, List::with_goal);
    return prepositions && has_word(*prepositions, sentence.word(i));
}

}

double joined_verb_odds(const Sentence& sentence, const JoinedWord& joined) {
    const std::size_t i = joined.word, next = i + 1;
    const VerbEntry& verb = *sentence.forms(i).verb;
    const bool things = is_plural_noun(sentence, next);
    if (sentence.forms(i).third || !verb.noun || (!things && !sentence.is(next, List::stuff)))
        return -sure;
    double odds = of_counts(verb) + 1;
    if (sentence.lexicon().has(verb.base, List::usual_verbs)) odds += 1.5;
    if (joins_unlike(sentence, joined)) odds += 1;
    if (goes_with_goal(sentence, verb, next + 1))
        odds += 3;
    else if (is_given_to_someone(sentence, next + 1))
        odds += 0.5;
    if (sentence.forms(joined.verb).either_tense()) odds += 0.7; // Set type and print cards
    if (sentence.forms(next).third) odds -= 1.5;                 // test results, report forms
    if (sentence.is(i, List::often_first_part)) odds -= 2;       // call sheets
    if (is_in_either_number(sentence.word(next), List::named_by_use, sentence.lexicon())) odds -= 3;
    if (is_noun_compound(sentence, i)) odds -= 3;
    return odds - sure;
}

bool is_adjective_in_ed(std::string_view word) {
    return !word.ends_with("ed") || said_of(word, adjectives_in_ed()).has_value();
}

}

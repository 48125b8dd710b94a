// A form in -ing that opens a bullet: the gerund of a verb, or a noun (Debugging of, Evening
// shifts).
#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/reading.hpp"

#include <algorithm>

namespace quoin::english {
namespace {

namespace w = word_class;

// `Using Python, built 3 models`
bool opens_phrase(const Sentence& sentence, std::size_t i) {
    for (std::size_t k = i + 1; k < sentence.size(); ++k) {
        if (sentence.token(k).kind != TokenKind::comma) continue;
        const VerbForms& after = sentence.forms(sentence.past_adverbs(k + 1));
        return after.past && !after.present();
    }
    return false;
}

// Trades and kinds of work, where no object follows: Catering for, Proofreading at.
bool is_trade(std::string_view word) {
    constexpr std::string_view trades[] = {
        "accounting",   "babysitting", "bartending", "bookkeeping", "cataloging", "catering",
        "cleaning",     "consulting",  "editing",    "engineering", "filing",     "fundraising",
        "housekeeping", "landscaping", "marketing",  "modeling",    "nursing",    "programming",
        "proofreading", "scheduling",  "training",   "tutoring"};
    return std::ranges::find(trades, word) != std::end(trades);
}

// What is named by what is done with it or in it: Filing system, Cooking classes.
bool is_named_by_use(std::string_view noun) {
    constexpr std::string_view heads[] = {
        "app",     "board",   "camp",   "campaign", "center",  "class",    "club",      "committee",
        "course",  "desk",    "drive",  "event",    "group",   "guide",    "hour",      "kit",
        "lab",     "lesson",  "list",   "machine",  "manual",  "material", "minute",    "module",
        "page",    "plan",    "policy", "pool",     "program", "room",     "schedule",  "seminar",
        "service", "session", "shift",  "site",     "skill",   "software", "statement", "station",
        "system",  "team",    "tool",   "workshop"};
    const auto listed = [&](std::string_view word) {
        return std::ranges::find(heads, word) != std::end(heads);
    };
    return listed(noun) || (noun.ends_with('s') && listed(noun.substr(0, noun.size() - 1))) ||
           (noun.ends_with("es") && listed(noun.substr(0, noun.size() - 2)));
}

// `Cleaning and stocking of`, `Landscaping and snow removal`; but `Cleaning and stocking 4 bays`.
Homograph gerund_by_conjunction(const Sentence& sentence, std::size_t i) {
    const std::size_t other = i + 2;
    if (sentence.forms(other).gerund) {
        if (sentence.is_word(other + 1, {"of"})) return Homograph::noun;
        return sentence.starts_object(other + 1) ? Homograph::verb : Homograph::unsure;
    }
    const bool noun = sentence.token(other).kind == TokenKind::word &&
                      sentence.classes(other) == 0 && !sentence.forms(other).past;
    return noun ? Homograph::noun : Homograph::unsure;
}

Homograph gerund_by_preposition(const Sentence& sentence, std::size_t i) {
    const bool noun =
        sentence.is_word(i + 1, {"for", "in", "at", "on"}) && is_trade(sentence.word(i));
    return noun ? Homograph::noun : Homograph::verb;
}

// Of these the noun is the likelier before what is named by use: Swimming lessons; but Planning
// events.
bool is_activity(std::string_view word) {
    constexpr std::string_view activities[] = {
        "billing", "coding",  "cooking", "dancing",  "mailing",  "meeting", "painting",
        "parking", "reading", "sewing",  "swimming", "training", "tutoring"};
    return std::ranges::find(activities, word) != std::end(activities);
}

// Bare words follow, an object or the rest of a compound.
Homograph by_compound(const Sentence& sentence, std::size_t i) {
    const std::string& head = sentence.word(head_noun(sentence, i + 1));
    if (is_person_noun(head)) return Homograph::noun;
    if (is_noun_compound(sentence.word(i), sentence.word(i + 1))) return Homograph::noun;
    const bool noun = is_activity(sentence.word(i)) || is_trade(sentence.word(i)) ||
                      sentence.is_word(i, {"building", "closing", "filing", "hearing", "housing",
                                           "learning", "opening", "recording", "testing"});
    if (noun && is_named_by_purpose(head) && !is_named_by_use(head)) // Building inspections
        return sentence.is_word(head_noun(sentence, i + 1) + 1, {"of"}) ? Homograph::noun
                                                                        : Homograph::unsure;
    // Ticketing system support: named by what is done more than told what one does
    if (mostly_noun(*sentence.forms(i).verb) && is_deed_noun(head)) return Homograph::unsure;
    if (!is_named_by_use(head)) return Homograph::verb;
    return is_activity(sentence.word(i)) ? Homograph::noun : Homograph::unsure;
}

}

Homograph read_gerund(const Sentence& sentence, std::size_t i) {
    const std::size_t next = i + 1;
    if (sentence.is_word(next, {"of"}) || is_never_gerund(sentence.word(i))) return Homograph::noun;
    if (opens_phrase(sentence, i)) return Homograph::unsure;
    if (sentence.starts_object(next) || sentence.is(next, w::adverb)) return Homograph::verb;
    if (sentence.is(next, w::conjunction)) return gerund_by_conjunction(sentence, i);
    if (sentence.ends_phrase(next)) return Homograph::unsure;
    if (sentence.is(next, w::be | w::modal | w::have)) return Homograph::noun;
    if (sentence.is(next, w::preposition)) return gerund_by_preposition(sentence, i);
    return by_compound(sentence, i);
}

}

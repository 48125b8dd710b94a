// Words that are a noun and a verb alike. What follows tells them apart: an object makes a verb,
// `of` a noun, and what is joined by "and" is of one kind.
#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/reading.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace quoin::english {
namespace {

namespace w = word_class;

bool takes(const Sentence& sentence, std::size_t i) { // that preposition, and no object before it
    const auto prepositions =
        sentence.lexicon().said_of(sentence.forms(i).verb->base, List::intransitive);
    return prepositions && has_word(*prepositions, sentence.word(i + 1));
}

bool joins(const Sentence& sentence, std::size_t i) {
    return sentence.is(i, w::conjunction) || sentence.token(i).kind == TokenKind::comma;
}

// The last of the verbs, or words that may be, that are joined to the one at `i`.
std::size_t last_joined(const Sentence& sentence, std::size_t i) {
    while (joins(sentence, i + 1)) {
        std::size_t next = i + 2;
        if (joins(sentence, next)) ++next; // , and
        next = sentence.past_adverbs(next);
        if (!sentence.forms(next).present()) break;
        i = next;
    }
    return i;
}

// What stands after the joiner at `i`, and after an adverb.
std::size_t conjunct(const Sentence& sentence, std::size_t i) {
    if (joins(sentence, i + 1)) ++i; // , and
    return sentence.past_adverbs(i + 1);
}

// `reweld`, `spot-check` with an object: no dictionary's verb, but its last part is one.
bool is_made_of_verb(const Sentence& sentence, std::size_t i) {
    const std::string_view word = sentence.word(i);
    const std::size_t hyphen = word.rfind('-');
    const bool again = word.starts_with("re") && hyphen == word.npos;
    const std::string_view last = word.substr(again ? 2 : hyphen == word.npos ? 0 : hyphen + 1);
    if (last.size() == word.size() || !verb_forms(last, sentence.lexicon()).base) return false;
    const std::size_t next = i + 1;
    return !sentence.is_word(next, {"of", "for"}) &&
           (sentence.starts_object(next) || joins(sentence, next) ||
            is_plural_noun(sentence, head_noun(sentence, next)));
}

// Like is joined with like: `Design and assembly of` joins nouns.
bool is_joined_to_noun(const Sentence& sentence, std::size_t i) {
    const std::size_t other = conjunct(sentence, i + 1);
    if (sentence.token(other).kind != TokenKind::word || sentence.classes(other) != 0) return false;
    if (is_made_of_verb(sentence, other)) return false;
    return sentence.forms(other).none() || sentence.forms(other).gerund;
}

// `Recruit, trained, and schedule 19 readers`: verbs, though not all in one tense.
bool is_joined_to_past(const Sentence& sentence, std::size_t i) {
    const std::size_t other = conjunct(sentence, i + 1);
    const VerbForms& forms = sentence.forms(other);
    if (!forms.past || forms.base) return false;
    const std::size_t last = joins(sentence, other + 1) ? conjunct(sentence, other + 1) : other;
    return sentence.starts_object(last + 1) && !sentence.forms(last).none();
}

// `Sort and palletize 2 tons`: a verb by its ending, that no list has.
bool is_new_verb(const Sentence& sentence, std::size_t i) {
    constexpr std::array<std::string_view, 2> endings{"ize", "ify"};
    return sentence.forms(i).none() && sentence.starts_object(i + 1) &&
           std::ranges::any_of(endings, [&](std::string_view ending) {
               return sentence.word(i).ends_with(ending);
           });
}

Homograph by_conjunction(const Sentence& sentence, std::size_t i) {
    const std::size_t last = last_joined(sentence, i);
    const VerbForms& forms = sentence.forms(last);
    const VerbEntry& verb = *sentence.forms(i).verb;
    if (is_new_verb(sentence, i + 2)) return Homograph::verb;
    if (last == i && is_joined_to_past(sentence, i)) return Homograph::verb;
    if (last == i && is_joined_to_noun(sentence, i)) return Homograph::noun;
    if (last == i || forms.third != sentence.forms(i).third) {
        const bool nouns = last > i && verb.noun && is_finite_past(sentence, last + 1);
        if (nouns) return Homograph::noun; // Staff and volunteers fed 200 guests
        return mostly_verb(verb) ? Homograph::verb : Homograph::unsure;
    }
    if (sentence.starts_object(last + 1)) return Homograph::verb;
    if (sentence.is_word(last + 1, {"of"})) return Homograph::noun;
    if (mostly_verb(verb) || mostly_verb(*forms.verb)) return Homograph::verb;
    const bool nouns = forms.third && sentence.is(last + 1, w::preposition);
    return nouns ? Homograph::noun : Homograph::unsure; // Charts and tables for
}

// `run 30 assays` after `Sample soil and`; `drove a van` after `Sort packages and`.
bool is_surely_joined(const Sentence& sentence, std::size_t i, std::size_t other) {
    const VerbForms& first = sentence.forms(i);
    const VerbForms& forms = sentence.forms(other);
    if (forms.none() || forms.either_tense()) return false;
    if (forms.past && !forms.present())
        return sentence.classes(i + 1) == 0 && is_finite_past(sentence, other);
    if (!forms.present() || forms.base != first.base) return false;
    const bool only_verb = !forms.verb->noun && !forms.verb->adjective;
    const bool hardly_noun = forms.verb->verb_count >= 8 * forms.verb->noun_count + 8 &&
                             is_plural_noun(sentence, other + 1) &&
                             !sentence.is(other, List::often_first_part); // call sheets
    return only_verb || hardly_noun ||
           (sentence.starts_object(other + 1) && !mostly_noun(*forms.verb));
}

// What is surely a verb further on, and no relative clause's, is joined to a verb.
bool is_joined_to_verb(const Sentence& sentence, std::size_t i) {
    for (std::size_t k = i + 1; k < sentence.size(); ++k) {
        const bool apart = sentence.is(k, w::relative | w::be | w::modal) ||
                           sentence.is_word(k, {"to"}) || sentence.token(k).title ||
                           sentence.token(k).kind == TokenKind::stop ||
                           (sentence.forms(k).past && !sentence.forms(k).present());
        if (apart) return false;
        if (!joins(sentence, k) || joins(sentence, k + 1)) continue;
        const std::size_t other = sentence.past_adverbs(k + 1);
        if (is_surely_joined(sentence, i, other)) return true;
    }
    return false;
}

Homograph by_preposition(const Sentence& sentence, std::size_t i) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    if (sentence.is_word(i + 1, {"of"})) return Homograph::noun;
    if (takes(sentence, i)) {
        // Interviews with farmers, but Reports to 2 deans
        const bool plural = sentence.forms(i).third;
        return plural && verb.base != "report" ? Homograph::unsure : Homograph::verb;
    }
    if (sentence.is(i + 1, w::particle) &&
        !sentence.is_word(i + 1, {"in", "on", "along", "around"}))
        return Homograph::verb;
    if (sentence.forms(i).either_tense()) return Homograph::unsure; // Cast as Emily
    if (sentence.is(i, List::unsure_before_preposition)) return Homograph::unsure;
    if (sentence.is_word(i, {"cook"}) && sentence.is_word(i + 1, {"for"})) return Homograph::unsure;
    if (is_agent_noun(sentence, i)) return Homograph::noun; // Cook on a breakfast line
    // Rotate through wards, Cash in coupons: a verb far more often
    if (!mostly_verb(verb)) return Homograph::noun;
    return sentence.forms(i).third ? Homograph::unsure : Homograph::verb; // Talks on safety
}

// What starts an object follows, or what counts or orders the noun itself.
Homograph by_object(const Sentence& sentence, std::size_t i) {
    const std::size_t next = i + 1;
    const std::size_t head = head_noun(sentence, next + 1);
    if (sentence.word(next).ends_with("'s")) // Subject librarian's assistant
        return is_agent_noun(sentence, head) ? Homograph::noun : Homograph::verb;
    const bool designates =
        sentence.is_figure(next) &&
        sentence.is_word(i, {"level", "grade", "phase", "rank", "stage", "type"});
    if (designates && !is_plural_noun(sentence, head)) return Homograph::noun;
    if (designates && !is_plural_noun(sentence, next + 1) && sentence.word(next).size() == 1)
        return Homograph::unsure; // Grade 4 lesson plans
    // Cashier 3 nights a week
    const VerbEntry& verb = *sentence.forms(i).verb;
    const bool person = is_agent_noun(sentence, i) && verb.verb_count <= verb.noun_count &&
                        sentence.is_number(next) && sentence.is(next + 1, List::times);
    const bool either = // Lifeguard 20 hours a week
        sentence.is(i, List::either_before_time) && sentence.is_number(next) &&
        sentence.is(next + 1, List::times);
    if (either) return Homograph::unsure;
    return person ? Homograph::noun : Homograph::verb;
}

// `Scouts' treasurer`: a sign that stands at the end of a word, and not between two.
bool is_plural_possessive(const Sentence& sentence, std::size_t i) {
    const auto touches = [&](std::size_t k) {
        const Extent& extent = sentence.token(k).extent;
        return extent.offset + extent.length == sentence.token(k + 1).extent.offset;
    };
    return sentence.forms(i).third && sentence.token(i + 1).kind == TokenKind::sign && touches(i) &&
           sentence.token(i + 2).kind == TokenKind::word && !touches(i + 1);
}

// `Stress test of 3 servers`, but `Stress test 3 servers`.
Homograph by_set_compound(const Sentence& sentence, std::size_t i) {
    const bool verb = sentence.forms(i + 1).present() && sentence.starts_object(i + 2);
    return verb ? Homograph::verb : Homograph::noun;
}

// `Work on the wall was finished`: a verb of its own follows the phrase.
bool is_subject(const Sentence& sentence, std::size_t i) {
    if (!sentence.is(i + 1, w::preposition)) return false;
    for (std::size_t k = i + 2; !sentence.ends_phrase(k); ++k) {
        if (sentence.is(k, w::relative | w::conjunction)) return false;
        if (sentence.is(k, w::past_be | w::present_be)) return true;
    }
    return false;
}

// No noun, but its object may be none: Weigh station clerk, Excel model of.
Homograph by_bare_object(const Sentence& sentence, std::size_t i) {
    const std::size_t next = i + 1;
    const bool bare = sentence.token(next).kind == TokenKind::word && sentence.classes(next) == 0;
    const bool without_object = sentence.forms(i).third && sentence.forms(i).verb->transitive &&
                                sentence.is_word(next, {"for", "of", "on", "to"});
    if (without_object && !takes(sentence, i)) return Homograph::unsure; // Edits to a manual
    if (!bare || sentence.starts_object(next)) return Homograph::verb;
    if (sentence.is_word(i, {"excel", "react"})) return Homograph::noun; // programs by their names
    if (!sentence.forms(i).verb->transitive) return Homograph::unsure;
    const std::size_t head = head_noun(sentence, next);
    return head > next && is_agent_noun(sentence, head) ? Homograph::unsure : Homograph::verb;
}

}

Homograph read_homograph(const Sentence& sentence, std::size_t i) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    const std::size_t next = i + 1;
    if (sentence.is_word(next, {"of"}) && verb.noun) return Homograph::noun;
    if (sentence.is_word(i, {"full", "best", "better", "top"})) return Homograph::noun;
    if (sentence.word(i).starts_with("co-") && sentence.classes(next) == 0 &&
        !sentence.ends_phrase(next))
        return Homograph::verb; // Co-lead parent group
    const bool bare = !sentence.starts_object(next) && !sentence.is(next, w::particle | w::adverb);
    const bool compound = is_noun_compound(sentence, i);
    if (compound) return by_set_compound(sentence, i);
    if (!verb.noun && !(is_often_adjective(verb) && bare)) return by_bare_object(sentence, i);
    if (is_plural_possessive(sentence, i)) return Homograph::noun;
    if (sentence.ends_phrase(next) && !sentence.token(next).title)
        return joins(sentence, next) ? by_conjunction(sentence, i) : Homograph::unsure;
    if (sentence.starts_object(next)) return by_object(sentence, i);
    if (sentence.is(next, w::be | w::have | w::modal) ||
        sentence.is_word(next, {"get", "gets", "got"}))
        return Homograph::noun;
    if (is_subject(sentence, i)) return Homograph::noun;
    if (is_joined_to_verb(sentence, i)) return Homograph::verb;
    if (sentence.is(next, w::conjunction)) return by_conjunction(sentence, i);
    if (sentence.is(next, w::preposition | w::particle)) return by_preposition(sentence, i);
    if (sentence.is(next, w::adverb)) return Homograph::verb;
    return read_compound(sentence, i);
}

}

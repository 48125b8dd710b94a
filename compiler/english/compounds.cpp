// Bare words after a noun or a verb are the rest of a compound noun, or an object without an
// article. WordNet's counts tell which is likelier; where they do not, nobody can say.
#include "compiler/english/compounds.hpp"

#include "compiler/english/nouns.hpp"

namespace quoin::english {
namespace {

namespace w = word_class;

bool is_usual_verb(const Sentence& sentence, const VerbEntry& verb) {
    return sentence.lexicon().has(verb.base, List::usual_verbs);
}

bool is_often_first_part(const Sentence& sentence, const VerbEntry& verb) {
    return sentence.lexicon().has(verb.base, List::often_first_part);
}

// Nothing follows that the participle before `i` could describe.
bool closes_participle(const Sentence& sentence, std::size_t i) {
    while (sentence.is(i, w::conjunction) && sentence.is_participle(i + 1))
        i += 2; // trained and scheduled for; but used and donated bikes
    if (sentence.is(i, w::conjunction)) return false;
    return sentence.ends_phrase(i) || sentence.is(i, w::preposition | w::adverb) ||
           sentence.is_word(i, {"weekly", "daily", "monthly"});
}

bool is_past_only(const VerbForms& forms) {
    return (forms.past || forms.participle) && !forms.present();
}

// `records merged for 900 donors`: what was done to the noun before it, not an adjective.
bool is_participle_after_noun(const Sentence& sentence, std::size_t i) {
    return is_past_only(sentence.forms(i)) && closes_participle(sentence, i + 1);
}

// `Budget of $12,000 balanced`, `Reports filed weekly`, but `Draft written reports`.
Homograph by_participle(const Sentence& sentence, std::size_t i) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    if (is_finite_past(sentence, i + 1) || closes_participle(sentence, i + 2))
        return verb.noun ? Homograph::noun : Homograph::unsure;
    if (is_plural_noun(sentence, i + 2)) return Homograph::verb;
    return mostly_noun(verb) ? Homograph::unsure : Homograph::verb;
}

// `Test scores rose 9 points`: the bare words are a subject, and their verb is among them.
bool has_finite_past(const Sentence& sentence, std::size_t first, std::size_t last) {
    for (std::size_t k = first; k <= last + 1; ++k) {
        const bool amount = sentence.is_number(k + 1) && !sentence.is(k + 2, List::times);
        const VerbForms& forms = sentence.forms(k);
        if (forms.past && !forms.present() && (!forms.participle || amount)) return true;
    }
    return false;
}

// Visitors, children: nobody but a verb has them for an object.
bool is_plural_person(const Sentence& sentence, std::size_t i) {
    const std::string_view word = sentence.word(i);
    const bool irregular = word == "people" || word == "children" || word == "women";
    return irregular || (word.ends_with('s') &&
                         is_person_noun(word.substr(0, word.size() - 1), sentence.lexicon()));
}

// After the plural, or the third person.
Homograph after_s(const Sentence& sentence, std::size_t i, std::size_t head) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    const bool may_serve = head == i + 1 && !mostly_noun(verb); // Supports therapist
    if (sentence.is(i, List::plural_modifiers)) return Homograph::noun;
    if (is_agent_noun(sentence, head)) return may_serve ? Homograph::unsure : Homograph::noun;
    if (is_plural_noun(sentence, i + 1)) return Homograph::verb; // Files liens
    const bool noun = mostly_noun(verb) && !is_usual_verb(sentence, verb);
    // Conducts orientation: a plural seldom stands before the name of a deed
    const bool deed = is_deed_noun(sentence, head) && !is_usual_verb(sentence, verb) &&
                      verb.verb_count <= verb.noun_count;
    return noun || deed ? Homograph::unsure : Homograph::verb;
}

// `Practice interviews`, `Filter changes`: things done, named by what they are done with or to.
bool is_plural_deed(const Sentence& sentence, std::size_t i) {
    const VerbForms& forms = sentence.forms(i);
    if (!forms.third || !forms.verb->noun || forms.verb->verb_count <= 2) return false;
    const bool thing = 2 * forms.verb->verb_count < forms.verb->noun_count; // samples
    return !thing && !is_person_noun(forms.verb->base, sentence.lexicon()); // Question witnesses
}

// Eight times as often a verb: before the name of a deed, too, it is one (Lead tours, Run tests).
bool is_hardly_noun(const VerbEntry& verb) {
    return verb.verb_count >= 8 * verb.noun_count + 8;
}

Homograph before_plural_deed(const Sentence& sentence, const VerbEntry& verb) {
    const bool handles = verb.base == "process" || verb.base == "grade" || verb.base == "sort";
    if (handles || is_hardly_noun(verb)) return Homograph::verb;
    return !is_usual_verb(sentence, verb) && mostly_noun(verb) ? Homograph::noun
                                                               : Homograph::unsure;
}

// `Call sheets`, `Permit applications`: likely verbs with an object, but for what is often the
// first part of a name. `Audit expense reports` has a name of its own between.
bool may_be_name(const Sentence& sentence, std::size_t i, std::size_t head) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    if (!verb.noun || is_plural_person(sentence, head) || sentence.is(head, List::stuff))
        return false;
    if (is_often_first_part(sentence, verb)) return true;
    return head > i + 1 && !is_usual_verb(sentence, verb) && !is_hardly_noun(verb);
}

// `Field questions and route calls`: verbs, as likely as nouns.
bool may_be_joined_to_verb(const Sentence& sentence, std::size_t i, std::size_t head) {
    for (std::size_t k = head + 1; k < sentence.size() && k < head + 8; ++k) {
        const VerbForms& forms = sentence.forms(k + 1);
        const bool alike = forms.base && sentence.forms(i).base && !mostly_noun(*forms.verb);
        const bool object =
            sentence.token(k + 2).kind == TokenKind::word && sentence.classes(k + 2) == 0;
        if (sentence.is(k, w::conjunction) && alike && object) return true;
    }
    return false;
}

Homograph likelier_before_plural(const Sentence& sentence, std::size_t i, std::size_t head) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    if (is_participle_after_noun(sentence, head + 1)) { // Research participants scheduled for
        const bool noun = verb.noun_count >= verb.verb_count && !is_usual_verb(sentence, verb) &&
                          !sentence.is_word(head + 2, {"by", "from", "in"});
        return noun ? Homograph::noun : Homograph::unsure;
    }
    const bool deed = head == i + 1 && is_plural_deed(sentence, head);
    if (deed && sentence.is_word(head + 1, {"of"})) return Homograph::unsure; // Benchmark tests of
    if (deed) return before_plural_deed(sentence, verb);
    const bool verb_likelier = is_usual_verb(sentence, verb) || verb.verb_count > verb.noun_count;
    return verb_likelier ? Homograph::verb : Homograph::unsure; // Design quizzes; Light displays
}

Homograph before_plural(const Sentence& sentence, std::size_t i, std::size_t head) {
    const Homograph likelier = likelier_before_plural(sentence, i, head);
    const bool in_doubt = likelier == Homograph::verb ? may_be_name(sentence, i, head)
                                                      : may_be_joined_to_verb(sentence, i, head);
    return in_doubt ? Homograph::unsure : likelier;
}

// `Label printing`, `Order entry`: what is done to the thing before it.
bool is_done_to_noun(const Sentence& sentence, std::size_t deed) {
    const bool thing = sentence.is_word(deed, {"learning", "understanding"}); // nobody's work
    return (sentence.forms(deed).gerund && !thing) || sentence.is(deed, List::done_to_nouns);
}

// Before the name of a deed: Test automation; but Model oyster settlement may well be a verb's.
Homograph before_deed(const Sentence& sentence, std::size_t i, std::size_t head) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    const bool noun = !is_usual_verb(sentence, verb) && 4 * verb.noun_count >= 3 * verb.verb_count;
    const bool done = head == i + 1 && verb.noun && is_done_to_noun(sentence, head) &&
                      !may_be_joined_to_verb(sentence, i, head);
    return noun || done ? Homograph::noun : Homograph::unsure;
}

// `Answer rate of 98%`, `Record time of`.
bool is_amount(const Sentence& sentence, std::size_t head) {
    return sentence.is(head, List::amounts) && sentence.is_word(head + 1, {"of"}) &&
           sentence.is_figure(head + 2);
}

Homograph before_singular(const Sentence& sentence, std::size_t i, std::size_t head) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    if (head == i + 1 && is_amount(sentence, head) && verb.noun) return Homograph::noun;
    const bool name = is_often_first_part(sentence, verb);
    if (name && !mostly_noun(verb)) return Homograph::unsure; // Drill crew
    if (is_hardly_noun(verb)) return Homograph::verb;
    if (is_deed_noun(sentence, head) || is_agent_noun(sentence, i + 1))
        return before_deed(sentence, i, head);
    // Nothing that can be counted is an object without an article: Order food, but Paint crew
    if (mostly_verb(verb) || is_usual_verb(sentence, verb))
        return sentence.is(head, List::stuff) ? Homograph::verb : Homograph::unsure;
    if (mostly_noun(verb)) return name ? Homograph::noun : Homograph::unsure; // Exhibit hall
    // Stress test of, but Lead design of
    const bool noun = sentence.is_word(head + 1, {"of"}) && verb.noun_count > verb.verb_count;
    return noun ? Homograph::noun : Homograph::unsure;
}

// `Open meetings`, `Clean rooms`: who can say?
Homograph after_adjective(const Sentence& sentence, std::size_t i, std::size_t head) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    const bool of = sentence.is_word(head + 1, {"of"});
    const bool other = verb.adjective_count + verb.noun_count >= 3 * verb.verb_count + 3;
    if (is_plural_noun(sentence, head)) { // Total sales of
        if (sentence.lexicon().has(verb.base, List::mostly_done) &&
            !is_participle_after_noun(sentence, head + 1))
            return Homograph::verb;
        return other && of ? Homograph::noun : Homograph::unsure;
    }
    // Perfect score, Average response time, Complete rewrite of
    const bool adjective = other || (of && !sentence.forms(head).none());
    return adjective ? Homograph::noun : Homograph::unsure;
}

}

bool is_finite_past(const Sentence& sentence, std::size_t i) {
    const VerbForms& forms = sentence.forms(i);
    if (!forms.past || forms.base) return false;
    return !forms.participle || sentence.starts_object(i + 1);
}

std::size_t head_noun(const Sentence& sentence, std::size_t i) {
    const auto closing = w::preposition | w::conjunction | w::relative | w::be | w::modal |
                         w::adverb | w::pronoun | w::have | w::determiner | w::possessive;
    std::size_t head = i;
    for (std::size_t k = i; !sentence.ends_phrase(k) && !sentence.is_figure(k); ++k) {
        if (sentence.is(k, closing) || (k > i && is_participle_after_noun(sentence, k))) break;
        if (k > i && sentence.is_word(k, {"daily", "weekly", "monthly", "nightly", "yearly"}))
            break;
        head = k;
    }
    return head;
}

bool is_often_adjective(const VerbEntry& verb) {
    if (verb.base == "live") return true; // as a verb it has no bare object
    return verb.adjective && verb.adjective_count >= 3 &&
           4 * verb.adjective_count >= verb.verb_count;
}

namespace {

// `Test Android app`: a name seldom has a noun before it, but for that of a post or a place.
bool has_name_for_object(const Sentence& sentence, std::size_t i, std::size_t head) {
    const Token& next = sentence.token(i + 1);
    if (!is_capital(next) || is_all_capitals(next) || next.title) return false;
    if (is_capital(sentence.token(head)) && head > i + 1) return false; // all may be a name
    const VerbEntry& verb = *sentence.forms(i).verb;
    return is_usual_verb(sentence, verb) || verb.verb_count > verb.noun_count;
}

}

Homograph read_compound(const Sentence& sentence, std::size_t i) {
    const VerbForms& forms = sentence.forms(i);
    if (is_past_only(sentence.forms(i + 1))) return by_participle(sentence, i);
    const std::size_t head = head_noun(sentence, i + 1);
    if (has_finite_past(sentence, i + 2, head)) return Homograph::noun;
    if (forms.third) return after_s(sentence, i, head);
    const bool stands = forms.verb->base == "stand" &&
                        sentence.is_word(head, {"guard", "watch", "lookout", "duty"});
    if (stands) return Homograph::verb;
    if (is_agent_noun(sentence, head)) return Homograph::noun;
    if (has_name_for_object(sentence, i, head)) return Homograph::verb;
    if (is_often_adjective(*forms.verb)) return after_adjective(sentence, i, head);
    if (!forms.verb->transitive && !is_usual_verb(sentence, *forms.verb))
        return Homograph::noun; // Weekend shifts
    return is_plural_noun(sentence, head) ? before_plural(sentence, i, head)
                                          : before_singular(sentence, i, head);
}

}

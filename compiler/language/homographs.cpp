// Words that are a noun and a verb alike. What follows tells them apart: an object makes a verb,
// `of` a noun, a person's trade the noun that stands before it.
#include "compiler/language/reading.hpp"

#include <algorithm>

namespace quoin {
namespace {

namespace w = word_class;

struct VerbWithPreposition { // as a verb it takes these with no object between
    std::string_view verb;
    std::string_view prepositions; // parted by spaces
};

constexpr VerbWithPreposition intransitive[] = {{"act", "as in"},
                                                {"advocate", "for"},
                                                {"aid", "in with"},
                                                {"answer", "to"},
                                                {"appeal", "to"},
                                                {"balance", "between"},
                                                {"call", "on"},
                                                {"campaign", "for on"},
                                                {"care", "for"},
                                                {"check", "for in on with"},
                                                {"compete", "against at for in with"},
                                                {"contract", "with"},
                                                {"dance", "in with"},
                                                {"debate", "in against"},
                                                {"experiment", "with"},
                                                {"focus", "on"},
                                                {"guard", "against"},
                                                {"help", "at in out with"},
                                                {"hunt", "for"},
                                                {"interview", "for with"},
                                                {"liaise", "between with"},
                                                {"look", "after for into"},
                                                {"network", "with"},
                                                {"partner", "with"},
                                                {"play", "for in with"},
                                                {"push", "for"},
                                                {"reach", "out"},
                                                {"report", "directly to"},
                                                {"row", "for in"},
                                                {"run", "for"},
                                                {"search", "for through"},
                                                {"shop", "for"},
                                                {"speak", "at for on to with"},
                                                {"stand", "in"},
                                                {"swim", "for"},
                                                {"talk", "to with"},
                                                {"test", "for"},
                                                {"travel", "across for from to with"},
                                                {"vote", "on"},
                                                {"walk", "to"},
                                                {"watch", "for over"},
                                                {"work", "alongside as at for in on to under with"},
                                                {"write", "about for on to"}};

bool takes(const Sentence& sentence, std::size_t i) {
    const std::string& next = sentence.word(i + 1);
    for (const auto& [verb, prepositions] : intransitive) {
        if (verb != sentence.forms(i).verb->base) continue;
        const std::string padded = ' ' + std::string(prepositions) + ' ';
        return padded.find(' ' + next + ' ') != padded.npos;
    }
    return false;
}

// The last word of the bare words from `i` on, before a preposition, a sign or a number.
std::size_t head_noun(const Sentence& sentence, std::size_t i) {
    std::size_t head = i;
    for (; !sentence.ends_phrase(i) && !sentence.is_figure(i); ++i) {
        const auto closing = w::preposition | w::conjunction | w::relative | w::be | w::modal |
                             w::adverb | w::pronoun | w::have;
        if (sentence.is(i, closing)) break;
        head = i;
    }
    return head;
}

// Compounds of a noun, though what stands first may be a verb, and what follows its object.
bool is_set_compound(const Sentence& sentence, std::size_t i) {
    constexpr std::string_view compounds[] = {
        "aid station",     "bake sale",        "book club",       "book sales",
        "call center",     "call centre",      "clean energy",    "clean water",
        "code review",     "code reviews",     "contract review", "dance company",
        "dance recital",   "dance team",       "debate team",     "design team",
        "direct care",     "direct sales",     "drill team",      "field notes",
        "field work",      "film festival",    "focus group",     "foster care",
        "foster home",     "front desk",       "front office",    "harvest crew",
        "help desk",       "land surveys",     "land use",        "log books",
        "market analysis", "market research",  "open house",      "open houses",
        "phone calls",     "pilot program",    "pilot project",   "pilot study",
        "record keeping",  "research project", "ski patrol",      "stage crew",
        "staff meetings",  "stock room",       "study abroad",    "study group",
        "study hall",      "support group",    "support staff",   "swim team",
        "test prep",       "ticket sales",     "track team",      "trade show",
        "trade shows",     "water polo",       "water quality",   "work experience",
        "work order",      "work study"};
    const std::string pair = sentence.word(i) + ' ' + sentence.word(i + 1);
    return std::ranges::find(compounds, pair) != std::end(compounds);
}

// Verbs that résumés have far more often than other texts, mostly without an article after them:
// Chair safety board, Model oyster settlement.
bool is_usual_verb(std::string_view word) {
    constexpr std::string_view verbs[] = {
        "audit",   "benchmark", "bill",    "book",  "brand", "budget",  "captain",  "chair",
        "coach",   "code",      "feature", "file",  "grade", "host",    "log",      "map",
        "market",  "mentor",    "model",   "pilot", "price", "process", "research", "script",
        "service", "ship",      "staff",   "stage", "stock", "tutor",   "water",    "load"};
    return std::ranges::find(verbs, word) != std::end(verbs);
}

bool is_adjective_too(std::string_view word) {
    constexpr std::string_view adjectives[] = {
        "alternate", "clean",    "clear",  "close",     "complete", "cool",    "correct",
        "direct",    "double",   "dry",    "duplicate", "free",     "front",   "level",
        "live",      "lower",    "mature", "open",      "perfect",  "present", "quiet",
        "secure",    "separate", "slow",   "smooth",    "total",    "warm"};
    return std::ranges::find(adjectives, word) != std::end(adjectives);
}

// Of these the verb is likelier before a plural.
bool is_mostly_done(std::string_view word) {
    constexpr std::string_view verbs[] = {"clear",   "complete", "correct", "duplicate",
                                          "present", "secure",   "separate"};
    return std::ranges::find(verbs, word) != std::end(verbs);
}

// Bare words follow: Stock room organization, Design quizzes, Research assistant.
Homograph by_compound(const Sentence& sentence, std::size_t i) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    const std::size_t at = head_noun(sentence, i + 1);
    const std::string& head = sentence.word(at);
    if (is_agent_noun(head) && !is_plural_noun(head)) return Homograph::noun;
    // Open meetings, Direct mailings; but Present findings
    if (is_adjective_too(verb.base) && !(is_plural_noun(head) && is_mostly_done(verb.base)))
        return Homograph::unsure;
    if (mostly_verb(verb)) return Homograph::verb;
    // Phone calls, Field notes: a thing done, named by what it is done with
    const bool deed =
        at == i + 1 && sentence.forms(at).third && sentence.forms(at).verb->verb_count > 4;
    if (deed && 2 * verb.noun_count > 3 * verb.verb_count) return Homograph::unsure;
    // Design quizzes; but Ticket sales
    if (is_plural_noun(head))
        return mostly_noun(verb) && !is_usual_verb(verb.base) ? Homograph::unsure : Homograph::verb;
    if (is_usual_verb(verb.base) && !head.ends_with("ing")) return Homograph::unsure;
    if (mostly_noun(verb)) return Homograph::noun;
    // Stress test of, but Lead design of
    if (sentence.is_word(at + 1, {"of"}) && verb.noun_count > verb.verb_count)
        return Homograph::noun;
    // Document wound care may be either
    if (is_mass_noun(head) && 2 * verb.noun_count > 3 * verb.verb_count) return Homograph::noun;
    return Homograph::unsure;
}

// `Budget of $12,000 balanced`, `Reports filed weekly`, but `Draft written reports`.
Homograph by_participle(const Sentence& sentence, std::size_t i) {
    const std::size_t after = i + 2;
    const bool closed = sentence.ends_phrase(after) ||
                        sentence.is(after, w::preposition | w::adverb) ||
                        sentence.is_word(after, {"weekly", "daily", "monthly"});
    if (closed) return sentence.forms(i).verb->noun ? Homograph::noun : Homograph::unsure;
    if (is_plural_noun(sentence.word(after))) return Homograph::verb;
    return mostly_noun(*sentence.forms(i).verb) ? Homograph::unsure : Homograph::verb;
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

Homograph by_conjunction(const Sentence& sentence, std::size_t i) {
    const std::size_t last = last_joined(sentence, i);
    const VerbForms& forms = sentence.forms(last);
    const VerbEntry& verb = *sentence.forms(i).verb;
    if (last == i || forms.third != sentence.forms(i).third)
        return mostly_verb(verb) ? Homograph::verb : Homograph::unsure;
    if (sentence.starts_object(last + 1)) return Homograph::verb;
    if (sentence.is_word(last + 1, {"of"})) return Homograph::noun;
    if (mostly_verb(verb) || mostly_verb(*forms.verb)) return Homograph::verb;
    return Homograph::unsure;
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
    if (sentence.is_word(i, {"present", "volunteer", "intern", "train", "change", "respond"}))
        return Homograph::unsure;
    if (is_agent_noun(sentence.word(i))) return Homograph::noun; // Cook on a breakfast line
    // Rotate through wards, Cash in coupons: a verb far more often
    if (!mostly_verb(verb)) return Homograph::noun;
    return sentence.forms(i).third ? Homograph::unsure : Homograph::verb; // Talks on safety
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

}

Homograph read_homograph(const Sentence& sentence, std::size_t i) {
    const VerbEntry& verb = *sentence.forms(i).verb;
    const std::size_t next = i + 1;
    if (sentence.is_word(next, {"of"}) && verb.noun) return Homograph::noun;
    if (sentence.is_word(i, {"full", "best", "better", "top"})) return Homograph::noun;
    const bool bare = !sentence.starts_object(next) && !sentence.is(next, w::particle | w::adverb);
    if (!verb.noun && !(is_adjective_too(verb.base) && bare)) return Homograph::verb;
    if (sentence.ends_phrase(next) && !sentence.token(next).title)
        return joins(sentence, next) ? by_conjunction(sentence, i) : Homograph::unsure;
    if (sentence.starts_object(next)) {
        // Level 2 technician
        const bool level =
            sentence.is_figure(next) && !is_plural_noun(sentence.word(next + 1)) &&
            sentence.is_word(i, {"level", "grade", "phase", "rank", "stage", "type"});
        // Cashier 3 nights a week
        const bool person = is_agent_noun(sentence.word(i)) && sentence.is_number(next) &&
                            is_time_noun(sentence.word(next + 1));
        return level || person ? Homograph::noun : Homograph::verb;
    }
    if (sentence.is(next, w::be | w::have | w::modal) || sentence.is_word(next, {"got"}))
        return Homograph::noun;
    if (is_subject(sentence, i)) return Homograph::noun;
    if (is_set_compound(sentence, i)) return Homograph::noun;
    if (sentence.is(next, w::conjunction)) return by_conjunction(sentence, i);
    if (sentence.is(next, w::preposition | w::particle)) return by_preposition(sentence, i);
    if (sentence.is(next, w::adverb)) return Homograph::verb;
    const VerbForms& following = sentence.forms(next);
    if ((following.past && !following.base) || following.only_participle())
        return by_participle(sentence, i);
    return by_compound(sentence, i);
}

}

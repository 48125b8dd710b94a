// Openings that say one was near the work: Responsible for, Helped, Took part in.
#include "compiler/english/nouns.hpp"
#include "compiler/english/reading.hpp"

#include <array>

namespace quoin::english {
namespace {

namespace w = word_class;

constexpr std::string_view any_word = "*"; // up to three, as in `gained hands-on experience`

// The first word in any form of the verb, or as it stands if it is none; then the words after it,
// adverbs between passed over; alternatives parted by blanks.
struct VerbPhrase {
    std::string_view verb;
    std::array<std::string_view, 4> rest;
};

constexpr VerbPhrase weak_phrases[] = {
    {"help", {}},
    {"assist", {}},
    {"aid", {}},
    {"participate", {"in"}},
    {"take", {"part", "in"}},
    {"take", {"an", "active", "part", "in"}},
    {"contribute", {"to towards toward"}},
    {"deal", {"with"}},
    {"serve", {"as"}},
    {"sit", {"in", "on"}},
    {"work", {"on with in at as for alongside"}},
    {"attempt", {"to"}},
    {"try", {"to"}},
    {"have", {any_word, "opportunity chance", "to"}},
    {"gain", {any_word, "experience exposure"}},
    {"get", {any_word, "experience exposure"}},
    {"get", {"to"}},
    {"learn", {"how", "to"}},
    {"learn", {"about"}},
    {"have", {"to"}},
    {"play", {any_word, "role part", "in"}},
    {"attend",
     {any_word, "meeting meetings training trainings hearing hearings lecture lectures "
                "session sessions class classes"}},
    {"spend", {any_word, "hours days weeks summers months", "on"}},
};

// After `be` or alone.
constexpr VerbPhrase weak_states[] = {
    {"responsible", {"for"}},  {"in", {"charge", "of"}}, {"tasked", {"with"}},
    {"involved", {"in with"}}, {"able", {"to"}},         {"part", {"of"}},
    {"accountable", {"for"}},  {"expected", {"to"}},     {"required", {"to"}},
    {"there", {"to"}},         {"exposed", {"to"}},
};

// The last token of the rest of a phrase that begins at `i`; none if it does not stand there.
std::optional<std::size_t> match_rest(const Sentence& sentence, std::size_t i,
                                      const std::array<std::string_view, 4>& rest) {
    std::size_t last = i - 1;
    std::size_t spare = 0;
    for (const std::string_view part : rest) {
        if (part.empty()) break;
        if (part == any_word) {
            spare = 4;
            continue;
        }
        i = sentence.past_adverbs(i);
        while (spare > 0 && !has_word(part, sentence.word(i)) && !sentence.ends_phrase(i)) {
            ++i;
            --spare;
        }
        if (!has_word(part, sentence.word(i))) return std::nullopt;
        spare = 0;
        last = i++;
    }
    return last;
}

VerbTense tense_of(const VerbForms& forms) {
    if (forms.gerund) return VerbTense::neither;
    if (forms.either_tense()) return VerbTense::either;
    return forms.present() ? VerbTense::present : VerbTense::past;
}

std::optional<WeakPhrase> match_state(const Sentence& sentence, std::size_t first) {
    for (const VerbPhrase& state : weak_states) {
        if (sentence.word(first) != state.verb) continue;
        if (const auto last = match_rest(sentence, first + 1, state.rest))
            return WeakPhrase{first, *last, VerbTense::none};
    }
    return std::nullopt;
}

std::optional<WeakPhrase> match_verb(const Sentence& sentence, std::size_t first) {
    const VerbForms& forms = sentence.forms(first);
    if (forms.none() || !forms.prefix.empty()) return std::nullopt;
    for (const VerbPhrase& phrase : weak_phrases) {
        if (forms.verb->base != phrase.verb) continue;
        if (const auto last = match_rest(sentence, first + 1, phrase.rest))
            return WeakPhrase{first, *last, tense_of(forms)};
    }
    return std::nullopt;
}

// `Help desk technician` and `Aid station lead` are nouns.
bool is_noun_here(const Sentence& sentence, std::size_t first) {
    const VerbForms& forms = sentence.forms(first);
    if (sentence.is_word(first, {"assists"}) && sentence.is_word(first + 1, {"leader", "record"}))
        return true; // of basketball
    if (forms.gerund && !sentence.starts_object(first + 1) &&
        !sentence.is(first + 1, w::preposition)) { // Assisting stage manager
        std::size_t head = first + 1;
        while (!sentence.ends_phrase(head + 1) && !sentence.is(head + 1, w::preposition) &&
               head < first + 4)
            ++head;
        return is_agent_noun(sentence, head) && !is_plural_noun(sentence, head);
    }
    return forms.present() && sentence.is_word(first, {"help", "aid", "work", "deal"}) &&
           !sentence.starts_object(first + 1) && read_homograph(sentence, first) == Homograph::noun;
}

// `Daily duties included`: within the first few words.
std::optional<WeakPhrase> match_duties(const Sentence& sentence, std::size_t first) {
    for (std::size_t i = first; i < first + 5 && !sentence.ends_phrase(i); ++i) {
        if (!sentence.is_word(i, {"duties", "responsibilities", "tasks", "duty", "responsibility",
                                  "role", "job", "position"}))
            continue;
        const std::size_t verb = sentence.past_adverbs(i + 1);
        const bool includes = sentence.is_word(
            verb, {"include", "included", "includes", "including", "involve", "involved",
                   "consisted", "were", "was", "are", "comprised", "entailed"});
        if (!includes) return std::nullopt;
        const bool finite = !sentence.forms(verb).none() && !sentence.forms(verb).gerund;
        return WeakPhrase{first, verb, finite ? tense_of(sentence.forms(verb)) : VerbTense::none};
    }
    return std::nullopt;
}

std::optional<WeakPhrase> match_do(const Sentence& sentence, std::size_t first) {
    if (!sentence.is_word(first, {"did", "do", "does", "doing"})) return std::nullopt;
    const bool present = sentence.is_word(first, {"do", "does"});
    const VerbTense tense = sentence.is_word(first, {"doing"}) ? VerbTense::neither
                            : present                          ? VerbTense::present
                                                               : VerbTense::past;
    return WeakPhrase{first, first, tense};
}

VerbTense tense_of_be(const Sentence& sentence, std::size_t i) {
    if (sentence.is(i, w::past_be)) return VerbTense::past;
    return sentence.is(i, w::present_be) ? VerbTense::present : VerbTense::none;
}

}

std::optional<WeakPhrase> weak_phrase(const Sentence& sentence, std::size_t first) {
    if (sentence.is(first, w::be)) {
        auto state = match_state(sentence, sentence.past_adverbs(first + 1));
        if (!state) return std::nullopt;
        return WeakPhrase{first, state->last, tense_of_be(sentence, first)};
    }
    if (sentence.is_word(first, {"got", "get", "gets"}) &&
        sentence.is_word(first + 1, {"involved"}))
        if (const auto state = match_state(sentence, first + 1))
            return WeakPhrase{first, state->last, tense_of(sentence.forms(first))};
    if (const auto state = match_state(sentence, first)) return state;
    if (const auto doing = match_do(sentence, first)) return doing;
    if (!is_noun_here(sentence, first))
        if (const auto verb = match_verb(sentence, first)) return verb;
    return match_duties(sentence, first);
}

}

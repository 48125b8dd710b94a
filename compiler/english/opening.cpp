// How a bullet opens: with a verb and in which form, with a noun, a pronoun, or a phrase.
#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/participles.hpp"
#include "compiler/english/reading.hpp"

#include <optional>

namespace quoin::english {
namespace {

namespace w = word_class;
using Opening = BulletReading::Opening;

class Opener {
public:
    explicit Opener(const Sentence& sentence) : s_(sentence) {}

    OpeningReading read() {
        if (s_.size() == 0) return {};
        std::size_t i = 0;
        while (i < s_.size() && s_.token(i).kind == TokenKind::sign && !s_.is(i, w::conjunction))
            ++i;
        if (const auto weak = weak_phrase(s_, i)) return weak_reading(*weak);
        return read_at(i);
    }

private:
    OpeningReading at(std::size_t i, Opening kind, VerbTense tense = VerbTense::none) const {
        OpeningReading reading{kind, i, i, i, tense, false, false};
        return reading;
    }

    OpeningReading weak_reading(const WeakPhrase& weak) const {
        OpeningReading reading = at(weak.first, Opening::weak, weak.tense);
        reading.last = weak.last;
        if (weak.tense != VerbTense::none && weak.last > weak.first &&
            s_.forms(weak.first).none() && !s_.is(weak.first, w::be))
            reading.verb = weak.last; // `Duties included`
        return reading;
    }

    OpeningReading read_at(std::size_t i) {
        if (starts_title(i) || s_.is_figure(i)) return no_verb(i);
        if (s_.is(i, List::person_subjects)) return person(i);
        if (s_.is(i, w::be)) return be(i);
        if (s_.is(i, w::have)) return have(i);
        if (s_.is_word(i, {"to"})) return infinitive(i);
        if (s_.is_word(i, {"got", "gets", "get"})) return got(i);
        if (s_.is_word(i, {"not", "never"})) return at(i, Opening::unsure);
        if (s_.is(i, w::adverb) && !s_.forms(i).present()) return after_adverb(i);
        if (s_.is(i, List::periods)) return after_period(i);
        if (is_preposition(i)) return no_verb(i);
        if (s_.is(i,
                  w::determiner | w::possessive | w::number | w::pronoun | w::relative | w::modal))
            return no_verb(i);
        if (s_.token(i).kind != TokenKind::word) return at(i, Opening::unsure);
        return open_word(i);
    }

    bool starts_title(std::size_t i) const {
        if (!s_.token(i).title) return false;
        return s_.token(i).kind == TokenKind::quote || s_.forms(i).none() ||
               s_.token(i + 1).title; // one verb in italics is a verb
    }

    bool is_preposition(std::size_t i) const {
        return s_.is(i, w::preposition) && !s_.forms(i).past &&
               !(s_.forms(i).present() && s_.starts_object(i + 1) &&
                 s_.is_word(i, {"near", "down", "out", "up", "round"}));
    }

    // A noun phrase; a sentence if its verb surely follows.
    OpeningReading no_verb(std::size_t i) {
        OpeningReading reading = at(i, Opening::no_verb);
        for (std::size_t k = i; k < s_.size() && k < i + 8; ++k) {
            if (s_.ends_phrase(k) || s_.is(k, w::relative)) break;
            const bool month = s_.is_word(k, {"may"}) && is_capital(s_.token(k));
            if (k == i || month || !s_.is(k, w::be | w::modal)) continue;
            reading.sentence = !s_.is_word(k, {"being", "been", "be"});
            reading.last = k;
            break;
        }
        if (reading.sentence) return reading;
        if (const auto verb = past_after_subject(i)) {
            reading.sentence = true;
            reading.last = *verb;
        }
        return reading;
    }

    // `The team won 5 games`, not `The team coached by` nor `Reports filed weekly`.
    std::optional<std::size_t> past_after_subject(std::size_t i) const {
        if (!s_.is(i, w::determiner | w::possessive)) return std::nullopt;
        for (std::size_t k = i + 1; k < i + 5 && !s_.ends_phrase(k); ++k) {
            if (s_.is(k, w::preposition | w::relative | w::conjunction)) return std::nullopt;
            const VerbForms& forms = s_.forms(k);
            if (k == i + 1 || !forms.past || forms.present()) continue;
            const bool finite = s_.starts_object(k + 1) || !forms.participle;
            return finite ? std::optional(k) : std::nullopt;
        }
        return std::nullopt;
    }

    OpeningReading person(std::size_t i) {
        std::size_t verb = s_.past_adverbs(i + 1);
        OpeningReading reading = at(i, Opening::person);
        if (const auto weak = weak_phrase(s_, verb)) {
            reading = weak_reading(*weak);
            reading.sentence = true;
            return reading;
        }
        reading.sentence = true;
        reading.verb = reading.last = verb;
        if (s_.is(verb, w::be) || s_.is_word(verb, {"got", "get"})) {
            const OpeningReading inner = s_.is(verb, w::be) ? be(verb) : got(verb);
            reading.tense = inner.tense;
            reading.passive = inner.passive;
            reading.verb = inner.verb;
            reading.last = inner.last;
        } else if (s_.word(i).find('\'') != std::string::npos) { // I've led, we're building
            const bool present = s_.is_word(i, {"i'm", "we're"});
            reading.tense = present ? VerbTense::present : VerbTense::none;
            reading.verb = i;
        } else if (const VerbForms& forms = s_.forms(verb);
                   !forms.none() && !s_.is(verb, w::have)) {
            reading.tense = finite_tense(forms);
        }
        return reading;
    }

    static VerbTense finite_tense(const VerbForms& forms) {
        if (forms.either_tense()) return VerbTense::either;
        if (forms.past) return VerbTense::past;
        return forms.present() ? VerbTense::present : VerbTense::none;
    }

    OpeningReading be(std::size_t i) {
        const std::size_t next = s_.past_adverbs(i + 1);
        OpeningReading reading = at(i, Opening::auxiliary);
        if (s_.is(i, w::past_be))
            reading.tense = VerbTense::past;
        else if (s_.is(i, w::present_be))
            reading.tense = VerbTense::present;
        const VerbForms& forms = s_.forms(next);
        const bool after = s_.is(next, w::determiner | w::possessive | w::preposition | w::number);
        reading.last = next;
        const bool unknown_verb = // Was precepted by
            forms.none() && s_.word(next).ends_with("ed") && s_.is_word(next + 1, {"by"});
        if (unknown_verb || (forms.participle && !after && !is_adjective_participle(s_, next)))
            reading.passive = true;
        else if (!forms.gerund || after)
            reading.kind = Opening::no_verb;
        if (reading.kind == Opening::no_verb) reading.last = i;
        return reading;
    }

    OpeningReading have(std::size_t i) {
        const std::size_t next = s_.past_adverbs(i + 1);
        const bool perfect =
            s_.is_word(next, {"been"}) || (s_.forms(next).participle && !s_.starts_object(next));
        OpeningReading reading = at(i, perfect ? Opening::auxiliary : Opening::no_verb);
        if (perfect) {
            reading.last = next;
            reading.passive =
                s_.is_word(next, {"been"}) && s_.forms(s_.past_adverbs(next + 1)).participle;
        } else {
            reading.tense = s_.is_word(i, {"had"})      ? VerbTense::past
                            : s_.is_word(i, {"having"}) ? VerbTense::neither
                                                        : VerbTense::present;
        }
        return reading;
    }

    OpeningReading infinitive(std::size_t i) {
        const std::size_t verb = s_.past_adverbs(i + 1);
        if (!s_.forms(verb).base && !s_.is_word(verb, {"be"})) return no_verb(i);
        OpeningReading reading = at(i, Opening::infinitive, VerbTense::neither);
        reading.last = verb;
        return reading;
    }

    OpeningReading got(std::size_t i) {
        const std::size_t next = s_.past_adverbs(i + 1);
        const bool passive =
            s_.forms(next).participle && !s_.starts_object(next) &&
            !s_.is_word(next, {"used", "started", "involved", "set", "hit", "read", "cast"});
        const bool past = s_.is_word(i, {"got"});
        OpeningReading reading = at(i,
                                    passive ? Opening::auxiliary
                                    : past  ? Opening::past_verb
                                            : Opening::present_verb,
                                    past ? VerbTense::past : VerbTense::present);
        reading.passive = passive;
        if (passive) reading.last = next;
        return reading;
    }

    OpeningReading after_adverb(std::size_t i) {
        std::size_t next = i;
        while (s_.is(next, w::adverb) && !s_.forms(next).present()) {
            next = next + 1;
            const bool joined =
                (s_.token(next).kind == TokenKind::comma || s_.is(next, w::conjunction)) &&
                s_.is(next + 1, w::adverb);
            if (joined) ++next;
        }
        if (const auto weak = weak_phrase(s_, next)) return weak_reading(*weak);
        const bool of_degree =
            s_.is_word(next - 1, {"highly", "extremely", "very", "well", "quite"});
        const VerbForms& forms = s_.forms(next);
        if (of_degree && forms.participle) return no_verb(i);
        const bool of_extent = // Chiefly weekend shifts
            s_.is(next - 1, List::adverbs_of_extent);
        if (of_extent && forms.present() && read_homograph(s_, next) == Homograph::noun)
            return no_verb(i);
        const bool manner =
            s_.word(next - 1).ends_with("ly") || s_.is_word(next - 1, {"also", "often", "always"});
        if (manner && forms.present() && !s_.is_word(next + 1, {"of"})) return verb_reading(next);
        if (s_.is(next, w::be | w::have) || s_.forms(next).past || s_.forms(next).gerund ||
            forms.present())
            return read_at(next);
        return no_verb(i);
    }

    // `Weekly visits to`, but `Daily restock shelves`.
    OpeningReading after_period(std::size_t i) {
        if (s_.forms(i + 1).past) return read_at(i + 1);
        const VerbForms& forms = s_.forms(i + 1);
        const bool verb =
            forms.present() && (s_.starts_object(i + 2) || (forms.base && !forms.verb->noun));
        return verb ? verb_reading(i + 1) : no_verb(i);
    }

    OpeningReading verb_reading(std::size_t i) {
        const VerbForms& forms = s_.forms(i);
        if (forms.either_tense()) return at(i, Opening::either_tense, VerbTense::either);
        if (forms.past) return at(i, Opening::past_verb, VerbTense::past);
        return at(i, Opening::present_verb, VerbTense::present);
    }

    bool starts_with_number(std::size_t i) const { // Two-time captain
        const std::string& word = s_.word(i);
        const std::size_t hyphen = word.find('-');
        return hyphen != word.npos &&
               (word_classes(word.substr(0, hyphen), s_.lexicon()) & w::number) != 0;
    }

    // `Copy edited 90 stories`; but `Team built 3 rigs` may have a subject.
    std::optional<OpeningReading> two_word_verb(std::size_t i) const {
        const VerbForms& forms = s_.forms(i + 1);
        const bool verb = s_.is(i, List::hyphen_prefixes) && forms.past && !forms.present() &&
                          (s_.starts_object(i + 2) || is_plural_noun(s_, i + 2));
        if (!verb) return std::nullopt;
        const bool apart = s_.forms(i).base && !s_.starts_object(i + 2); // Price donated goods
        if (apart || s_.is_word(i, {"team", "user", "window"})) return std::nullopt;
        OpeningReading reading = at(i, Opening::past_verb, VerbTense::past);
        reading.verb = reading.last = i + 1;
        return reading;
    }

    OpeningReading open_word(std::size_t i) {
        const VerbForms& forms = s_.forms(i);
        if (const auto verb = two_word_verb(i)) return *verb;
        if (starts_with_number(i)) return no_verb(i);
        if (is_adjective_participle(s_, i)) return no_verb(i);
        if (forms.none() || is_acronym(i)) return unknown(i);
        if (forms.participle && is_acted_on(s_, i)) {
            OpeningReading reading = at(i, Opening::participle);
            reading.passive = true;
            reading.last = i + 1;
            return reading;
        }
        if (forms.participle && is_recognition(s_, i) && is_recognized(i))
            return at(i, Opening::participle);
        if (forms.only_participle()) return only_participle(i);
        if (forms.past && !forms.present()) return past(i);
        if (forms.gerund && !forms.present()) return gerund(i);
        return present(i);
    }

    // GIS maps; but all may be in capitals, and QA and MC are verbs of the trade
    bool is_acronym(std::size_t i) const {
        return is_all_capitals(s_.token(i)) && !is_all_capitals(s_.token(i + 1)) &&
               !s_.word(i).starts_with("qa") && !s_.is_word(i, {"dj", "mc"});
    }

    // `Selected from 90`, not `Selected 12 speakers`.
    bool is_recognized(std::size_t i) const {
        const std::size_t next = i + 1;
        if (s_.is_word(i, {"chosen"})) return true;
        if (s_.is(next, w::preposition) || s_.ends_phrase(next)) return true;
        if (s_.is(i, List::always_recognitions)) return true;
        return !s_.starts_object(next) && !is_plural_noun(s_, next) && !s_.is(next, w::adverb);
    }

    OpeningReading only_participle(std::size_t i) {
        if (s_.is_word(i, {"known", "proven", "driven", "worn"}) && !s_.starts_object(i + 1))
            return no_verb(i);
        return opens_noun_phrase(i) ? no_verb(i) : at(i, Opening::unsure);
    }

    // `Broken crab pots hauled and repaired`: what was done to them follows.
    bool opens_noun_phrase(std::size_t i) const {
        for (std::size_t k = i + 1; !s_.ends_phrase(k) && s_.classes(k) == 0; ++k)
            if (k > i + 1 && s_.forms(k).participle && !s_.forms(k).present()) return true;
        return false;
    }

    // `Organized and punctual`: like is joined with like, so the participle is an adjective.
    bool is_joined_to_adjective(std::size_t i) const {
        const std::size_t other = s_.past_adverbs(i + 2);
        return s_.forms(i).participle && s_.is(i + 1, w::conjunction) &&
               s_.token(other).kind == TokenKind::word && s_.classes(other) == 0 &&
               s_.forms(other).none() && !s_.word(other).ends_with("ed") &&
               !is_all_capitals(s_.token(other));
    }

    // What falls has no object.
    bool fells_trees(std::size_t i) const {
        const std::size_t next = i + 1;
        const bool amount = s_.is_number(next) && (s_.is(i + 2, List::times) ||
                                                   s_.is_word(i + 2, {"feet", "places", "points"}));
        const bool short_of = s_.is(next, w::preposition | w::adverb | w::particle) ||
                              s_.is_word(next, {"short", "ill", "asleep"});
        return s_.is_word(i, {"fell", "bore"}) && !amount && !short_of;
    }

    // A past that is the base of another verb, or a noun: Fell and buck trees, Ground crew lead.
    OpeningReading past(std::size_t i) {
        const std::size_t next = i + 1;
        if (is_joined_to_adjective(i)) return no_verb(i);
        if (!s_.forms(i).base_of_other) return verb_reading(i);
        const bool joined_to_base = s_.is(next, w::conjunction) && s_.forms(next + 1).base;
        if (joined_to_base || fells_trees(i))
            return at(i, Opening::either_tense, VerbTense::either);
        const bool noun =
            is_noun_compound(s_, i) || (!s_.ends_phrase(next) && !s_.starts_object(next) &&
                                        is_agent_noun(s_, head_noun(s_, next)));
        if (noun) return no_verb(i);
        const std::size_t head = head_noun(s_, next);
        const bool bare = s_.token(next).kind == TokenKind::word && s_.classes(next) == 0;
        const bool deed = is_deed_noun(s_, head) || s_.forms(head).third;
        // Wound dressing changes, Found objects
        return bare && !s_.starts_object(next) && deed ? at(i, Opening::unsure) : verb_reading(i);
    }

    OpeningReading gerund(std::size_t i) {
        switch (read_gerund(s_, i)) {
        case Homograph::verb:
            return at(i, Opening::gerund, VerbTense::neither);
        case Homograph::noun:
            return no_verb(i);
        case Homograph::unsure:
            break;
        }
        return at(i, Opening::unsure);
    }

    // `Cut shrink 12%`, `Cut spend from 9 to 4`: by how much a noun of one word was changed.
    bool changes_amount(std::size_t i) const {
        const bool joined = s_.is_word(i + 2, {"by", "from"});
        const std::size_t amount = joined ? i + 3 : i + 2;
        if (s_.token(i + 1).kind != TokenKind::word || !s_.is_figure(amount)) return false;
        return s_.word(amount).ends_with('%') || s_.is_word(amount + 1, {"to"});
    }

    OpeningReading present(std::size_t i) {
        const VerbForms& forms = s_.forms(i);
        if (forms.either_tense() && changes_amount(i)) return verb_reading(i);
        switch (read_homograph(s_, i)) {
        case Homograph::verb:
            return verb_reading(i);
        case Homograph::noun:
            return no_verb(i);
        case Homograph::unsure:
            break;
        }
        return at(i, forms.either_tense() ? Opening::either_tense : Opening::unsure,
                  forms.either_tense() ? VerbTense::either : VerbTense::none);
    }

    // `Condition-check, photograph, and rehouse`: what may be a verb, right behind the joiner.
    bool is_joined_to_verb_alone(std::size_t i) const {
        const bool joins = s_.token(i + 1).kind == TokenKind::comma || s_.is(i + 1, w::conjunction);
        const VerbForms& forms = s_.forms(i + 2);
        const bool on = s_.token(i + 3).kind == TokenKind::comma || s_.is(i + 3, w::conjunction) ||
                        s_.starts_object(i + 3) || s_.is(i + 3, List::stuff) ||
                        is_plural_noun(s_, head_noun(s_, i + 3));
        return joins && forms.base && on && !s_.is_word(i + 3, {"of", "for"});
    }

    // `Mic 18 singers`, `Salt-cure 90 hams`; but `Microsoft 365 rollout`, `Part-time 3 days a
    // week`.
    bool may_be_unknown_verb(std::size_t i) const {
        const std::size_t next = i + 1, hyphen = s_.word(i).rfind('-');
        const std::size_t noun = head_noun(s_, s_.past_adverbs(next) + 1);
        if (s_.is_number(next)) return is_plural_noun(s_, noun) && !s_.is(noun, List::times);
        const bool verb =
            hyphen != std::string::npos &&
            verb_forms(std::string_view(s_.word(i)).substr(hyphen + 1), s_.lexicon()).base;
        if (verb && is_joined_to_verb_alone(i)) return true;
        return verb && !s_.ends_phrase(next) && s_.classes(next) == 0 &&
               is_plural_noun(s_, head_noun(s_, next));
    }

    // No form of a verb that is known. A word made like one may be a verb all the same.
    OpeningReading unknown(std::size_t i) {
        const std::string& word = s_.word(i);
        const std::size_t next = i + 1;
        if (may_be_unknown_verb(i)) return at(i, Opening::unsure);
        const bool open = word.find('-') == word.npos || s_.starts_object(next);
        const bool noun = s_.is(i, List::never_gerunds) ||
                          (word.ends_with("ing") && s_.is(next, w::preposition)); // Bookkeeping for
        for (const std::string_view ending : {"ed", "ing", "ize", "ise", "ify", "'d"})
            if (word.ends_with(ending) && open && !noun) return at(i, Opening::unsure);
        // a noun has no object: Prep the line would be a verb that is not known
        const bool object = s_.is(i + 1, w::determiner | w::possessive) && !is_agent_noun(s_, i);
        return object && !is_all_capitals(s_.token(i)) ? at(i, Opening::unsure) : no_verb(i);
    }

    const Sentence& s_;
};

}

OpeningReading read_opening(const Sentence& sentence) {
    return Opener(sentence).read();
}

}

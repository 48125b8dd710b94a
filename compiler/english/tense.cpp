// The tense of the opening verb and of the verbs joined to it by a comma or "and".
#include "compiler/english/compounds.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/reading.hpp"
#include "compiler/english/verb_odds.hpp"

namespace quoin::english {
namespace {

namespace w = word_class;
using Opening = BulletReading::Opening;

class Judge {
public:
    Judge(const Sentence& sentence, const OpeningReading& opening, BulletReading& reading)
        : s_(sentence), opening_(opening), reading_(reading) {}

    void run() {
        note(opening_.verb, opening_.tense);
        if (!is_led_by_verb()) return judge_subject();
        bare_verb_follows_ = takes_clause(s_.forms(opening_.verb)) && // but Watched for fire
                             !s_.is(opening_.verb + 1, w::preposition);
        last_verb_ = opening_.last;
        infinitive_ = s_.is_word(opening_.last, {"to"}); // Hired to run
        for (std::size_t i = opening_.last + 1; i < s_.size(); ++i) {
            if (s_.is(i, w::relative) && !s_.is_number(i + 1)) return;
            if (s_.is_word(i, {"to"}) && s_.forms(i + 1).base) infinitive_ = true;
            if (s_.token(i).depth > 0 || s_.token(i).title) continue;
            if (s_.token(i).kind == TokenKind::stop) return; // a clause of its own
            if (joins(i)) judge_joined(i);
        }
    }

private:
    bool is_led_by_verb() const {
        switch (opening_.kind) {
        case Opening::past_verb:
        case Opening::present_verb:
        case Opening::either_tense:
        case Opening::gerund:
        case Opening::auxiliary:
        case Opening::weak:
        case Opening::person:
        case Opening::participle:
            return true;
        default:
            return false;
        }
    }

    // `Logs are kept daily`: the verb of a subject of its own is the main verb all the same.
    void judge_subject() {
        if (opening_.kind != Opening::no_verb && opening_.kind != Opening::unsure) return;
        const auto be = passive_of_subject(s_, opening_.first);
        // in the past it may be told once more of work that goes on, and is passive before all
        if (be && *be != opening_.verb && s_.is(*be, w::present_be)) note(*be, be_tense(*be));
    }

    bool joins(std::size_t i) const {
        const TokenKind kind = s_.token(i).kind;
        return kind == TokenKind::comma || s_.is(i, w::conjunction);
    }

    void note(std::size_t i, VerbTense tense) {
        const Extent extent = s_.token(i).extent;
        if (tense == VerbTense::present || tense == VerbTense::neither)
            reading_.wrong_for_ended.push_back(extent);
        if (tense == VerbTense::past || tense == VerbTense::neither)
            reading_.wrong_for_current.push_back(extent);
    }

    void judge_joined(std::size_t joiner) {
        std::size_t i = joiner + 1;
        if (joins(i)) return; // the last of several joiners is the one that counts
        const bool adjacent = last_verb_ + 1 == joiner || is_joined_to_last(joiner);
        const bool since = s_.is_word(i, {"now"}) && !s_.is(joiner, w::conjunction);
        i = s_.past_adverbs(i);
        if (since && s_.forms(i).participle) return; // stories, now shared with 2 others
        if (s_.is_word(i, {"ages", "age", "aged"}) && s_.is_number(i + 1)) return; // ages 4 to 11
        if (is_multiple(i, joiner)) return;
        const VerbTense tense = s_.is(i, w::be) ? be_tense(i) : tense_of(i, joiner, adjacent);
        const bool may_be_verb = tense != VerbTense::none || is_past_before_word(i);
        if (may_be_verb) ++joined_verbs_;
        lists_things_ = !may_be_verb && s_.token(joiner).kind == TokenKind::comma &&
                        is_content_word(i) && !s_.forms(i).gerund;
        if (tense == VerbTense::none) return;
        note(i, tense);
        note_person(i);
        last_verb_ = i;
    }

    // `Prepare buffers and runs 30 titrations`: one subject, two persons.
    void note_person(std::size_t i) {
        const VerbForms& first = s_.forms(opening_.verb);
        const VerbForms& forms = s_.forms(i);
        if (opening_.kind != Opening::present_verb || first.either_tense() || s_.is(i, w::be))
            return;
        if (forms.verb && forms.verb->noun && s_.token(i - 1).kind == TokenKind::comma)
            return; // 5 sections, levels 1 to 4
        if (first.third && !first.base && forms.base && !forms.past && s_.starts_object(i + 1))
            reading_.disagreements.push_back({s_.token(opening_.verb).extent, s_.token(i).extent,
                                              third_person(forms.verb->base), true});
        if (forms.third && !forms.base && first.base && !first.third)
            reading_.disagreements.push_back({s_.token(opening_.verb).extent, s_.token(i).extent,
                                              std::string(forms.verb->base), true});
    }

    // `Drew 48 members, double the usual turnout`: an amount set beside another.
    bool is_multiple(std::size_t i, std::size_t joiner) const {
        return s_.token(joiner).kind == TokenKind::comma &&
               s_.is_word(i, {"double", "triple", "quadruple", "half"}) &&
               s_.is(i + 1, w::determiner | w::possessive);
    }

    // Write, test, and ship; Set up and take down: nothing but joiners and particles between.
    bool is_joined_to_last(std::size_t joiner) const {
        for (std::size_t i = last_verb_ + 1; i < joiner; ++i)
            if (!joins(i) && !s_.is(i, w::particle)) return false;
        return true;
    }

    VerbTense be_tense(std::size_t i) const {
        if (!s_.is_participle(i + 1) || s_.is(i + 1, w::determiner)) return VerbTense::none;
        return s_.is(i, w::past_be)      ? VerbTense::past
               : s_.is(i, w::present_be) ? VerbTense::present
                                         : VerbTense::none;
    }

    // Where nothing but a verb can stand; a list of things may hold words that look like verbs.
    VerbTense tense_of(std::size_t i, std::size_t joiner, bool adjacent) const {
        const VerbForms& forms = s_.forms(i);
        if (forms.none() || forms.either_tense() || s_.token(i).title) return VerbTense::none;
        if (s_.token(i).depth > 0 || is_capital(s_.token(i))) return VerbTense::none; // R, and GIS
        if (closes_with_gerund(i, joiner)) return VerbTense::neither;
        if (forms.past && !forms.present())
            return adjacent || is_past_verb(i) ? VerbTense::past : VerbTense::none;
        if (!forms.present() || bare_verb_follows_ || infinitive_) return VerbTense::none;
        if (is_often_adjective(*forms.verb) && is_span_of_time(i + 1)) // full most evenings
            return VerbTense::none;
        if (forms.third && is_span_of_time(i + 1) && !adjacent) // 90 posters and programs a term
            return VerbTense::none;
        if (lists_things_ && closes_list(joiner)) return VerbTense::none;
        if (forms.verb->noun && is_thing_in_list(i, joiner)) return VerbTense::none;
        if (forms.verb->noun && is_beside_adjective(joiner)) return VerbTense::none;
        if (forms.base && forms.verb->noun && !adjacent && s_.is(i + 1, List::counted))
            return VerbTense::none; // drove forklift and reach truck
        const bool verb = (adjacent && s_.is(joiner, w::conjunction)) || is_present_verb(i) ||
                          closes_series(i, joiner) || is_between_pasts(i, adjacent) ||
                          (adjacent && mostly_verb(*forms.verb)) || is_likely_verb(i, joiner);
        return verb ? VerbTense::present : VerbTense::none;
    }

    // `primer, brushes, and finish coats`: like is joined with like, and the one before is a thing.
    bool closes_list(std::size_t joiner) const {
        return s_.is(joiner, w::conjunction) && s_.token(joiner - 1).kind == TokenKind::comma;
    }

    // `with probing, wear offsets, and a sheet`: the last of what the preposition has is a thing.
    bool is_thing_in_list(std::size_t i, std::size_t joiner) const {
        constexpr std::size_t longest = 6; // words of an item
        if (s_.token(joiner).kind != TokenKind::comma) return false;
        bool governed = false;
        for (std::size_t k = last_verb_ + 1; k < joiner; ++k)
            governed = governed || s_.is(k, w::preposition);
        for (std::size_t k = i + 1; k < i + longest && k + 1 < s_.size(); ++k)
            if (closes_list(k))
                return (governed && s_.is(k + 1, w::determiner | w::possessive)) ||
                       is_no_verb(k + 1);
        return false;
    }

    // `county council, ferry cuts, and wildfire smoke`: what closes the list opens with no verb.
    bool is_no_verb(std::size_t i) const {
        return is_content_word(i) && s_.forms(i).none() && !s_.word(i).ends_with("ed");
    }

    // `with sit-down and reach trucks`
    bool is_beside_adjective(std::size_t joiner) const {
        return s_.is(joiner, w::conjunction) && joiner > 1 &&
               s_.word(joiner - 1).find('-') != std::string::npos && s_.forms(joiner - 1).none() &&
               s_.is(joiner - 2, w::preposition);
    }

    bool is_likely_verb(std::size_t i, std::size_t joiner) const {
        if (!s_.is(joiner, w::conjunction) || !is_content_word(i + 1)) return false;
        return joined_verb_odds(s_, {i, joiner, last_verb_}) > 0;
    }

    // Not an adjective (baked goods), nor what was done to the noun before it.
    bool is_past_verb(std::size_t i) const {
        const std::size_t next = i + 1;
        const VerbForms& forms = s_.forms(i);
        if (!forms.participle && !forms.base_of_other) return true; // wrote
        if (is_span_of_time(next)) return false;                    // sold each May
        const bool adjective_follows = s_.is_participle(next) && is_plural_noun(s_, next + 1);
        const bool thing = is_plural_noun(s_, next) || s_.is(next, List::stuff);
        if (thing && !is_adjective_in_ed(s_.word(i))) return true; // answered phones
        return s_.starts_object(next) || adjective_follows || preposition_after_past(i) ||
               (is_seldom_adjective(i) && is_content_word(next));
    }

    // Irregular participles: held office hours, taught map skills; but lost pets.
    bool is_seldom_adjective(std::size_t i) const {
        return !s_.word(i).ends_with("ed") && !s_.is(i, List::irregular_adjectives);
    }

    // `and assemble kits`, `and files liens`; not `and report formats`.
    bool is_present_verb(std::size_t i) const {
        const std::size_t next = i + 1;
        const VerbForms& forms = s_.forms(i);
        const bool over = forms.verb->noun && s_.is_word(next, {"over"}); // squash over 8 weeks
        if (s_.starts_object(next) && !is_span_of_time(next) && !over) return true;
        if (!forms.verb->noun && !forms.verb->adjective) return true;
        const bool particle = s_.is_word(next, {"up", "out", "down", "off", "away", "back"});
        const bool open = forms.third || forms.verb->verb_count > forms.verb->noun_count;
        if (open && particle) return true; // locks up, hand out
        if (!is_content_word(next) && !particle) return false;
        if (forms.third) { // a plural seldom stands before another, or before grab bars
            const bool things = is_plural_noun(s_, next) || is_plural_noun(s_, next + 1);
            return things ? !s_.is(i, List::plural_modifiers) : mostly_verb(*forms.verb);
        }
        // and swim classes
        if (s_.is(i, List::often_first_part)) return false;
        const bool thing = is_plural_noun(s_, next) || s_.is(next, List::stuff);
        if (thing && is_seldom_name(i)) return true;
        if (forms.verb->adjective) return false;
        return forms.verb->verb_count > 20 * forms.verb->noun_count ||
               (thing && forms.verb->verb_count >= 8 * forms.verb->noun_count + 8);
    }

    // `check welds`, `grade homework`; but `paint brushes`, `answer keys`.
    bool is_seldom_name(std::size_t i) const {
        return s_.is(i, List::seldom_names) && !is_noun_compound(s_, i);
    }

    // `answered phones`: most likely a verb, but not surely.
    bool is_past_before_word(std::size_t i) const {
        return s_.forms(i).past && is_content_word(i + 1);
    }

    // `Irrigated, weed, and thinned carrots`
    bool is_between_pasts(std::size_t i, bool adjacent) const {
        std::size_t k = i + 1;
        while (joins(k))
            ++k;
        const VerbForms& after = s_.forms(k);
        return adjacent && k > i + 1 && after.past && !after.present();
    }

    // `Greeted guests, answered phones, and sort mail`: after a comma too "and" joins verbs.
    bool closes_series(std::size_t i, std::size_t joiner) const {
        return joined_verbs_ > 0 && s_.is(joiner, w::conjunction) &&
               s_.token(joiner - 1).kind == TokenKind::comma && is_content_word(i + 1);
    }

    // `Stocked shelves, opened the store, and greeting customers`; not `and marketing`.
    bool closes_with_gerund(std::size_t i, std::size_t joiner) const {
        const bool things = s_.is(i, List::activities) || s_.is(i, List::trades) ||
                            s_.is(i, List::gerunds_of_things);
        return s_.forms(i).gerund && !things && opening_.kind == Opening::past_verb &&
               joined_verbs_ > 0 && closes_list(joiner) &&
               (is_plural_noun(s_, i + 1) || s_.starts_object(i + 1));
    }

    bool is_content_word(std::size_t i) const {
        return s_.token(i).kind == TokenKind::word && s_.classes(i) == 0;
    }

    // Their complements have verbs without tense, or of their own: Let guests look and buy.
    bool takes_clause(const VerbForms& forms) const {
        return !forms.none() && s_.lexicon().has(forms.verb->base, List::with_clause);
    }

    bool is_span_of_time(std::size_t i) const {
        if (s_.is_word(i,
                       {"a", "an", "per", "each", "every", "this", "that", "last", "all", "most"}))
            return s_.is(i + 1, List::times) ||
                   is_in_either_number(s_.word(i + 1), List::turns, s_.lexicon());
        return s_.is_number(i) && (s_.is(i + 1, List::times) || s_.ends_phrase(i + 1));
    }

    // `Greet guests and responded to questions`: no adjective stands before a preposition, unless
    // it goes with a participle before it (`forms filled in and filed by hand`).
    bool preposition_after_past(std::size_t i) const {
        if (!s_.is(i + 1, w::preposition) || s_.is_word(i + 1, {"by"})) return false;
        for (std::size_t k = last_verb_ + 1; k < i; ++k)
            if (s_.is_participle(k)) return false;
        return true;
    }

    const Sentence& s_;
    const OpeningReading& opening_;
    BulletReading& reading_;
    std::size_t last_verb_ = 0;
    std::size_t joined_verbs_ = 0;
    bool bare_verb_follows_ = false; // Helped count and sort
    bool infinitive_ = false;        // to plan and run
    bool lists_things_ = false;      // what was joined last is no verb
};

}

void judge_tense(const Sentence& sentence, const OpeningReading& opening, BulletReading& reading) {
    Judge(sentence, opening, reading).run();
}

}

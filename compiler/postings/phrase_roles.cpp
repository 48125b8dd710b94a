#include "compiler/postings/phrase_roles.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/verb_odds.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrase_words.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>

namespace quoin::postings {

namespace {

namespace wc = english::word_class;
using english::Sentence;
using english::TokenKind;

class RoleReader {
public:
    RoleReader(const Sentence& sentence, Opens opens)
        : opens_(opens), sentence_(sentence), roles_(sentence.size()) {}

    std::vector<Role> read() {
        for (std::size_t i = 0; i < sentence_.size(); ++i)
            roles_[i] = role_of(i);
        return std::move(roles_);
    }

private:
    bool is_wordy(std::size_t i) const { return postings::is_wordy(sentence_, i); }
    bool opens_clause(std::size_t i) const { return postings::opens_clause(sentence_, i); }

    bool breaks(std::size_t i) const {
        constexpr std::uint32_t grammar =
            wc::determiner | wc::possessive | wc::preposition | wc::conjunction | wc::relative |
            wc::pronoun | wc::be | wc::have | wc::modal | wc::adverb | wc::number | wc::negation;
        if (!is_wordy(i) || is_contraction(sentence_.word(i)) || is_address(sentence_.word(i)) ||
            said_of(sentence_.word(i), lines_of(List::breaking_words)))
            return true;
        if (is_roman(i)) return false;
        const bool dated =
            sentence_.is_word(i, {"march", "may"}) && i > 0 && is_capital(sentence_.token(i));
        if (dated) return true;
        if (sentence_.is(i, grammar) || is_time_name(sentence_.word(i)) || is_loose_particle(i) ||
            counts_in_words(sentence_.word(i)) || is_grade(sentence_.word(i)))
            return true;
        return sentence_.is_figure(i) && !is_numeral_of_name(i) &&
               counts_something(sentence_.word(i));
    }

    // ISO 9001, Level 1, Level I, Part 107; Windows 11, but not: Summer 2026.
    bool is_numeral_of_name(std::size_t i) const {
        if (i == 0 || !is_wordy(i - 1)) return false;
        constexpr std::size_t longest = 4;
        const std::string& figures = sentence_.word(i);
        const bool year =
            figures.size() == longest && (figures.starts_with("19") || figures.starts_with("20"));
        if (all_figures(figures) && figures.size() <= longest && !year &&
            is_capital(sentence_.token(i - 1)) && !opens_clause(i - 1) &&
            roles_[i - 1] == Role::inside)
            return true;
        const bool named = is_capital(sentence_.token(i - 1)) &&
                           sentence_.is_word(i - 1, {"class", "part", "type", "title", "category",
                                                     "division", "form", "section", "group"});
        return named || is_all_capitals(sentence_.token(i - 1)) ||
               sentence_.is_word(i - 1, {"level", "phase", "tier"});
    }

    // Level I, Technician II
    bool is_roman(std::size_t i) const {
        constexpr std::string_view numerals[] = {"I", "II", "III", "IV"};
        return i > 0 && is_one_of(sentence_.token(i).text, numerals) && is_wordy(i - 1) &&
               (sentence_.word(i) != "i" ||
                sentence_.is_word(i - 1, {"level", "class", "type", "category", "tier", "phase"}));
    }

    // handling down anything, strip it down to the wood
    bool is_loose_particle(std::size_t i) const {
        constexpr std::uint32_t after =
            wc::determiner | wc::possessive | wc::preposition | wc::pronoun | wc::conjunction;
        return sentence_.is(i, wc::particle) &&
               (!is_wordy(i + 1) || sentence_.is(i + 1, after) ||
                sentence_.is_word(i + 1, {"anything", "everything", "something"}));
    }

    // After `to`, a modal, `you`, or joined with a verb before.
    bool expects_verb(std::size_t i) const {
        if (i == 0) return false;
        if (sentence_.is_word(i - 1, {"to", "you", "we", "will", "please", "not", "then", "you'll",
                                      "you'd", "we'll", "we'd"}))
            return true;
        if (sentence_.is(i - 1, wc::modal)) return true;
        if (!last_verb_) return false;
        if (sentence_.token(i - 1).kind == TokenKind::comma)
            return sentence_.starts_object(i + 1) || !sentence_.ends_phrase(i + 1);
        return sentence_.is_word(i - 1, {"and", "or", "&"}) &&
               (sentence_.starts_object(i + 1) ||
                joined_verb_odds(sentence_, {i, i - 1, *last_verb_}) > 0);
    }

    // Joined with a verb in the third person, and followed by what may be its object.
    bool is_like_last_verb(std::size_t i) const {
        return last_verb_ && i > 0 && sentence_.forms(*last_verb_).third &&
               !sentence_.ends_phrase(i + 1) && !sentence_.is(i + 1, wc::preposition) &&
               (sentence_.is_word(i - 1, {"and", "or", "&"}) ||
                sentence_.token(i - 1).kind == TokenKind::comma);
    }

    // With an object: Forecasting and proofreading are things, and so is a rigging ticket that is
    // asked for.
    bool is_deed(std::size_t i, bool object) const {
        if (opens_ == Opens::with_thing && opens_clause(i) && !object) return false;
        return !sentence_.ends_phrase(i + 1) && !sentence_.is(i + 1, wc::conjunction) &&
               !sentence_.is_word(i + 1, {"of"}) && !english::is_noun_compound(sentence_, i);
    }

    bool is_general_deed(std::size_t i) const {
        return opens_ == Opens::with_deed && opens_clause(i) &&
               is_one_of(sentence_.forms(i).verb->base, List::general_verbs);
    }

    bool is_perfect(std::size_t i) const {
        return sentence_.is(i, wc::have) ||
               sentence_.is_word(i, {"you've", "we've", "i've", "they've"});
    }

    // The aide; not: of resident rights, safe patient transfers.
    bool is_subject(std::size_t i) const {
        return opens_clause(i) || sentence_.is(i - 1, wc::determiner | wc::possessive) ||
               is_capital(sentence_.token(i));
    }

    // The coordinator recruits, welcomes and thanks volunteers.
    bool is_opening_subject(std::size_t i) const {
        return i > 0 && opens_clause(i - 1) && sentence_.is_word(i - 1, {"the"}) &&
               sentence_.token(i + 2).kind == TokenKind::comma;
    }

    // Adult patients recovering from surgery, experience coordinating people: what they do.
    bool follows_doer(std::size_t i) const {
        if (i == 0 || roles_[i - 1] != Role::inside || sentence_.ends_phrase(i + 1)) return false;
        const std::string& before = sentence_.word(i - 1);
        return before == "experience" ||
               (before.ends_with('s') && sentence_.is(i + 1, wc::preposition) &&
                english::is_person_noun(sentence_.word(i - 1).substr(0, before.size() - 1),
                                        sentence_.lexicon()));
    }

    // Write case notes the same day: a noun after one, of a verb before them.
    bool ends_object(std::size_t i) const {
        return i > 1 && last_verb_ && roles_[i - 1] == Role::inside && *last_verb_ + 4 > i;
    }

    // Interpreters receive consideration: what is no noun parts them.
    bool is_within_nouns(std::size_t i) const {
        const english::VerbForms& forms = sentence_.forms(i);
        return i > 0 && forms.base && !forms.past && !forms.verb->noun && !forms.verb->adjective &&
               roles_[i - 1] == Role::inside && is_wordy(i + 1) && !opens_clause(i);
    }

    // And instruct patients
    bool is_only_a_verb(std::size_t i) const {
        const english::VerbForms& forms = sentence_.forms(i);
        return i > 0 && forms.base && !forms.verb->noun && !forms.verb->adjective &&
               sentence_.is_word(i - 1, {"and", "or", "then"}) && is_wordy(i + 1) &&
               !sentence_.is(i + 1, wc::preposition);
    }

    bool is_verb(std::size_t i) const {
        const english::VerbForms& forms = sentence_.forms(i);
        if (i > 0 && roles_[i - 1] == Role::verb && !sentence_.starts_object(i + 1) &&
            !sentence_.is_word(i - 1, {"help", "helps", "let", "make", "keep", "keeps"}) &&
            forms.present() && forms.verb->noun && !sentence_.ends_phrase(i + 1))
            return false; // writes conduct reports
        if (forms.none() || (is_capital(sentence_.token(i)) && !opens_clause(i))) return false;
        if (is_capital(sentence_.token(i)) && opens_ == Opens::with_thing &&
            is_one_of(sentence_.word(i), List::names_that_are_verbs))
            return false;
        const bool object =
            sentence_.starts_object(i + 1) && !sentence_.is(i + 1, wc::relative) && !ends_object(i);
        const bool stands_free = opens_clause(i) || expects_verb(i);
        if (forms.gerund) return follows_doer(i) || (stands_free && is_deed(i, object));
        if (is_within_nouns(i)) return true;
        if (forms.participle && i > 0 && is_perfect(i - 1)) return true;
        if (forms.present()) {
            if (sentence_.is_word(i - 1, {"to"}) && i > 0) return true;
            if (object && !english::mostly_noun(*forms.verb)) return true;
            const bool subject = i > 0 && roles_[i - 1] == Role::inside &&
                                 (english::is_person_noun(sentence_, i - 1) ||
                                  sentence_.is_word(i - 1, {"position", "role", "job"})) &&
                                 (!sentence_.ends_phrase(i + 1) || is_opening_subject(i - 1)) &&
                                 is_subject(i - 1);
            if (forms.third && (!forms.verb->noun || subject)) return true; // gives, stands
            if (forms.third && sentence_.is_participle(i + 1) && !sentence_.ends_phrase(i + 2))
                return true;
            if (forms.third && is_like_last_verb(i)) return true; // checks and files
            if (!stands_free) return is_only_a_verb(i);
            if (object || sentence_.is(i + 1, wc::preposition | wc::particle))
                return !forms.third || object || is_general_deed(i); // assists with
            if (opens_clause(i) && opens_ == Opens::with_thing && forms.verb->noun) return false;
            const bool may_open = forms.base || opens_clause(i);
            return may_open && !english::mostly_noun(*forms.verb) &&
                   !english::is_noun_compound(sentence_, i);
        }
        // a past or a participle that something follows which is no noun
        return sentence_.ends_phrase(i + 1) || breaks(i + 1);
    }

    Role role_of(std::size_t i) {
        if (opens_clause(i)) last_verb_.reset();
        if (breaks(i)) return Role::outside;
        if (!is_verb(i)) return Role::inside;
        last_verb_ = i;
        return Role::verb;
    }

    Opens opens_;
    const Sentence& sentence_;
    std::vector<Role> roles_;
    std::optional<std::size_t> last_verb_; // in this clause
};

}

std::vector<Role> roles_in(const Sentence& sentence, Opens opens) {
    return RoleReader(sentence, opens).read();
}

bool is_wordy(const Sentence& sentence, std::size_t i) {
    const TokenKind kind = sentence.token(i).kind;
    return kind == TokenKind::word || kind == TokenKind::figure;
}

bool opens_clause(const Sentence& sentence, std::size_t i) {
    if (i == 0) return true;
    const TokenKind before = sentence.token(i - 1).kind;
    return before == TokenKind::stop || before == TokenKind::sign || before == TokenKind::open;
}

}

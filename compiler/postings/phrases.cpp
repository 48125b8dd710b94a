// A sentence is cut at its words of grammar, its signs and its verbs; what lies between is a
// candidate, without the praise and the general nouns at either end.
#include "compiler/postings/phrases.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/verb_odds.hpp"
#include "compiler/postings/fields_of_study.hpp"
#include "compiler/postings/fixed_phrases.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrase_roles.hpp"
#include "compiler/postings/phrase_words.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <map>
#include <optional>

namespace quoin::postings {

namespace {

namespace wc = english::word_class;
using english::Sentence;
using english::TokenKind;

constexpr std::size_t most_words = 5;

class PhraseReader {
public:
    PhraseReader(std::string_view text, Opens opens)
        : text_(text), opens_(opens), sentence_(text, {}, english::Lexicon{}),
          fields_(fields_named_in(text, opens == Opens::with_thing)), roles_(sentence_.size()),
          fixed_(fixed_in(sentence_, text)) {}

    std::vector<Phrase> read() {
        roles_ = roles_in(sentence_, opens_);
        mark_names();
        for (std::size_t i = 0; i < sentence_.size();)
            i = fixed_[i] > 0             ? add_fixed(i)
                : roles_[i] == Role::verb ? add_trade_verb(i)
                                          : add_run(i);
        return std::move(phrases_);
    }

private:
    bool is_outside(std::size_t i) const {
        return i >= sentence_.size() || roles_[i] == Role::outside;
    }

    bool opens_clause(std::size_t i) const { return postings::opens_clause(sentence_, i); }

    bool is_wordy(std::size_t i) const { return postings::is_wordy(sentence_, i); }

    // Words that a run of capitals joins: Leave No Trace; or that end one: Housing First.
    void mark_names() {
        for (std::size_t i = 1; i < sentence_.size(); ++i)
            if (ends_name(i) && roles_[i - 1] == Role::inside) roles_[i] = Role::inside;
        for (std::size_t i = 1; i + 1 < sentence_.size(); ++i)
            if (is_capital(sentence_.token(i)) && roles_[i] != Role::inside && is_wordy(i) &&
                is_capital(sentence_.token(i - 1)) && is_capital(sentence_.token(i + 1)) &&
                roles_[i + 1] == Role::inside)
                roles_[i] = roles_[i - 1] = Role::inside;
    }

    std::size_t add_fixed(std::size_t i) {
        const std::size_t last = i + fixed_[i] - 1;
        add(i, last, is_studied(i));
        return last + 1;
    }

    bool is_studied(std::size_t i) const { return fields_.holds(sentence_.token(i).extent.offset); }

    // A verb that few texts have names what is done by itself: troubleshoot, solders, scribing.
    std::size_t add_trade_verb(std::size_t i) {
        constexpr std::uint16_t few = 25;
        constexpr std::size_t shortest = 4;
        const english::VerbForms& forms = sentence_.forms(i);
        const bool noun =
            !forms.gerund && forms.verb->noun && forms.verb->noun_count > forms.verb->verb_count;
        const bool of_doer = forms.gerund && i > 0 && roles_[i - 1] == Role::inside &&
                             !sentence_.is_word(i - 1, {"experience"});
        if ((forms.present() || forms.gerund) && !noun && !of_doer &&
            forms.verb->verb_count <= few && forms.verb->base.size() >= shortest &&
            !is_one_of(forms.verb->base, List::general_verbs)) {
            add(i, i, false);
            phrases_.back().deed = true;
        }
        return i + 1;
    }

    bool is_edge(std::size_t i) const {
        const std::string& word = sentence_.word(i);
        if (is_among_names(i) || ends_name(i)) return false;
        return said_of(word, lines_of(List::praise)) ||
               said_of(word, lines_of(List::general_nouns)) || sentence_.is(i, wc::adverb);
    }

    bool ends_name(std::size_t i) const {
        if (i > 0 && is_capital(sentence_.token(i)) &&
            is_one_of(sentence_.word(i - 1), List::names_of_things))
            return true; // Microsoft Office
        return sentence_.is_word(i, {"first", "next", "now", "one", "plus", "pro"}) && i > 0 &&
               is_capital(sentence_.token(i)) && is_capital(sentence_.token(i - 1)) &&
               !opens_clause(i - 1) && !is_capital(sentence_.token(i + 1));
    }

    // Outlook, Word and Teams, where capitals stand for nothing else.
    bool is_among_names(std::size_t i) const {
        const auto parts = [&](std::size_t k) {
            return sentence_.token(k).kind == TokenKind::comma ||
                   sentence_.is_word(k, {"and", "or"});
        };
        return is_capital(sentence_.token(i)) && !opens_clause(i) && i >= 2 &&
               ((parts(i - 1) && is_capital(sentence_.token(i - 2)) && !opens_clause(i - 2)) ||
                (parts(i + 1) && is_capital(sentence_.token(i + 2)) &&
                 !is_capital(sentence_.token(i - 1))));
    }

    bool opens_emptily(std::size_t i) const {
        if (is_all_capitals(sentence_.token(i)) && !is_all_capitals(sentence_.token(i + 1)))
            return false; // SAFE Act
        return said_of(sentence_.word(i), lines_of(List::praise)) || sentence_.is(i, wc::adverb);
    }

    // A food worker card, where one is asked for
    bool is_card(std::size_t begin, std::size_t i) const {
        if (opens_ != Opens::with_thing) return false;
        return i > begin && sentence_.is_word(i, {"card"}) &&
               !said_of(sentence_.word(i - 1), lines_of(List::credentials)) &&
               !sentence_.is_figure(i - 1);
    }

    // Years mixing live sound, experience meeting goals: that what follows was done.
    bool is_span(std::size_t i, std::size_t last) const {
        return i + 1 < last && sentence_.is_word(i, {"years", "year", "yrs", "yr", "months",
                                                     "hours", "weeks", "experience"});
    }

    // Keep donor records clean: what they are to be.
    bool is_state(std::size_t begin, std::size_t i) const {
        if (i == begin || !sentence_.is_word(i, {"clean", "dry", "neat", "tidy", "stocked"}))
            return false;
        for (std::size_t k = begin; k-- > 0 && i - k < most_words;)
            if (sentence_.is_word(k, {"keep", "keeps", "keeping", "kept"})) return true;
        return false;
    }

    // Professional experience: as whom one would have it.
    bool is_manner(std::size_t first, std::size_t last, std::size_t end) const {
        return last - first == 1 && last < end &&
               sentence_.is_word(last, {"experience", "position", "manner", "attitude"}) &&
               is_one_of(sentence_.word(first), List::soft_predicates);
    }

    bool is_paper(std::size_t i) const {
        return sentence_.is_word(i, {"application", "applications", "form", "forms"});
    }

    bool is_weak(std::size_t i) const {
        return said_of(sentence_.word(i), lines_of(List::weak_heads)) && !is_among_names(i);
    }

    std::size_t add_run(std::size_t begin) {
        if (roles_[begin] != Role::inside) return begin + 1;
        std::size_t end = begin;
        while (end < sentence_.size() && roles_[end] == Role::inside && fixed_[end] == 0)
            ++end;
        join_people_with(end);
        add_what_is_worked_with(begin, end);
        std::size_t first = begin, last = end;
        while (last > first && (is_edge(last - 1) || is_state(begin, last - 1)) &&
               !is_card(begin, last - 1))
            --last;
        while (first < last && (opens_emptily(first) || is_span(first, last)))
            ++first;
        if (first == last) return add_deed_to_people(begin, end);
        first = std::max(first, last > most_words ? last - most_words : 0);
        const bool studied = is_studied(first);
        const std::size_t verb = first;
        strip_verb(first, last);
        if (verb < first && !sentence_.forms(verb).none() && !sentence_.is(verb, wc::particle))
            add_trade_verb(verb);
        if (is_manner(first, last, end)) return end;
        if (!studied && last < end && is_paper(last) && all_weak(first, last)) {
            add(first, last, false); // permit applications
            return end;
        }
        if (studied || !all_weak(first, last))
            add(first, last - 1, studied);
        else if (last < end && sentence_.is_word(last, {"experience", "skills"}))
            add(first, last, false);
        add_names_within(first, last);
        add_head_of_many(first, last);
        add_pairs(first, last);
        if (!studied && all_weak(first, last))
            if (const std::size_t deed = verb_before(first);
                deed < first &&
                !(is_general_verb(deed) && english::is_person_noun(sentence_, last - 1)))
                add_deed(deed, first, last - 1);
        join_by_of(first, last, end);
        return end;
    }

    // students with disabilities
    void join_people_with(std::size_t end) {
        if (!sentence_.is_word(end, {"with"}) || !is_of_people(end - 1)) return;
        std::size_t to = end + 1;
        while (to < sentence_.size() && roles_[to] == Role::inside && to - end < most_words)
            ++to;
        if (to > end + 1 && is_one_of(sentence_.word(to - 1), List::conditions_of_people))
            add(end - 1, to - 1, false);
    }

    bool is_of_people(std::size_t i) const {
        return is_one_of(sentence_.word(i), List::people_served);
    }

    // working with children, of whom by themselves nothing is asked
    void add_what_is_worked_with(std::size_t begin, std::size_t end) {
        if (begin < 2 || end - begin > 2 || !is_of_people(end - 1) ||
            !sentence_.is_word(begin - 1, {"with", "for"}) ||
            !sentence_.is_word(begin - 2, {"work", "working", "worked", "care", "caring"}))
            return;
        add(begin - 2, end - 1, false);
    }

    // Of `and keep tidy field notes` the verb that grammar took for a noun, of `laying out and
    // milling solid stock` another after one, of `breaking down sheet goods` its particle too.
    void strip_verb(std::size_t& first, std::size_t last) const {
        const english::VerbForms& forms = sentence_.forms(first);
        if (sentence_.is(first, wc::particle) && last - first > 1) ++first;
        if (last - first < 2 || forms.none() || is_capital(sentence_.token(first)) ||
            english::is_noun_compound(sentence_, first))
            return;
        const bool joined = first > 0 && !sentence_.is(first - 1, wc::determiner | wc::possessive |
                                                                      wc::preposition);
        const bool keeps = joined && roles_[first - 1] != Role::verb && forms.present() &&
                           english::mostly_verb(*forms.verb);
        const bool particle = forms.gerund && sentence_.is(first + 1, wc::particle);
        if (!keeps && !particle && !(forms.gerund && is_after_gerund(first))) return;
        ++first;
        while (first + 1 < last && (opens_emptily(first) || sentence_.is(first, wc::particle)))
            ++first;
    }

    // Joined with a gerund that has an object: handling cash and balancing tills.
    bool is_after_gerund(std::size_t i) const {
        if (i < 2 || (is_wordy(i - 1) && !sentence_.is_word(i - 1, {"and", "or"}))) return false;
        constexpr std::size_t looked_at = 16;
        for (std::size_t k = i - 1; k-- > 0 && i - k < looked_at && !is_stop(k);)
            if (roles_[k] == Role::verb) return sentence_.forms(k).gerund;
        return false;
    }

    bool is_stop(std::size_t i) const { return sentence_.token(i).kind == TokenKind::stop; }

    // React of `React dispatch board`, PDF/X of `clean PDF/X export`.
    void add_names_within(std::size_t first, std::size_t last) {
        if (is_capital(sentence_.token(last - 1))) return;
        std::size_t begin = first;
        while (begin < last && !is_name_by_itself(begin))
            ++begin;
        std::size_t end = begin;
        while (end < last && (is_capital(sentence_.token(end)) ||
                              (end > begin && sentence_.is_figure(end)))) // Windows 11
            ++end;
        if (begin < end && end - begin < last - first) add(begin, end - 1, false);
    }

    // Drug screens of `chain-of-custody urine drug screens`, and what they are first.
    void add_head_of_many(std::size_t first, std::size_t last) {
        constexpr std::size_t many = 4;
        if (last - first < many || is_capital(sentence_.token(last - 1)) ||
            sentence_.word(first).find('-') == std::string::npos)
            return;
        add(last - 2, last - 1, false);
        if (std::ranges::count(sentence_.word(first), '-') > 1) add(first, first, false);
    }

    bool is_name_by_itself(std::size_t i) const {
        const std::string& text = sentence_.token(i).text;
        const bool signs = std::ranges::any_of(text.substr(1), is_capital_letter);
        return is_capital(sentence_.token(i)) && (signs || !opens_clause(i));
    }

    // lockout/tagout, Airframe & Powerplant: one thing by its sign.
    void add_pairs(std::size_t first, std::size_t last) {
        if (last + 1 >= sentence_.size() || is_wordy(last) || roles_[last + 1] != Role::inside)
            return;
        const std::string_view sign = signs_at(last);
        const bool words = sign == "/" && last - first == 1 && signs_at(last + 2) != "/" &&
                           (first == 0 || signs_at(first - 1) != "/") &&
                           !trade::is_spoken_language(sentence_.word(first));
        const bool names = sign == "&" && last - first <= 2 && is_capital(sentence_.token(first)) &&
                           is_capital(sentence_.token(last + 1));
        const english::Extent whole = sentence_.extent(first, last + 1);
        const bool parted =
            text_.substr(whole.offset, whole.length).find(' ') != std::string_view::npos;
        if (names || (words && !parted)) phrases_.push_back(made(first, last + 1, false));
    }

    std::string_view signs_at(std::size_t i) const {
        if (i >= sentence_.size()) return {};
        const english::Extent extent = sentence_.token(i).extent;
        return text_.substr(extent.offset, extent.length);
    }

    // One word alone that names nothing: samples, certification, legible.
    bool all_weak(std::size_t first, std::size_t last) const {
        if (opens_ == Opens::with_thing && last - first == 1 &&
            is_one_of(sentence_.word(first), List::asked_alone))
            return false; // a year of sales
        return last - first == 1 &&
               (is_weak(first) ||
                (ends_as_adjective(sentence_.word(first)) && !is_capital(sentence_.token(first))) ||
                said_of(sentence_.word(first), lines_of(List::credential_words)));
    }

    // Index of the verb whose object begins at `i`; `i` if there is none.
    std::size_t verb_before(std::size_t i) const {
        std::size_t at = i;
        while (at > 0 && (sentence_.is(at - 1, wc::determiner | wc::possessive | wc::number) ||
                          said_of(sentence_.word(at - 1), lines_of(List::praise))))
            --at;
        return at > 0 && roles_[at - 1] == Role::verb ? at - 1 : i;
    }

    // chain of custody; not: variety of tasks
    void join_by_of(std::size_t first, std::size_t last, std::size_t end) {
        if (last != end || last - first > 2 || !sentence_.is_word(end, {"of"})) return;
        std::size_t to = end + 1;
        while (to < sentence_.size() && roles_[to] == Role::inside)
            ++to;
        if (to == end + 1 || to - end > 4) return;
        while (to > end + 1 && is_edge(to - 1))
            --to;
        if (to == end + 2 && sentence_.word(end + 1).size() == 1) return; // grade of C
        if (to == end + 1 || (to == end + 2 && sentence_.forms(end + 1).gerund)) return;
        add(first, to - 1, false);
    }

    bool is_general_verb(std::size_t i) const {
        const english::VerbForms& forms = sentence_.forms(i);
        return !forms.none() && is_one_of(forms.verb->base, List::general_verbs);
    }

    // Training new users, of whom by themselves nothing is asked.
    std::size_t add_deed_to_people(std::size_t begin, std::size_t end) {
        const std::size_t verb = verb_before(begin);
        const bool applicant = sentence_.is_word(end - 1, {"applicant", "candidate", "person"});
        if (verb < begin && english::is_person_noun(sentence_, end - 1) && end - begin <= 2 &&
            !applicant && !is_general_verb(verb))
            add_deed(verb, end - 1, end - 1);
        return end;
    }

    void add_deed(std::size_t verb, std::size_t first, std::size_t last) {
        Phrase phrase = made(first, last, false);
        phrase.words = sentence_.token(verb).text + ' ' + phrase.words;
        phrase.words.front() = small_letter(phrase.words.front());
        phrase.lower.insert(phrase.lower.begin(), sentence_.word(verb));
        phrase.deed = true;
        phrases_.push_back(std::move(phrase));
    }

    Phrase made(std::size_t first, std::size_t last, bool studied) const {
        Phrase phrase;
        phrase.extent = sentence_.extent(first, last);
        phrase.words = std::string(text_.substr(phrase.extent.offset, phrase.extent.length));
        for (std::size_t i = first; i <= last; ++i)
            phrase.lower.push_back(sentence_.word(i));
        phrase.capitals = is_capital(sentence_.token(first)) && !opens_clause(first);
        phrase.after_field = studied;
        return phrase;
    }

    void add(std::size_t first, std::size_t last, bool studied) {
        const std::string& word = sentence_.word(last);
        const bool named = is_capital(sentence_.token(first)) && (word == "r" || word == "c") &&
                           (!opens_clause(first) || is_outside(last + 1));
        const bool letter = first == last && word.size() == 1 && !named;
        if (letter || all_figures(word)) {
            if (first == last) return;
        }
        if (first == last && add_each_acronym(first)) return;
        phrases_.push_back(made(first, last, studied));
    }

    // CPR/BLS, where each is a credential by itself.
    bool add_each_acronym(std::size_t i) {
        const std::vector<std::string_view> parts = pieces_of(sentence_.word(i), "/");
        if (parts.size() < 2 || !std::ranges::all_of(parts, [](std::string_view part) {
                return said_of(part, lines_of(List::credentials)).has_value();
            }))
            return false;
        std::size_t at = 0;
        for (const std::string_view part : parts) {
            Phrase phrase = made(i, i, false);
            phrase.words = sentence_.token(i).text.substr(at, part.size());
            phrase.lower = {std::string(part)};
            phrases_.push_back(std::move(phrase));
            at += part.size() + 1;
        }
        return true;
    }

    std::string_view text_;
    Opens opens_;
    Sentence sentence_;
    FieldsNamed fields_;
    std::vector<Role> roles_;
    std::vector<std::size_t> fixed_; // words of the listed phrase that begins here
    std::vector<Phrase> phrases_;
};

}

std::vector<Phrase> phrases_in(std::string_view sentence, Opens opens) {
    return PhraseReader(sentence, opens).read();
}

std::vector<double> rake_scores(const std::vector<std::vector<std::string>>& phrases) {
    struct Word {
        double degree = 0, frequency = 0;
    };
    std::map<std::string, Word> words;
    for (const auto& phrase : phrases)
        for (const std::string& word : phrase) {
            words[word].degree += static_cast<double>(phrase.size());
            ++words[word].frequency;
        }
    std::vector<double> scores;
    for (const auto& phrase : phrases) {
        double score = 0;
        for (const std::string& word : phrase)
            score += words[word].degree / words[word].frequency;
        scores.push_back(score);
    }
    return scores;
}

}

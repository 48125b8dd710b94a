// A sentence is cut at its words of grammar, its signs and its verbs; what lies between is a
// candidate, without the praise and the general nouns at either end.
#include "compiler/postings/phrases.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/verb_odds.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrase_words.hpp"

#include <algorithm>
#include <map>
#include <optional>

namespace quoin::postings {

namespace {

namespace wc = english::word_class;
using english::Sentence;
using english::TokenKind;

constexpr std::size_t most_words = 5;

enum class Role { outside, inside, verb };

class PhraseReader {
public:
    PhraseReader(std::string_view text, Opens opens)
        : text_(text), opens_(opens), sentence_(text, {}, english::Lexicon{}),
          roles_(sentence_.size()), fixed_(sentence_.size()) {}

    std::vector<Phrase> read() {
        find_fixed(List::credentials);
        find_fixed(List::soft_skills);
        find_fixed(List::terms_of_general_words);
        find_predicates();
        for (std::size_t i = 0; i < sentence_.size(); ++i)
            roles_[i] = role_of(i);
        mark_names();
        const std::size_t field = field_begin();
        for (std::size_t i = 0; i < sentence_.size();)
            i = fixed_[i] > 0             ? add_fixed(i)
                : roles_[i] == Role::verb ? add_trade_verb(i)
                                          : add_run(i, field);
        return std::move(phrases_);
    }

private:
    bool is_wordy(std::size_t i) const {
        const TokenKind kind = sentence_.token(i).kind;
        return kind == TokenKind::word || kind == TokenKind::figure;
    }

    // Phrases of a list, which grammar would cut: first aid, attention to detail.
    void find_fixed(List list) {
        for (std::size_t i = 0; i < sentence_.size(); ++i) {
            std::string words;
            for (std::size_t k = 0; k < most_words && is_wordy(i + k) && i + k < sentence_.size();
                 ++k) {
                words += (k == 0 ? "" : " ") + sentence_.word(i + k);
                const bool in_name = i > 0 && is_wordy(i - 1) &&
                                     is_capital(sentence_.token(i - 1)) &&
                                     is_capital(sentence_.token(i)) && k > 0;
                if (said_of(words, lines_of(list)) && !in_name)
                    fixed_[i] = std::max(fixed_[i], k + 1);
            }
        }
    }

    // You're curious; be honest and punctual: adjectives that are said of a person.
    void find_predicates() {
        for (std::size_t i = 0; i < sentence_.size(); ++i) {
            if (!is_one_of(sentence_.word(i), List::soft_predicates)) continue;
            const bool after = i == 0 || !is_wordy(i - 1) ||
                               sentence_.is(i - 1, wc::adverb | wc::be) ||
                               sentence_.is_word(i - 1, {"be", "you're", "and", "or", "who's"});
            const bool before = i + 1 >= sentence_.size() || !is_wordy(i + 1) ||
                                sentence_.is(i + 1, wc::preposition | wc::conjunction);
            if (after && before) fixed_[i] = std::max<std::size_t>(fixed_[i], 1);
        }
    }

    bool breaks(std::size_t i) const {
        constexpr std::uint32_t grammar =
            wc::determiner | wc::possessive | wc::preposition | wc::conjunction | wc::relative |
            wc::pronoun | wc::be | wc::have | wc::modal | wc::adverb | wc::number | wc::negation;
        if (!is_wordy(i) || is_contraction(sentence_.word(i)) || is_address(sentence_.word(i)) ||
            said_of(sentence_.word(i), lines_of(List::breaking_words)))
            return true;
        const bool dated =
            sentence_.is_word(i, {"march", "may"}) && i > 0 && is_capital(sentence_.token(i));
        if (dated) return true;
        if (sentence_.is(i, grammar) || is_time_name(sentence_.word(i))) return true;
        if (!sentence_.is_figure(i)) return false;
        const bool named = i > 0 && is_wordy(i - 1) && is_all_capitals(sentence_.token(i - 1));
        return !named && counts_something(sentence_.word(i));
    }

    bool opens_clause(std::size_t i) const {
        if (i == 0) return true;
        const english::Token& before = sentence_.token(i - 1);
        return before.kind == TokenKind::stop || before.kind == TokenKind::sign ||
               before.kind == TokenKind::open;
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
               !sentence_.ends_phrase(i + 1) &&
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

    bool is_perfect(std::size_t i) const {
        return sentence_.is(i, wc::have) ||
               sentence_.is_word(i, {"you've", "we've", "i've", "they've"});
    }

    // The aide; not: of resident rights, safe patient transfers.
    bool is_subject(std::size_t i) const {
        return opens_clause(i) || sentence_.is(i - 1, wc::determiner | wc::possessive) ||
               is_capital(sentence_.token(i));
    }

    // Write case notes the same day: a noun after one, of a verb before them.
    bool ends_object(std::size_t i) const {
        return i > 1 && last_verb_ && roles_[i - 1] == Role::inside && *last_verb_ + 4 > i;
    }

    bool is_verb(std::size_t i) const {
        const english::VerbForms& forms = sentence_.forms(i);
        if (forms.none() || (is_capital(sentence_.token(i)) && !opens_clause(i))) return false;
        if (is_capital(sentence_.token(i)) && opens_ == Opens::with_thing &&
            is_one_of(sentence_.word(i), List::names_that_are_verbs))
            return false;
        const bool object =
            sentence_.starts_object(i + 1) && !sentence_.is(i + 1, wc::relative) && !ends_object(i);
        const bool stands_free = opens_clause(i) || expects_verb(i);
        if (forms.gerund) return stands_free && is_deed(i, object);
        if (forms.participle && i > 0 && is_perfect(i - 1)) return true;
        if (forms.present()) {
            if (sentence_.is_word(i - 1, {"to"}) && i > 0) return true;
            if (object && !english::mostly_noun(*forms.verb)) return true;
            const bool subject = i > 0 && roles_[i - 1] == Role::inside &&
                                 english::is_person_noun(sentence_, i - 1) &&
                                 !sentence_.ends_phrase(i + 1) && is_subject(i - 1);
            if (forms.third && (!forms.verb->noun || subject)) return true; // gives, stands
            if (forms.third && sentence_.is_participle(i + 1) && !sentence_.ends_phrase(i + 2))
                return true;
            if (forms.third && is_like_last_verb(i)) return true; // checks and files
            if (!stands_free) return false;
            if (object || sentence_.is(i + 1, wc::preposition | wc::particle))
                return !forms.third || object;
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

    // Words that a run of capitals joins: Leave No Trace.
    void mark_names() {
        for (std::size_t i = 1; i + 1 < sentence_.size(); ++i)
            if (is_capital(sentence_.token(i)) && roles_[i] != Role::inside && is_wordy(i) &&
                is_capital(sentence_.token(i - 1)) && is_capital(sentence_.token(i + 1)) &&
                roles_[i + 1] == Role::inside)
                roles_[i] = roles_[i - 1] = Role::inside;
    }

    // Of the first token after `degree in`, at which fields of study begin.
    std::size_t field_begin() const {
        const std::string lower = lower_case(text_);
        std::size_t begin = lower.npos;
        for (const std::string_view phrase : listed(lines_of(List::before_fields)))
            if (const std::size_t at = find_phrase(lower, phrase); at != lower.npos)
                begin = std::min(begin, at + phrase.size());
        return begin;
    }

    std::size_t add_fixed(std::size_t i) {
        const std::size_t last = i + fixed_[i] - 1;
        add(i, last, false);
        return last + 1;
    }

    // A verb that hardly any text has names what is done by itself: troubleshoot.
    std::size_t add_trade_verb(std::size_t i) {
        const english::VerbForms& forms = sentence_.forms(i);
        if (forms.base && forms.verb->verb_count == 0 && sentence_.word(i).size() > 5) {
            add(i, i, false);
            phrases_.back().deed = true;
        }
        return i + 1;
    }

    bool is_edge(std::size_t i) const {
        const std::string& word = sentence_.word(i);
        return said_of(word, lines_of(List::praise)) ||
               said_of(word, lines_of(List::general_nouns)) || sentence_.is(i, wc::adverb);
    }

    bool opens_emptily(std::size_t i) const {
        return said_of(sentence_.word(i), lines_of(List::praise)) || sentence_.is(i, wc::adverb);
    }

    bool is_weak(std::size_t i) const {
        return said_of(sentence_.word(i), lines_of(List::weak_heads)).has_value();
    }

    std::size_t add_run(std::size_t begin, std::size_t field) {
        if (roles_[begin] != Role::inside) return begin + 1;
        std::size_t end = begin;
        while (end < sentence_.size() && roles_[end] == Role::inside && fixed_[end] == 0)
            ++end;
        std::size_t first = begin, last = end;
        while (last > first && is_edge(last - 1))
            --last;
        while (first < last && opens_emptily(first))
            ++first;
        if (first == last) return end;
        first = std::max(first, last > most_words ? last - most_words : 0);
        const bool studied = sentence_.token(first).extent.offset >= field;
        strip_verb(first, last);
        if (studied || !all_weak(first, last))
            add(first, last - 1, studied);
        else if (last < end && sentence_.is_word(last, {"experience", "skills"}))
            add(first, last, false);
        add_names_within(first, last);
        add_pairs(first, last);
        if (!studied && all_weak(first, last))
            if (const std::size_t verb = verb_before(first); verb < first)
                add_deed(verb, first, last - 1);
        join_by_of(first, last, end);
        return end;
    }

    // Of `and keep tidy field notes` the verb that grammar took for a noun.
    void strip_verb(std::size_t& first, std::size_t last) const {
        const english::VerbForms& forms = sentence_.forms(first);
        const bool joined = first > 0 && !sentence_.is(first - 1, wc::determiner | wc::possessive |
                                                                      wc::preposition);
        if (!joined || last - first < 2 || forms.none() || !forms.present() ||
            is_capital(sentence_.token(first)) || !english::mostly_verb(*forms.verb) ||
            english::is_noun_compound(sentence_, first))
            return;
        ++first;
        while (first + 1 < last && opens_emptily(first))
            ++first;
    }

    // React of `React dispatch board`, PDF/X of `clean PDF/X export`.
    void add_names_within(std::size_t first, std::size_t last) {
        if (is_capital(sentence_.token(last - 1))) return;
        std::size_t begin = first;
        while (begin < last && !is_name_by_itself(begin))
            ++begin;
        std::size_t end = begin;
        while (end < last && is_capital(sentence_.token(end)))
            ++end;
        if (begin < end && end - begin < last - first) add(begin, end - 1, false);
    }

    bool is_name_by_itself(std::size_t i) const {
        const std::string& text = sentence_.token(i).text;
        const bool signs = std::ranges::any_of(text.substr(1), is_capital_letter);
        return is_capital(sentence_.token(i)) && (signs || !opens_clause(i));
    }

    // lockout/tagout
    void add_pairs(std::size_t first, std::size_t last) {
        const std::size_t slash = last;
        if (last - first != 1 || sentence_.token(slash).text != "/" ||
            roles_[slash + 1] != Role::inside || sentence_.ends_phrase(slash + 1))
            return;
        const english::Extent whole = sentence_.extent(first, slash + 1);
        if (text_.substr(whole.offset, whole.length).find(' ') == text_.npos)
            phrases_.push_back(made(first, slash + 1, false));
    }

    // One word alone that names nothing: samples, certification, legible.
    bool all_weak(std::size_t first, std::size_t last) const {
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
                           (!opens_clause(first) || breaks(last + 1));
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
    std::vector<Role> roles_;
    std::vector<std::size_t> fixed_;       // words of the listed phrase that begins here
    std::optional<std::size_t> last_verb_; // in this clause
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

#include "compiler/postings/posting.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/english/language.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/english/stems.hpp"
#include "compiler/postings/acronyms.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/phrases.hpp"
#include "compiler/postings/weights.hpp"
#include "compiler/trade/lists.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

namespace quoin::postings {

namespace {

using Stems = std::vector<std::string>;

Stems stems_of(const std::vector<std::string>& lower) {
    Stems stems;
    for (const std::string& word : lower)
        stems.push_back(stem_of(word));
    return stems;
}

struct Found { // a phrase where it stands
    Phrase phrase;
    Stems stems;
    const Statement* statement = nullptr;
    double rake = 0;
};

// `custody` in `chain of custody`: a single word within a longer phrase of the same sentence.
void drop_nested(std::vector<Phrase>& phrases) {
    const std::vector<Phrase> all = phrases;
    std::erase_if(phrases, [&](const Phrase& inner) {
        return inner.lower.size() == 1 && std::ranges::any_of(all, [&](const Phrase& outer) {
                   const auto begin = outer.extent.offset, end = begin + outer.extent.length;
                   return outer.extent.length > inner.extent.length &&
                          begin <= inner.extent.offset &&
                          inner.extent.offset + inner.extent.length <= end;
               });
    });
}

// The employer, a person, a place: what is capitalised where nothing is asked for, or ends as the
// names of employers do.
bool is_name(const Phrase& phrase, const Statement& statement) {
    const bool small = std::ranges::any_of(phrase.words, is_small_letter);
    if (!small && phrase.lower.size() == 1 && is_one_of(phrase.words, trade::List::state_codes))
        return true;
    const std::size_t last = phrase.words.rfind(' ') + 1;
    if (is_capital_letter(phrase.words.front()) && is_capital_letter(phrase.words[last]) && small &&
        is_one_of(phrase.lower.back(), List::ends_of_employers))
        return true;
    const bool asked = statement.standing <= Standing::preferred || statement.item;
    const bool language = trade::is_spoken_language(phrase.lower.back());
    return phrase.capitals && !asked && small && !language;
}

// Of `conversational Spanish` the language.
void name_language_alone(Phrase& phrase) {
    if (phrase.lower.size() == 1 || !trade::is_spoken_language(phrase.lower.back())) return;
    if (trade::is_spoken_language(phrase.lower[phrase.lower.size() - 2] + ' ' +
                                  phrase.lower.back()))
        return; // brazilian portuguese
    phrase.lower = {phrase.lower.back()};
    phrase.words = phrase.words.substr(phrase.words.rfind(' ') + 1);
}

std::vector<Found> found_in(std::span<const Statement> statements) {
    std::vector<Found> found;
    std::vector<Stems> all;
    for (const Statement& statement : statements) {
        if (statement.left_out) continue;
        const bool asks = statement.standing <= Standing::preferred;
        std::vector<Phrase> phrases =
            phrases_in(statement.text, asks ? Opens::with_thing : Opens::with_deed);
        for (Phrase& phrase : phrases)
            name_language_alone(phrase);
        drop_nested(phrases);
        for (Phrase& phrase : phrases) {
            if (is_name(phrase, statement)) continue;
            Stems stems = stems_of(phrase.lower);
            all.push_back(stems);
            found.push_back({std::move(phrase), std::move(stems), &statement, 0});
        }
    }
    const std::vector<double> scores = rake_scores(all);
    for (std::size_t i = 0; i < found.size(); ++i)
        found[i].rake = scores[i];
    return found;
}

// What postings say of the term where it stands strongest is what is shown.
void strengthen(Term& term, const Found& found, std::uint32_t file) {
    const Kind kind = kind_of(found.phrase);
    if (term.times == 0 || found.statement->standing < term.standing) {
        term.standing = found.statement->standing;
        term.sentence = found.statement->text;
        term.place = {file, found.statement->line, 0, 0};
    }
    if (term.times == 0 || kind > term.kind) term.kind = kind;
    ++term.times;
}

class TermMaker {
public:
    TermMaker(std::uint32_t file, const english::WordList& words) : file_(file), words_(words) {}

    void add(const Found& found) {
        const auto [at, is_new] = index_.try_emplace(found.stems, terms_.size());
        if (is_new) {
            Term term;
            term.words = found.phrase.words;
            term.stems = found.stems;
            terms_.push_back(std::move(term));
        }
        Term& term = terms_[at->second];
        strengthen(term, found, file_);
        term.by_rake = std::max(term.by_rake, found.rake);
        term.by_rarity = std::max(term.by_rarity, rarity_factor(found.phrase, words_));
    }

    std::vector<Term> weighed() {
        double best_rake = 0, best = 0;
        for (const Term& term : terms_)
            best_rake = std::max(best_rake, term.by_rake);
        for (Term& term : terms_) {
            term.by_standing = standing_factor(term.standing);
            term.by_rake = rake_factor(term.by_rake, best_rake);
            term.by_times = times_factor(term.times);
            term.by_kind = kind_factor(term.kind);
            term.weight =
                term.by_standing * term.by_rake * term.by_times * term.by_kind * term.by_rarity;
            best = std::max(best, term.weight);
        }
        for (Term& term : terms_)
            term.weight /= best;
        std::ranges::stable_sort(terms_, std::ranges::greater{}, &Term::weight);
        return std::move(terms_);
    }

private:
    std::uint32_t file_;
    const english::WordList& words_;
    std::map<Stems, std::size_t> index_;
    std::vector<Term> terms_;
};

// One term for both forms of an acronym, under the one that the posting has first.
void join_acronyms(std::vector<Term>& terms, const std::vector<Acronym>& acronyms) {
    const english::Lexicon none;
    const auto named = [&](const std::string& form) {
        const english::Sentence words(form, {}, none);
        std::vector<std::string> lower;
        for (std::size_t i = 0; i < words.size(); ++i)
            lower.push_back(words.word(i));
        return std::ranges::find(terms, stems_of(lower), &Term::stems);
    };
    for (const Acronym& acronym : acronyms) {
        const auto whole = named(acronym.long_form), part = named(acronym.short_form);
        if (whole != terms.end()) whole->other_form = acronym.short_form;
        if (part != terms.end()) part->other_form = acronym.long_form;
        if (whole == terms.end() || part == terms.end()) continue;
        Term& kept = whole->weight >= part->weight ? *whole : *part;
        kept.weight = std::max(whole->weight, part->weight);
        terms.erase(whole->weight >= part->weight ? part : whole);
    }
}

// At least one in eight words of English is one of these; of other languages hardly any.
bool is_english(std::span<const Line> lines, std::size_t& words) {
    const english::Lexicon lexicon;
    std::size_t grammar = 0;
    for (const Line& line : lines) {
        const english::Sentence sentence(line.text, {}, lexicon);
        for (std::size_t i = 0; i < sentence.size(); ++i) {
            if (sentence.token(i).kind != english::TokenKind::word) continue;
            ++words;
            namespace wc = english::word_class;
            if (sentence.is(i, wc::determiner | wc::preposition | wc::conjunction | wc::pronoun |
                                   wc::be))
                ++grammar;
        }
    }
    constexpr std::size_t share = 10, judged_from = 25;
    return words < judged_from || grammar * share >= words;
}

}

std::string_view name_of(Kind kind) {
    constexpr std::array<std::string_view, 5> names{"hard skill", "soft skill", "credential",
                                                    "language", "field of study"};
    return names[static_cast<std::size_t>(kind)];
}

std::string stem_of(std::string_view word) {
    thread_local const english::Stemmer stemmer;
    std::string lower = lower_case(word);
    if (lower.ends_with("'s")) lower.resize(lower.size() - 2);
    if (const auto own = said_of(lower, lines_of(List::stems_apart))) return std::string(*own);
    return stemmer.stem(lower);
}

Posting read_posting(std::span<const Line> lines, std::uint32_t file,
                     const english::WordList& words) {
    Posting posting;
    posting.english = is_english(lines, posting.words);
    const std::vector<Statement> all = statements(lines);
    TermMaker maker(file, words);
    for (const Found& found : found_in(all))
        maker.add(found);
    posting.terms = maker.weighed();
    std::vector<Acronym> acronyms;
    for (const Statement& statement : all) {
        if (statement.left_out)
            posting.left_out.push_back(statement);
        else
            std::ranges::move(acronyms_in(statement.text), std::back_inserter(acronyms));
    }
    join_acronyms(posting.terms, acronyms);
    return posting;
}

void add_context(Posting& posting, const Posting& context) {
    constexpr double share = 0.4; // of what it would weigh in the posting
    for (const Term& term : context.terms) {
        const auto known = std::ranges::find(posting.terms, term.stems, &Term::stems);
        if (known != posting.terms.end()) {
            known->times += term.times;
            continue;
        }
        posting.terms.push_back(term);
        posting.terms.back().standing = Standing::elsewhere;
        posting.terms.back().weight *= share;
    }
    std::ranges::stable_sort(posting.terms, std::ranges::greater{}, &Term::weight);
}

}

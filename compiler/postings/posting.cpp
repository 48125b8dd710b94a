#include "compiler/postings/posting.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/english/language.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/english/stems.hpp"
#include "compiler/postings/acronyms.hpp"
#include "compiler/postings/denials.hpp"
#include "compiler/postings/evidence.hpp"
#include "compiler/postings/kinds.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/names.hpp"
#include "compiler/postings/never_terms.hpp"
#include "compiler/postings/people.hpp"
#include "compiler/postings/phrases.hpp"
#include "compiler/postings/said_phrases.hpp"
#include "compiler/postings/titles.hpp"
#include "compiler/postings/weights.hpp"
#include "compiler/trade/lists.hpp"
#include "compiler/trade/spoken_languages.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <tuple>
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
    Kind kind{};
    Signs signs;
    Choice choice;
};

// `custody` in `chain of custody`: a single word within a longer phrase of the same sentence.
void drop_nested(std::vector<Phrase>& phrases, const english::WordList& words) {
    const std::vector<Phrase> all = phrases;
    std::erase_if(phrases, [&](const Phrase& inner) {
        const char rank = inner.lower.size() == 1 ? words.class_of(inner.lower[0]) : '\0';
        return inner.lower.size() == 1 && !is_capital_letter(inner.words.front()) &&
               (rank == english::WordList::is_frequent || rank == english::WordList::is_ordinary) &&
               std::ranges::any_of(all,
                                   [&](const Phrase& outer) { return is_within(inner, outer); });
    });
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

// Explain a trade-off in plain English.
bool is_manner_of_speaking(const Phrase& phrase, std::string_view sentence) {
    constexpr std::size_t looked_at = 16;
    if (phrase.lower.size() > 1 || !trade::is_spoken_language(phrase.lower.front())) return false;
    const std::size_t end = phrase.extent.offset + phrase.extent.length;
    const std::size_t begin = phrase.extent.offset - std::min(phrase.extent.offset, looked_at);
    return says_any(lower_case(sentence.substr(begin, end - begin)), List::manners_of_speaking);
}

// no galas, without a license, not an events job
bool is_denied(const Phrase& phrase, std::string_view sentence) {
    constexpr std::string_view denials[] = {"no",      "nor",     "not a",   "not an",
                                            "without", "isn't a", "isn't an"};
    constexpr std::size_t looked_at = 16;
    const std::size_t end = phrase.extent.offset;
    const std::size_t begin = end > looked_at ? end - looked_at : 0;
    const std::string before = ' ' + lower_case(sentence.substr(begin, end - begin));
    const std::string_view close = trimmed(before);
    return std::ranges::any_of(denials, [&](std::string_view denial) {
        return close.ends_with(denial) &&
               (close.size() == denial.size() || close[close.size() - denial.size() - 1] == ' ');
    });
}

// Planning Technician II: of what stands below it.
bool is_grade_label(const Phrase& phrase, std::string_view sentence) {
    constexpr std::size_t longest_numeral = 3;
    constexpr std::string_view numerals[] = {"i", "ii", "iii", "iv"};
    if (phrase.extent.offset > 0) return false;
    const std::string after =
        lower_case(sentence.substr(phrase.extent.length, longest_numeral + 2));
    const std::string_view next = std::string_view(after).substr(0, after.find(':'));
    return next.size() < after.size() && (next.empty() ? is_one_of(phrase.lower.back(), numerals)
                                                       : is_one_of(trimmed(next), numerals));
}

class PhraseFinder {
public:
    PhraseFinder(std::span<const Statement> statements, const english::WordList& words)
        : statements_(statements), words_(words), names_(names_left_out(statements)),
          hosts_(hosts_of(statements)), actors_(names_that_act(statements)),
          people_(people_in(statements, words)), title_(statements) {}

    std::vector<Found> find() {
        for (const Statement& statement : statements_) {
            const std::size_t first = found_.size();
            if (!statement.left_out) read(statement);
            mark_choices(statement, std::span(found_).subspan(first));
        }
        mark_those_that_hang_together();
        return std::move(found_);
    }

private:
    void read(const Statement& statement) {
        const bool asks = statement.standing <= Standing::preferred;
        std::vector<Phrase> phrases =
            phrases_in(statement.text, asks ? Opens::with_thing : Opens::with_deed);
        for (Phrase& phrase : phrases)
            name_language_alone(phrase);
        std::erase_if(phrases, [&](const Phrase& phrase) {
            return is_manner_of_speaking(phrase, statement.text);
        });
        drop_conditions(phrases, statement);
        drop_nested(phrases, words_);
        const std::size_t employer = statement.item ? 0 : end_of_employer(statement.text);
        const StatementSigns signs(statement);
        const Denials denials(statement.text);
        for (Phrase& phrase : phrases) {
            if (phrase.extent.offset < employer || is_name(phrase, statement, words_) ||
                has_name_that_acts(phrase) || names_people(phrase, statement) ||
                is_denied(phrase, statement.text) || denials.at(phrase.extent.offset) ||
                is_grade_label(phrase, statement.text) || title_.is_named_by(phrase, statement))
                continue;
            Found found{std::move(phrase), {}, &statement, {}, {}, {}};
            found.stems = stems_of(found.phrase.lower);
            found.kind = kind_of(found.phrase, statement);
            found.signs = signs.of(found.phrase, found.kind, words_);
            found.signs[Sign::name_left_out] = has_name_left_out(found.phrase);
            found.signs[Sign::in_an_address] = has_name_of_host(found.phrase);
            found.signs[Sign::stranger] =
                found.signs[Sign::name_left_out] && found.signs[Sign::one_unlisted];
            found_.push_back(std::move(found));
        }
    }

    // Of what is asked for: any or all of it. What `or` begins, or an item that it ends, and each
    // below `one of these` is a side of one choice.
    void mark_choices(const Statement& statement, std::span<Found> found) {
        below_alternatives_ = below_alternatives_ && statement.item;
        if (found.empty() && ends_with_or(statement.text)) {
            goes_on_ = true; // a semicolon parts it from its item
            return;
        }
        if (!below_alternatives_ && !goes_on_ && !is_another_side(statement.text)) {
            ++sentence_;
            sides_ = 0;
        }
        std::vector<Phrase> phrases;
        for (const Found& one : found)
            phrases.push_back(one.phrase);
        const bool asks = statement.standing <= Standing::preferred;
        const std::vector<Choice> choices = choices_in(statement.text, phrases, asks);
        const std::uint32_t before = sides_;
        for (std::size_t i = 0; i < found.size(); ++i) {
            found[i].choice = choices[i];
            found[i].choice.sentence = sentence_;
            found[i].choice.side += before;
            sides_ = std::max(sides_, found[i].choice.side);
        }
        goes_on_ = asks && !statement.heading && ends_with_or(statement.text);
        if (statement.item || !opens_alternatives(statement.text)) return;
        below_alternatives_ = true;
        ++sentence_;
        sides_ = 0;
    }

    bool has_name_left_out(const Phrase& phrase) const {
        return is_capital_letter(phrase.words.front()) &&
               std::ranges::any_of(phrase.lower,
                                   [&](const std::string& word) { return names_.contains(word); });
    }

    // A word of it that is none, or nothing but words of it: not Housing First of Harbor Housing.
    bool has_name_that_acts(const Phrase& phrase) const {
        const auto pieces = pieces_of(phrase.words, " ");
        const auto acts = [&](std::string_view word) {
            return is_capital_letter(word.front()) && actors_.contains(lower_case(word));
        };
        return std::ranges::all_of(pieces, acts) ||
               std::ranges::any_of(pieces, [&](std::string_view word) {
                   return acts(word) && is_strange(word, words_);
               });
    }

    // A name that is no word, or in running text any; of an item nothing but names.
    bool names_people(const Phrase& phrase, const Statement& statement) const {
        const auto pieces = pieces_of(phrase.words, " ");
        std::size_t known = 0;
        for (const std::string_view typed : pieces) {
            const bool of = typed.ends_with("'s");
            const std::string_view word = of ? typed.substr(0, typed.size() - 2) : typed;
            if (!is_capital_letter(word.front()) || !people_.contains(lower_case(word))) continue;
            if (of || !statement.item || is_strange(word, words_)) return true;
            ++known;
        }
        return known == pieces.size();
    }

    bool has_name_of_host(const Phrase& phrase) const {
        constexpr std::size_t shortest = 4;
        const auto is_in = [](std::string_view word) {
            return [word](const std::string& host) { return host.find(word) != host.npos; };
        };
        return is_capital_letter(phrase.words.front()) &&
               std::ranges::any_of(phrase.lower, [&](const std::string& word) {
                   return word.size() >= shortest && std::ranges::any_of(hosts_, is_in(word));
               });
    }

    void mark_those_that_hang_together() {
        std::vector<Stems> all;
        for (const Found& found : found_)
            all.push_back(found.stems);
        const std::vector<double> scores = rake_scores(all);
        const double best = scores.empty() ? 0 : *std::ranges::max_element(scores);
        for (std::size_t i = 0; i < found_.size(); ++i)
            found_[i].signs[Sign::hangs_together] = scores[i] * 2 >= best;
    }

    std::span<const Statement> statements_;
    const english::WordList& words_;
    std::set<std::string> names_;
    std::vector<std::string> hosts_;
    std::set<std::string> actors_;
    std::set<std::string> people_;
    JobTitle title_;
    std::vector<Found> found_;
    std::uint32_t sentence_ = 0, sides_ = 0;
    bool goes_on_ = false, below_alternatives_ = false;
};

// As it is quoted: of one longer than anybody reads what stands around the byte `at`. Each of its
// terms has its own, and of a file that is one sentence the memory would grow with the square.
std::string quoted_sentence(std::string_view text, std::size_t at) {
    constexpr std::size_t longest = 600;
    if (text.size() <= longest) return std::string(text);
    std::size_t begin = at - std::min(at, longest / 2);
    std::size_t end = std::min(begin + longest, text.size());
    while (begin < end && continues_character(text[begin]))
        ++begin;
    while (end < text.size() && end > begin && continues_character(text[end]))
        --end;
    return std::string(text.substr(begin, end - begin));
}

// What postings say of the term where it stands strongest is what it is judged by.
void strengthen(Term& term, const Found& found, std::uint32_t file) {
    if (term.times == 0 || found.statement->standing < term.standing) {
        term.standing = found.statement->standing;
        term.sentence = quoted_sentence(found.statement->text, found.phrase.extent.offset);
        term.place = {file, found.statement->line, 0, 0};
        term.signs = found.signs;
        term.choice = found.choice;
    }
    if (term.times == 0 || found.kind > term.kind) term.kind = found.kind;
    if (++term.times > 1) term.signs[Sign::again] = true;
}

// Those that are likely first. A short posting asks for nothing beyond them.
void sort_by_weight(std::vector<Term>& terms) {
    constexpr int many = 20;
    if (std::ranges::count(terms, true, &Term::likely) < many)
        for (Term& term : terms)
            term.listed = term.likely;
    std::ranges::stable_sort(terms, std::ranges::greater{}, [](const Term& term) {
        return std::tuple(term.likely, term.listed, term.weight);
    });
}

class TermMaker {
public:
    explicit TermMaker(std::uint32_t file) : file_(file) {}

    void add(const Found& found) {
        const auto [at, is_new] = index_.try_emplace(found.stems, terms_.size());
        if (is_new) {
            Term term;
            term.words = found.phrase.words;
            term.stems = found.stems;
            terms_.push_back(std::move(term));
        }
        strengthen(terms_[at->second], found, file_);
    }

    std::vector<Term> weighed() {
        for (Term& term : terms_) {
            term.weight = weight_of(term);
            term.likely = odds_of(term.signs) >= likely_odds;
            term.listed = odds_of(term.signs) >= least_odds;
        }
        sort_by_weight(terms_);
        return std::move(terms_);
    }

private:
    std::uint32_t file_;
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
        kept.likely = whole->likely || part->likely;
        kept.listed = whole->listed || part->listed;
        kept.kind = std::max(whole->kind, part->kind);
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
    posting.conditions = conditions_in(all);
    TermMaker maker(file);
    for (const Found& found : PhraseFinder(all, words).find())
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
    sort_by_weight(posting.terms);
}

}

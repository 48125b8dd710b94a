// Figures and terms that a résumé writes in two ways.
#include "compiler/advice/consistency.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/english/spelling.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <optional>
#include <set>
#include <utility>

namespace quoin::advice {

namespace {

struct Spot { // words of a text, and where they stand
    std::string text;
    Place place;
};

// --- numbers

struct NumberAt {
    std::size_t offset = 0;
    std::string text;
    bool grouped = false;
};

bool may_be_year(std::string_view figures) {
    constexpr int first = 1500, last = 2100;
    int number = 0;
    std::from_chars(figures.data(), figures.data() + figures.size(), number);
    return figures.size() == 4 && number >= first && number <= last;
}

// A name's number: Form 1040, room 2140, ISO 9001, and each of Forms 1040, 1065 and 1099.
bool stands_after_name(std::string_view text, std::size_t at) {
    while (at >= 2 && text[at - 1] == ' ') {
        const std::size_t space = text.rfind(' ', at - 2);
        const std::size_t begin = space == std::string_view::npos ? 0 : space + 1;
        const std::string_view word = trimmed(text.substr(begin, at - 1 - begin), "(),;:.\"'");
        if (word.empty()) return false;
        if (is_one_of(lower_case(word), List::numbered_things)) return true;
        const bool joins = word == "and" || word == "or" || word == "to" || all_figures(word);
        if (!joins) return begin > 0 && is_capitalised(word);
        at = begin;
    }
    return false;
}

// 1040 Lab
bool stands_before_name(std::string_view text, std::size_t end) {
    return end < text.size() && text[end] == ' ' && is_capitalised(text.substr(end + 1));
}

// 2000 lb is no year.
bool stands_before_unit(std::string_view text, std::size_t end) {
    const auto words = words_in(text.substr(end, std::min<std::size_t>(text.size() - end, 12)));
    return !words.empty() && is_one_of(words.front().word, List::units_of_amounts);
}

// Numbers of four figures and more.
std::vector<NumberAt> large_numbers(std::string_view text) {
    std::vector<NumberAt> numbers;
    std::size_t at = 0;
    while (at < text.size()) {
        if (!is_figure(text[at])) {
            ++at;
            continue;
        }
        std::size_t end = at;
        while (end < text.size() &&
               (is_figure(text[end]) ||
                (text[end] == ',' && end + 1 < text.size() && is_figure(text[end + 1]))))
            ++end;
        const std::string_view piece = text.substr(at, end - at);
        const char before = at > 0 ? text[at - 1] : ' ';
        const char after = end < text.size() ? text[end] : ' ';
        const bool grouped = piece.find(',') != std::string_view::npos;
        const bool whole = std::string_view(" $(~").find(before) != std::string_view::npos &&
                           std::string_view(" .,;)%").find(after) != std::string_view::npos &&
                           !(end + 1 < text.size() && after == '.' && is_figure(text[end + 1]));
        const bool year = may_be_year(piece) && !stands_before_unit(text, end);
        if (whole && (grouped || (piece.size() >= 4 && !year && !stands_after_name(text, at) &&
                                  !stands_before_name(text, end))))
            numbers.push_back({at, std::string(piece), grouped});
        at = end;
    }
    return numbers;
}

std::string with_commas(std::string figures) {
    for (std::size_t at = figures.size(); at > 3; at -= 3)
        figures.insert(at - 3, 1, ',');
    return figures;
}

void mixed_commas(const ProofContext& context, std::vector<Finding>& findings) {
    std::optional<Spot> bare;
    std::string grouped;
    for (const TextInResume& part : context.texts) {
        if (!is_wording(part)) continue;
        const std::string& text = part.plain;
        for (NumberAt& number : large_numbers(text)) {
            if (number.grouped && grouped.empty()) grouped = number.text;
            if (!number.grouped && !bare)
                bare = Spot{number.text, part.text.place(number.offset, number.text.size())};
        }
    }
    if (bare && !grouped.empty())
        report<messages::mixed_commas>(findings, bare->place, in_quotes(bare->text),
                                       in_quotes(grouped))
            .suggestion = fill<messages::write_quoted>(with_commas(bare->text));
}

// What is counted: a word in small letters, its plural ending off.
std::string counted_thing(std::string_view word) {
    constexpr std::size_t shortest = 4;
    if (word.size() < shortest || !all_small_letters(word) || !word.ends_with('s')) return {};
    return std::string(word.substr(0, word.size() - 1));
}

// What the number at `i` is of that ends `from 2 days a week to five`.
std::string thing_left_out(const std::vector<WordAt>& words, std::size_t i) {
    constexpr std::size_t near = 8;
    if (i == 0 || words[i - 1].word != "to") return {};
    for (std::size_t k = i - 1; k-- > 0 && k + near > i;)
        if (words[k].word == "from" && k + 2 < i) return counted_thing(words[k + 2].word);
    return {};
}

void words_and_figures(const ProofContext& context, std::vector<Finding>& findings) {
    std::map<std::string, std::optional<Spot>> in_figures;
    std::map<std::string, std::optional<Spot>> in_words;
    for (const TextInResume& part : context.texts) {
        if (!is_wording(part)) continue;
        const auto& words = part.words;
        for (std::size_t i = 0; i < words.size(); ++i) {
            const std::string after =
                i + 1 < words.size() ? counted_thing(words[i + 1].word) : std::string{};
            const std::string thing = after.empty() ? thing_left_out(words, i) : after;
            if (thing.empty()) continue;
            const std::string word(words[i].word);
            const bool spelled = is_one_of(part.small(words[i]), List::number_words);
            if (!spelled && !all_figures(word)) continue;
            auto& spot = (spelled ? in_words : in_figures)[thing];
            if (!spot)
                spot = Spot{after.empty() ? word : word + ' ' + std::string(words[i + 1].word),
                            part.text.place(words[i].offset, word.size())};
        }
    }
    for (const auto& [thing, spot] : in_words) {
        const auto other = in_figures.find(thing);
        if (other != in_figures.end())
            report<messages::words_and_figures>(findings, spot->place, in_quotes(spot->text),
                                                in_quotes(other->second->text));
    }
}

// --- terms

// e-mails is e-mail in another number.
std::string singular(std::string_view word) {
    constexpr std::size_t shortest = 5;
    std::string one = lower_case(word);
    if (one.size() > shortest && one.ends_with('s') && !one.ends_with("ss")) one.pop_back();
    return one;
}

std::string without_hyphens(std::string_view word) {
    std::string letters = singular(word);
    std::erase_if(letters, [](char c) { return c == '-' || c == ' '; });
    return letters;
}

bool mixes_capitals(std::string_view word) {
    return !word.empty() && std::ranges::any_of(word, is_small_letter) &&
           std::ranges::any_of(word.substr(1), is_capital_letter);
}

struct Term {
    std::string spelled; // as the first that was met
    const model::Text* text = nullptr;
    std::size_t offset = 0, length = 0;

    Place place() const { return text->place(offset, length); }
};

// As a program's makers write it, where it is typed otherwise: AutoCad, Javascript. What is a word
// as well keeps its small letters: zoom, outlook.
std::optional<std::string_view> made_name(std::string_view typed, std::string_view lower) {
    constexpr std::array<std::string_view, 5> no_words{"python", "photoshop", "linux", "arduino",
                                                       "matlab"};
    const auto made = english::technical_name(lower);
    if (!made || *made == typed) return std::nullopt;
    const bool loud = std::ranges::none_of(typed, is_small_letter);
    const bool telling = mixes_capitals(*made) || is_one_of(lower, no_words);
    if (loud || !telling) return std::nullopt;
    return made;
}

void made_names(const TextInResume& part, std::set<std::string>& told,
                std::vector<Finding>& findings) {
    std::size_t end_of_span = 0;
    auto word = part.words.begin();
    for (const model::Span& span : part.text.spans) {
        end_of_span += span.text.size();
        for (; word != part.words.end() && word->offset < end_of_span; ++word) {
            const std::size_t end = word->offset + word->word.size();
            const bool address = end + 1 < end_of_span && part.plain[end] == '.' &&
                                 is_ascii_letter(part.plain[end + 1]);
            if (span.link || span.marks.emphasis || address) continue;
            const auto made = made_name(word->word, part.small(*word));
            if (!made || !told.emplace(word->word).second) continue;
            report<messages::made_name>(findings, part.text.place(word->offset, word->word.size()),
                                        in_quotes(word->word), in_quotes(*made))
                .suggestion = fill<messages::write_quoted>(*made);
        }
    }
}

class Terms {
public:
    explicit Terms(std::vector<Finding>& findings) : findings_(findings) {}

    void add(const Term& term) {
        constexpr std::size_t shortest = 5;
        const std::string& word = term.spelled;
        if (word.size() < shortest || has_digit(word) || made_name(word, lower_case(word))) return;
        const std::string key = without_hyphens(word);
        const auto [found, is_new] = seen_.emplace(key, term);
        if (is_new || told_.contains(key)) return;
        const std::string& before = found->second.spelled;
        const bool hyphens = singular(before) != singular(word);
        const bool letters_differ = lower_case(before) == lower_case(word) && before != word &&
                                    (mixes_capitals(before) || mixes_capitals(word));
        if (!hyphens && !letters_differ) return;
        told_.insert(key);
        report<messages::term_forms>(findings_, term.place(), in_quotes(word), in_quotes(before),
                                     found->second.place().line);
    }

private:
    std::vector<Finding>& findings_;
    std::map<std::string, Term> seen_;
    std::set<std::string> told_;
};

bool has_title_case(const TextInResume& part) {
    return part.field && (part.field->name == trade::FieldName::role ||
                          part.field->name == trade::FieldName::project);
}

bool may_hold_terms(const TextInResume& part) {
    return is_wording(part) || has_title_case(part) ||
           (part.field && part.field->name == trade::FieldName::group);
}

// `After School Program`, where `after-school` stands elsewhere: two words before a third that they
// describe. What ends in a particle is a verb as well, and is written apart as one.
std::string apart_before_noun(const TextInResume& part, std::size_t i,
                              const std::set<std::string>& hyphenated) {
    const auto& words = part.words;
    if (hyphenated.empty() || i + 2 >= words.size()) return {};
    for (std::size_t k = i; k < i + 2; ++k) // nothing but a blank between
        if (words[k].offset + words[k].word.size() + 1 != words[k + 1].offset) return {};
    const std::string first(part.small(words[i])), second(part.small(words[i + 1]));
    if (!hyphenated.contains(first + '-' + second)) return {};
    for (const std::string_view word : {part.small(words[i + 1]), part.small(words[i + 2])})
        if (is_one_of(word, List::verb_particles) || is_one_of(word, List::function_words))
            return {};
    return first + ' ' + second;
}

// `data base`, where `database` may stand elsewhere; with the hyphen that it is compared by.
std::string joined_term(const TextInResume& part, std::size_t i) {
    const WordAt &word = part.words[i], &next = part.words[i + 1];
    if (word.offset + word.word.size() + 1 != next.offset) return {};
    std::string joined(part.small(word));
    joined += part.small(next);
    if (!is_one_of(singular(joined), List::joined_terms)) return {};
    return joined.insert(word.word.size(), 1, '-');
}

std::set<std::string> hyphenated_terms(const TextsRead& texts) {
    std::set<std::string> terms;
    for (const TextInResume& part : texts) {
        if (!may_hold_terms(part)) continue;
        for (const WordAt& word : part.words)
            if (std::ranges::count(word.word, '-') == 1 && !has_digit(word.word))
                terms.emplace(part.small(word));
    }
    return terms;
}

}

namespace {

struct NumbersOfSize { // in bullets, of one figure or of two
    std::size_t in_figures = 0, in_words = 0;
    std::optional<Spot> first_word;
};

bool is_ten_or_less(std::string_view word) {
    constexpr std::array<std::string_view, 8> small{"three", "four",  "five", "six",
                                                    "seven", "eight", "nine", "ten"};
    return is_one_of(word, small);
}

bool is_over_ten(std::string_view word) {
    return number_named(word) > 10;
}

NumbersOfSize count_numbers(const ProofContext& context, std::size_t figures,
                            bool (*is_spelled)(std::string_view)) {
    NumbersOfSize numbers;
    for (const WordedBullet& bullet : context.bullets)
        for (const WordAt& word : bullet.part.words) {
            numbers.in_figures += word.word.size() == figures && all_figures(word.word);
            if (!is_spelled(word.word) || word.offset == 0) continue;
            if (numbers.in_words++ == 0)
                numbers.first_word =
                    Spot{std::string(word.word), bullet.place({word.offset, word.word.size()})};
        }
    return numbers;
}

// `twelve`, where others of two figures stand in figures; and `five`, which may be a word by rule,
// where hardly another is one.
void numbers_in_words(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::size_t several = 3, many = 5;
    NumbersOfSize odd = count_numbers(context, 2, is_over_ten);
    if (odd.in_words == 0 || odd.in_figures < several) {
        odd = count_numbers(context, 1, is_ten_or_less);
        if (odd.in_words == 0 || odd.in_figures < many * odd.in_words) return;
    }
    report<messages::large_in_words>(findings, odd.first_word->place,
                                     in_quotes(odd.first_word->text));
}

}

void number_forms(const ProofContext& context, std::vector<Finding>& findings) {
    numbers_in_words(context, findings);
    mixed_commas(context, findings);
    words_and_figures(context, findings);
}

void term_forms(const ProofContext& context, std::vector<Finding>& findings) {
    ampersands(context, findings);
    Terms terms(findings);
    const std::set<std::string> hyphenated = hyphenated_terms(context.texts);
    std::set<std::string> told;
    for (const TextInResume& part : context.texts) {
        if (!may_hold_terms(part)) continue;
        made_names(part, told, findings);
        const auto& words = part.words;
        for (std::size_t i = 0; i < words.size(); ++i) {
            const WordAt& word = words[i];
            // the capitals of a title tell nothing
            terms.add({std::string(has_title_case(part) ? part.small(word) : word.word), &part.text,
                       word.offset, word.word.size()});
            if (i + 1 == words.size()) continue;
            const std::size_t length = words[i + 1].offset + words[i + 1].word.size() - word.offset;
            std::string term = joined_term(part, i);
            if (term.empty()) term = apart_before_noun(part, i, hyphenated);
            if (!term.empty()) terms.add({std::move(term), &part.text, word.offset, length});
        }
    }
}

}

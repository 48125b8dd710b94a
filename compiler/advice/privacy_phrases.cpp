// Numbers of identity and of licences, references and salaries, told by their words.
#include "compiler/advice/privacy_phrases.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/phrases.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/numbers.hpp"

#include <algorithm>
#include <array>

namespace quoin::advice {

namespace {

english::Extent extent_of(std::string_view whole, std::string_view part) {
    return {static_cast<std::size_t>(part.data() - whole.data()), part.size()};
}

std::string_view skipped(std::string_view text, std::string_view signs) {
    return text.substr(std::min(text.find_first_not_of(signs), text.size()));
}

// The word that `text` begins with, or nothing.
std::string_view first_word(std::string_view text) {
    const WordAt word = word_from(text.substr(0, text.find_first_of(" :,;$")), 0);
    return word.offset == 0 ? word.word : "";
}

// Words of `list` that `text` begins with, and the blanks after them, taken off.
std::string_view without_leading(std::string_view text, const auto& list) {
    while (true) {
        const std::string_view word = first_word(text);
        if (word.empty() || !is_one_of(word, list)) return text;
        text = skipped(text.substr(word.size()), " ");
    }
}

// --- numbers

// Social Security Administration: no area 000, 666 or 900 to 999, no group 00, no serial 0000.
bool is_social_security(std::string_view word) {
    if (word.size() != 11 || word[3] != '-' || word[6] != '-') return false;
    const std::string_view area = word.substr(0, 3), group = word.substr(4, 2),
                           serial = word.substr(7);
    if (!all_figures(area) || !all_figures(group) || !all_figures(serial)) return false;
    return area != "000" && area != "666" && area[0] != '9' && group != "00" && serial != "0000";
}

struct NamedNumber {
    std::string_view name;
    std::size_t least = 0; // figures, those hidden by a sign with them
};
// The longer before the shorter that it begins with.
constexpr std::array identity_numbers{
    NamedNumber{"ssn", 9},         NamedNumber{"social security", 9},
    NamedNumber{"itin", 9},        NamedNumber{"taxpayer identification", 9},
    NamedNumber{"passport", 6},    NamedNumber{"national identity", 6},
    NamedNumber{"national id", 6}, NamedNumber{"national insurance", 6},
    NamedNumber{"student id", 6},  NamedNumber{"student number", 6},
    NamedNumber{"employee id", 6}, NamedNumber{"employee number", 6}};

// The number right after its name: figures, signs that hide some, and what groups them.
std::string_view number_at(std::string_view text) {
    std::size_t end = 0, letters = 0;
    for (; end < text.size(); ++end) {
        const char c = text[end];
        const bool hides = c == 'x' || c == '*';
        const bool groups = c == ' ' || c == '-' || static_cast<unsigned char>(c) >= 0x80;
        if (is_figure(c) || hides || (groups && end > letters)) continue;
        if (!is_ascii_letter(c) || end != letters || ++letters > 2) break;
    }
    return trimmed(text.substr(0, end));
}

std::optional<std::string_view> labelled_number(std::string_view text, const NamedNumber& name) {
    constexpr std::array<std::string_view, 5> between{"number", "no", "num", "card", "is"};
    std::string_view rest = skipped(text.substr(name.name.size()), " .:#");
    for (std::string_view before; before != rest;) {
        before = rest;
        rest = skipped(without_leading(rest, between), " .:#");
    }
    const std::string_view number = number_at(rest);
    const auto shown = std::ranges::count_if(number, is_figure);
    const auto hidden = std::ranges::count_if(number, [](char c) { return c == 'x' || c == '*'; });
    const auto all = static_cast<std::size_t>(shown + hidden);
    constexpr std::ptrdiff_t least_shown = 4;
    constexpr std::size_t most = 12;
    if (shown < least_shown || all < name.least || all > most) return std::nullopt;
    return number;
}

// `SSN ends in 4471`: the last figures are what a bank asks for.
std::optional<std::string_view> last_figures(std::string_view rest, const NamedNumber& name) {
    constexpr std::size_t near = 24; // bytes
    const std::string_view after = rest.substr(name.name.size(), near);
    const std::size_t begin = after.find_first_of("0123456789");
    if (begin == std::string_view::npos) return std::nullopt;
    const std::string_view between = after.substr(0, begin);
    const bool told = has_phrase(between, "ends in") || has_phrase(between, "ending in") ||
                      has_phrase(between, "last four") || has_phrase(between, "last digits");
    const std::size_t end = std::min(after.find_first_not_of("0123456789", begin), after.size());
    return told && end - begin >= 4 ? std::optional(after.substr(begin, end - begin))
                                    : std::nullopt;
}

// --- licences

// "rn60123456", "123456-7"; at least so many signs, or figures.
std::string_view licence_token(std::string_view text) {
    std::size_t end = 0;
    while (end < text.size() && (is_letter_or_figure(text[end]) || text[end] == '-'))
        ++end;
    return text.substr(0, end);
}

// After "#", "no.", "number": four signs will do.
std::optional<std::string_view> signed_number(std::string_view text, std::size_t at) {
    constexpr std::size_t least = 4;
    if (at > 0 && is_letter_or_figure(text[at - 1])) return std::nullopt;
    const std::string_view rest = text.substr(at);
    for (const std::string_view sign : {"#", "no.", "no:", "no ", "number", "nr."}) {
        if (!rest.starts_with(sign)) continue;
        const auto token = licence_token(skipped(rest.substr(sign.size()), " .:#"));
        const bool figures_first = sign != "no " || (!token.empty() && is_figure(token[0]));
        if (token.size() >= least && has_digit(token) && figures_first) return token;
    }
    return std::nullopt;
}

// Right after the word: up to three letters and five figures, so that a year is none; or letters
// and figures mixed, as on a driver's.
std::optional<std::string_view> bare_number(std::string_view after) {
    constexpr std::size_t most_letters = 3, least_figures = 5;
    after = skipped(after, " :,-");
    if (after.starts_with('(')) after.remove_prefix(1);
    for (const std::string_view sign : {"no. ", "no.", "number "})
        if (after.starts_with(sign)) after.remove_prefix(sign.size());
    if (after.size() > 3 && is_ascii_letter(after[0]) && is_ascii_letter(after[1]) &&
        after[2] == ' ')
        after.remove_prefix(3); // a state
    const std::string_view token = licence_token(after);
    const std::size_t letters = std::min(token.find_first_of("0123456789"), token.size());
    const auto figures = static_cast<std::size_t>(std::ranges::count_if(token, is_figure));
    constexpr std::size_t mixed = 10;
    if (token.size() >= mixed && figures >= most_letters &&
        std::ranges::all_of(token, is_letter_or_figure))
        return token;
    if (letters > most_letters || figures < least_figures || token.size() - letters > figures + 1)
        return std::nullopt;
    return token;
}

// --- salaries

bool is_amount(std::string_view text) {
    return text.size() > 1 && text[0] == '$' && is_figure(text[1]);
}

// After a word for pay the sign may be left out: 85k, 62,000.
bool is_amount_of_pay(std::string_view text) {
    const std::size_t end = std::min(text.find_first_not_of("0123456789,."), text.size());
    const bool thousands = end > 0 && end < text.size() && text[end] == 'k';
    return is_amount(text) || thousands || (end >= 5 && is_figure(text[0]));
}

// "$18/hour", "$38,000 a year"; what follows it, or nothing if it is none.
std::optional<std::string_view> after_rate(std::string_view text) {
    if (!is_amount(text)) return std::nullopt;
    std::string_view rest = skipped(text.substr(1), "0123456789,.k");
    rest = skipped(rest, " ");
    for (const std::string_view whole : {"hourly", "annually", "yearly"})
        if (first_word(rest) == whole) return skipped(rest.substr(whole.size()), " .");
    bool per = rest.starts_with('/');
    if (per) rest = skipped(rest.substr(1), " ");
    for (const std::string_view word : {"per", "an", "a"})
        if (!per && first_word(rest) == word) {
            per = true;
            rest = skipped(rest.substr(word.size()), " ");
        }
    const std::string_view unit = first_word(rest);
    if (!per || !is_one_of(unit, List::units_of_pay)) return std::nullopt;
    return skipped(rest.substr(unit.size()), " .");
}

// After "salary" or the like: an amount, or that it can be talked about.
bool tells_amount(std::string_view rest) {
    constexpr std::array<std::string_view, 5> linking{"is", "of", "at", "range", "around"};
    constexpr std::array<std::string_view, 4> open{"negotiable", "open", "flexible", "doe"};
    const std::string_view value = without_leading(skipped(rest, " :-"), linking);
    return is_amount_of_pay(skipped(value, " :-")) || is_one_of(first_word(value), open);
}

constexpr std::array<std::string_view, 5> linked_to_pay{"of", "was", "is", "rate", "at"};

bool states_salary(std::string_view clause, WhereFrom from) {
    constexpr std::array<std::string_view, 9> asked{"requirement",  "requirements", "expectation",
                                                    "expectations", "sought",       "desired",
                                                    "wanted",       "expected",     "history"};
    constexpr std::array<std::string_view, 4> nouns{"salary", "wage", "wages", "compensation"};
    const std::string_view rest = without_leading(clause, List::kinds_of_salary);
    const std::string_view noun = first_word(rest);
    const bool is_pay = noun == "pay" || noun == "rate";
    if (!is_one_of(noun, nouns) && !is_pay) return false;
    std::string_view after = skipped(rest.substr(noun.size()), " ");
    const bool labels = after.starts_with(':');
    if (is_pay && from != WhereFrom::bullet && is_amount(after)) return true; // Final pay $14.20
    const bool sums = is_amount(skipped(without_leading(after, linked_to_pay), " :"));
    if (from == WhereFrom::bullet && !is_pay && sums) return true; // Salary of $41,000
    if (is_pay && after_rate(without_leading(after, linked_to_pay))) return true; // Pay rate $21/hr
    if (from == WhereFrom::bullet || is_pay) return labels && tells_amount(after);
    const std::string_view next = first_word(after);
    if (is_one_of(next, asked)) {
        after = skipped(after.substr(next.size()), " ");
        return after.empty() || after.starts_with(':') || tells_amount(after);
    }
    return tells_amount(after);
}

bool asks_for_pay(std::string_view clause) {
    const std::string_view first = first_word(clause);
    const bool asks = first == "seeking" || first == "asking" || first == "requesting" ||
                      first == "desiring" || first == "looking";
    return asks && after_rate(without_leading(clause, List::asking_for_pay)).has_value();
}

bool is_pay_alone(std::string_view clause) {
    constexpr std::array<std::string_view, 7> before{"paid", "earned", "earn",    "earning",
                                                     "at",   "base",   "salaried"};
    const auto after = after_rate(without_leading(clause, before));
    return after && after->empty();
}

// --- references

bool has_any_word(std::string_view text, const auto& list) {
    return std::ranges::any_of(words_in(text),
                               [&](const WordAt& word) { return is_one_of(word.word, list); });
}

bool is_offer_alone(std::string_view sentence) {
    bool offers = false;
    for (WordAt word = word_from(sentence, 0); !word.word.empty();
         word = word_from(sentence, word.offset + word.word.size())) {
        if (!is_one_of(word.word, List::words_of_references)) return false;
        offers = offers || is_one_of(word.word, List::words_of_offers);
    }
    return offers;
}

bool asks_for_references(std::string_view sentence) {
    return std::ranges::any_of(listed(List::words_for_references),
                               [&](auto words) { return has_phrase(sentence, words); });
}

// "References available upon request from three supervisors"
bool begins_with_offer(std::string_view sentence) {
    constexpr std::array<std::string_view, 6> before{"professional", "personal",  "academic",
                                                     "excellent",    "character", "my"};
    constexpr std::array<std::string_view, 9> next{"available", "upon", "on",  "furnished", "can",
                                                   "provided",  "will", "are", "may"};
    const std::string_view rest = without_leading(sentence, before);
    if (first_word(rest) != "references") return false;
    const std::string_view after = skipped(rest.substr(10), " :");
    return is_one_of(first_word(after), next) && has_any_word(after, List::words_of_offers);
}

// Pieces between full stops and semicolons.
std::vector<std::string_view> sentences_in(std::string_view text) {
    std::vector<std::string_view> sentences;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of(".;|"), text.size());
        const std::string_view sentence = trimmed(text.substr(0, end));
        if (!sentence.empty()) sentences.push_back(sentence);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return sentences;
}

}

std::vector<Clause> clauses_in(std::string_view text) {
    std::vector<Clause> clauses;
    bool first = true;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        const auto parts = [&](std::size_t i) {
            if (text[i] == ';' || text[i] == '|') return true;
            const bool last = i + 1 == text.size() || text[i + 1] == ' ';
            return (text[i] == ',' || text[i] == '.') && last;
        };
        while (end < text.size() && !parts(end))
            ++end;
        const std::string_view piece = trimmed(text.substr(at, end - at));
        if (!piece.empty()) {
            const english::Extent extent = extent_of(text, piece);
            clauses.push_back({extent, piece, text.substr(extent.offset), first});
        }
        first = end < text.size() && text[end] != ',';
        at = end + 1;
    }
    return clauses;
}

std::optional<english::Extent> identity_number_in(std::string_view lower) {
    if (!has_digit(lower)) return std::nullopt;
    for (const WordAt& word : words_in(lower))
        if (is_social_security(word.word)) return english::Extent{word.offset, word.word.size()};
    for (const NamedNumber& name : identity_numbers)
        for (std::size_t at = lower.find(name.name); at != std::string_view::npos;
             at = lower.find(name.name, at + 1)) {
            const std::string_view rest = lower.substr(at);
            if (find_phrase(lower, name.name) > at) continue; // within a word
            if (const auto number = labelled_number(rest, name)) return extent_of(lower, *number);
            if (const auto number = last_figures(rest, name)) return extent_of(lower, *number);
        }
    return std::nullopt;
}

namespace {

// `Paid $17 an hour`; but `Paid $17 an hour to pickers`, a deed.
bool is_own_pay(const Clause& clause) {
    constexpr std::array<std::string_view, 14> before{"paid", "earned", "earn", "earning", "making",
                                                      "made", "wage",   "left", "started", "at",
                                                      "was",  "took",   "home", "starting"};
    if (!clause.first || !is_one_of(first_word(clause.text), before)) return false;
    const auto after = after_rate(without_leading(clause.text, before));
    return after && first_word(*after) != "to";
}

}

namespace {

// `Received a raise from $16 to $18 per hour`
bool tells_of_raise(const Clause& clause) {
    constexpr std::array<std::string_view, 7> got{"received", "got", "given",  "earned",
                                                  "won",      "was", "awarded"};
    const bool amount = clause.text.find('$') != clause.text.npos;
    return clause.first && amount && is_one_of(first_word(clause.text), got) &&
           (has_phrase(clause.text, "raise") || has_phrase(clause.text, "pay increase"));
}

}

namespace {

// `Rang up 130 sales a day at $17.25 an hour`: no more than wages are by the hour; but `Hired 4
// aides at $18 an hour`, who are others.
std::optional<english::Extent> hourly_pay_in(std::string_view lower) {
    constexpr double least = 7, most = 60; // dollars
    constexpr std::array<std::string_view, 8> of_others{"hired",  "hire",    "paid",    "pay",
                                                        "billed", "offered", "billing", "rented"};
    std::size_t at = lower.find(" at $");
    if (at == lower.npos || std::ranges::any_of(of_others, [&](std::string_view verb) {
            return has_phrase(lower, verb);
        }))
        return std::nullopt;
    for (; at != lower.npos; at = lower.find(" at $", at + 1)) {
        const std::string_view rest = lower.substr(at + 4);
        const auto after = after_rate(rest);
        if (!after) continue;
        const std::string_view rate = trimmed(rest.substr(0, rest.size() - after->size()), " .");
        const auto dollars = grouped_number(rate.substr(1, rate.find_first_of(" /") - 1));
        const bool hourly =
            rate.ends_with("hour") || rate.ends_with("hr") || rate.ends_with("hourly");
        if (hourly && dollars && *dollars >= least && *dollars <= most)
            return extent_of(lower, rate);
    }
    return std::nullopt;
}

}

std::optional<english::Extent> salary_in(std::string_view lower, WhereFrom from) {
    for (const Clause& clause : clauses_in(lower)) {
        const bool told =
            states_salary(clause.text, from) || is_own_pay(clause) || tells_of_raise(clause) ||
            (from != WhereFrom::bullet && (asks_for_pay(clause.text) || is_pay_alone(clause.text)));
        if (told) return clause.extent;
    }
    return from == WhereFrom::bullet ? hourly_pay_in(lower) : std::nullopt;
}

std::optional<english::Extent> references_in(std::string_view lower, WhereFrom from) {
    for (const std::string_view sentence : sentences_in(lower)) {
        const bool alone = is_offer_alone(sentence) && asks_for_references(sentence);
        if (alone || (from != WhereFrom::bullet && begins_with_offer(sentence)))
            return extent_of(lower, sentence);
    }
    return std::nullopt;
}

bool says_on_request(std::string_view lower) {
    return std::ranges::any_of(sentences_in(lower), is_offer_alone);
}

std::optional<english::Extent> licence_number_in(std::string_view lower, WhereFrom from) {
    constexpr std::array<std::string_view, 8> before{"license",      "licence",      "licensed",
                                                     "registered",   "certified",    "certificate",
                                                     "registration", "certification"};
    if (!has_digit(lower)) return std::nullopt;
    bool named = false; // the number of a certificate serves nobody
    for (const WordAt& word : words_in(lower)) {
        if (!is_one_of(word.word, before)) continue;
        named = true;
        const std::string_view after = lower.substr(word.offset + word.word.size());
        if (from == WhereFrom::bullet) continue;
        if (const auto number = bare_number(after)) return extent_of(lower, *number);
    }
    for (std::size_t at = 0; named && at < lower.size(); ++at)
        if (const auto number = signed_number(lower, at)) return extent_of(lower, *number);
    return std::nullopt;
}

}

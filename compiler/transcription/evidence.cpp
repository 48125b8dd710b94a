#include "compiler/transcription/evidence.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/trade/lists.hpp"
#include "compiler/transcription/lists.hpp"

#include <algorithm>
#include <array>

namespace quoin::transcription {

namespace {

constexpr std::string_view around_words = " .,;:()[]\"'&/\t";

std::string singular(std::string_view word) {
    if (word.size() > 3 && word.ends_with('s') && !word.ends_with("ss")) word.remove_suffix(1);
    return std::string(word);
}

// `Players` are a company, `Player` is one of them.
bool is_role_word(const std::string& word) {
    if (is_one_of(word, List::role_words)) return true;
    if (is_one_of(word, List::org_words)) return false;
    if (is_one_of(singular(word), List::role_words)) return true;
    const std::size_t hyphen = word.rfind('-');
    return hyphen != std::string::npos && is_role_word(word.substr(hyphen + 1));
}

bool is_org_word(const std::string& word) {
    return is_one_of(word, List::org_words);
}

// `-er`, `-or`, `-ist`, `-ian`, `-eer`: who does something, mostly.
bool ends_as_doer(const std::string& word) {
    constexpr std::array<std::string_view, 5> endings = {"er", "or", "ist", "ian", "eer"};
    return word.size() > 4 && std::ranges::any_of(endings, [&](std::string_view ending) {
               return word.ends_with(ending);
           });
}

std::vector<std::string> lower_words(std::string_view text) {
    std::vector<std::string> words;
    const std::string lower = straight_apostrophes(lower_case(text));
    for (const std::string_view piece : pieces_of(lower, " "))
        for (const std::string_view half : pieces_of(piece, "/"))
            if (const auto word = trimmed(half, around_words); !word.empty())
                words.emplace_back(word);
    return words;
}

// What the text is about: up to what only tells more of it.
std::string_view head_phrase(std::string_view text) {
    constexpr std::array<std::string_view, 14> after = {
        " of ", " for ", " to ",     " in ",     " at ", " on ",   ",",
        " (",   " - ",   " \u2013 ", " \u2014 ", ": ",   " with ", " then "};
    std::size_t end = text.size();
    for (const std::string_view sign : after)
        end = std::min(end, text.find(sign));
    return text.substr(0, end);
}

// `Architects`: a firm of them, as a title is called in the singular.
bool is_plural_of_role(const std::string& word) {
    return word.ends_with('s') && !is_one_of(word, List::role_words) &&
           !is_one_of(word, List::org_words) && is_one_of(singular(word), List::role_words);
}

double lean_of(const std::string& word) {
    if (is_plural_of_role(word)) return 0;
    if (is_role_word(word)) return 1;
    if (is_org_word(word)) return -1;
    return 0;
}

// `Drafter I`, `Clerk 2`: a step of a ladder, after what is climbed.
void drop_steps(std::vector<std::string>& words) {
    constexpr std::array<std::string_view, 10> steps = {"i", "ii", "iii", "iv", "v",
                                                        "1", "2",  "3",   "4",  "5"};
    while (words.size() > 1 && is_one_of(words.back(), steps))
        words.pop_back();
}

// Names of firms have a capital in each word that counts; titles are often written as in a
// sentence: `Farm hand`, but `Kelder Mill Hardware`.
bool is_in_sentence_case(std::string_view phrase) {
    constexpr std::array<std::string_view, 16> small = {"of", "the", "for", "and", "in", "at",
                                                        "to", "on",  "a",   "an",  "or", "de",
                                                        "la", "by",  "du",  "y"};
    const auto words = pieces_of(phrase, " ");
    if (words.size() < 2 || words.front().empty() || !is_capital_letter(words.front().front()))
        return false;
    return std::ranges::any_of(words, [&](std::string_view word) {
        return word.size() > 2 && is_small_letter(word.front()) && !is_one_of(word, small);
    });
}

// What a name's form tells where its words do not.
double lean_of_form(std::string_view phrase) {
    if (is_in_sentence_case(phrase)) return 1;
    const bool firm = phrase.find(" & ") != phrase.npos || phrase.starts_with("The ") ||
                      phrase.find("'s ") != phrase.npos || phrase.find("\u2019s ") != phrase.npos;
    return firm ? -0.25 : 0;
}

}

double leans_to_role(std::string_view text) {
    const auto all = lower_words(text);
    if (all.empty()) return 0;
    if (is_one_of(lower_case(trimmed(head_phrase(text))), List::work_phrases)) return 3.5;
    auto head = lower_words(head_phrase(text));
    drop_steps(head);
    double lean = 0;
    if (!head.empty()) {
        const double last = lean_of(head.back());
        const bool described = last < 0 && is_in_sentence_case(head_phrase(text));
        lean += described ? 0.8 : 3 * last;
        if (last == 0 && ends_as_doer(head.back()) && !text.starts_with("The ")) lean += 0.7;
        if (last == 0) lean += lean_of_form(head_phrase(text));
    }
    double others = 0;
    for (const std::string& word : all)
        others += lean_of(word);
    return lean + std::clamp(others / 2, -1.0, 1.0);
}

bool names_school(std::string_view text) {
    return std::ranges::any_of(lower_words(text), [](const std::string& word) {
        return is_one_of(word, List::school_words);
    });
}

bool names_degree(std::string_view text) {
    if (has_phrase(lower_case(text), "high school diploma")) return true;
    for (std::string& word : lower_words(text)) {
        std::erase(word, '.');
        const auto hyphen = word.find('-');
        if (is_one_of(word, List::degree_words) ||
            (hyphen != std::string::npos && is_one_of(word.substr(0, hyphen), List::degree_words)))
            return true;
    }
    return false;
}

bool names_credential(std::string_view text) {
    constexpr std::array<std::string_view, 11> words = {
        "license", "licence", "licensed",   "certified", "certification", "exam", "certificate",
        "card",    "permit",  "credential", "cpr"};
    return std::ranges::any_of(lower_words(text),
                               [&](const std::string& word) { return is_one_of(word, words); });
}

namespace {

// By its last word a firm or an office, or what somebody is called; towns have words of their own.
bool names_work(std::string_view text) {
    constexpr std::array<std::string_view, 7> of_towns = {"city",  "town",    "port",   "harbor",
                                                          "inlet", "landing", "village"};
    const auto words = lower_words(text);
    if (words.empty() || is_one_of(words.back(), of_towns)) return words.empty();
    return lean_of(words.back()) != 0 || names_school(text) ||
           is_one_of(words.back(), List::degree_words);
}

}

std::vector<std::string_view> comma_parts(std::string_view text) {
    std::vector<std::string_view> parts;
    std::size_t begin = 0;
    int depth = 0;
    for (std::size_t i = 0; i <= text.size(); ++i) {
        if (i < text.size() && text[i] == '(') ++depth;
        if (i < text.size() && text[i] == ')' && depth > 0) --depth;
        if (i < text.size() && (text[i] != ',' || depth > 0)) continue;
        const auto part = trimmed(text.substr(begin, i - begin));
        if (!part.empty()) parts.push_back(part);
        begin = i + 1;
    }
    return parts;
}

bool may_be_town(std::string_view text) {
    constexpr std::size_t most_words_of_town = 3;
    std::size_t words = 0;
    for (const std::string_view word : pieces_of(text, " ")) {
        if (word.empty()) continue;
        const bool capital = is_capital_letter(word.front()) ||
                             (static_cast<unsigned char>(word.front()) >= 0x80 && word.size() > 2);
        if (!capital || ++words > most_words_of_town) return false;
    }
    return words > 0 && text.find_first_of("0123456789/@:()&\"") == text.npos && !names_work(text);
}

namespace {

// `WA and at sea`
std::string_view without_further_place(std::string_view part) {
    const std::size_t more = part.find(" and ");
    return more == 2 ? part.substr(0, more) : part;
}

bool ends_place(std::string_view part) { // a state or a country
    part = without_further_place(part);
    const std::string lower = lower_case(part);
    return is_one_of(part, trade::List::state_codes) || is_one_of(lower, List::state_names) ||
           is_one_of(lower, List::country_words);
}

// `98399`, `98399-1234`
std::string_view without_postal_code(std::string_view text) {
    const std::size_t last = text.rfind(' ');
    if (last == text.npos) return text;
    const std::string_view code = text.substr(last + 1);
    const bool is_code = code.size() >= 5 && code.find_first_not_of("0123456789-") == code.npos;
    return is_code ? trimmed(text.substr(0, last)) : text;
}

std::size_t offset_in(std::string_view text, std::string_view part) {
    return static_cast<std::size_t>(part.data() - text.data());
}

// `Gullhaven WA`: the town before a state's code, where one stands at the end.
std::string_view town_with_code(std::string_view part) {
    const std::size_t space = part.rfind(' ');
    if (space == part.npos) return {};
    const std::string_view town = trimmed(part.substr(0, space));
    const bool code = is_one_of(part.substr(space + 1), trade::List::state_codes);
    return code && may_be_town(town) ? town : std::string_view{};
}

}

void KnownTowns::learn(std::string_view text) {
    const auto parts = comma_parts(text);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string_view part = without_postal_code(parts[i]);
        if (const auto town = town_with_code(part); !town.empty()) towns_.emplace(town);
        if (i > 0 && ends_place(part) && may_be_town(parts[i - 1])) towns_.emplace(parts[i - 1]);
    }
}

bool KnownTowns::has(std::string_view town) const {
    return towns_.contains(town);
}

namespace {

// Bytes of ` (remote)` at the end.
std::size_t nowhere_at_end(std::string_view text) {
    const std::size_t open = text.rfind(" (");
    if (open == text.npos || open == 0 || !text.ends_with(')')) return 0;
    const std::string inside = lower_case(trimmed(text.substr(open), " ()"));
    return is_one_of(inside, List::nowhere_words) ? text.size() - open : 0;
}

}

std::size_t KnownTowns::place_at_end(std::string_view text) const {
    if (const std::size_t nowhere = nowhere_at_end(text); nowhere > 0) {
        const std::size_t place = place_at_end(text.substr(0, text.size() - nowhere));
        return place > 0 ? place + nowhere : 0;
    }
    const auto parts = comma_parts(text);
    if (parts.empty()) return 0;
    const std::string_view last = without_postal_code(parts.back());
    const std::size_t from = offset_in(text, parts.back());
    if (ends_place(last) && parts.size() > 1 && may_be_town(parts[parts.size() - 2]))
        return text.size() - offset_in(text, parts[parts.size() - 2]);
    const std::string lower = lower_case(last);
    if (parts.size() > 1 &&
        (is_one_of(lower, List::country_words) || is_one_of(lower, List::state_names)))
        return text.size() - from;
    const bool alone = has(last) || !town_with_code(last).empty() ||
                       is_one_of(lower_case(last), List::nowhere_words);
    return alone ? text.size() - from : 0;
}

}

#include "compiler/postings/names.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/english/nouns.hpp"
#include "compiler/english/sentence.hpp"
#include "compiler/postings/lists.hpp"
#include "compiler/postings/people.hpp"
#include "compiler/postings/said_phrases.hpp"
#include "compiler/trade/lists.hpp"

#include <algorithm>

namespace quoin::postings {

namespace {

// A state, or what ends as the names of employers do.
bool is_of_an_employer(const Phrase& phrase) {
    const bool small = std::ranges::any_of(phrase.words, is_small_letter);
    if (phrase.lower.size() == 1 && is_one_of(phrase.lower[0], List::short_names)) return true;
    if (!small && phrase.lower.size() == 1 && is_one_of(phrase.words, trade::List::state_codes))
        return true;
    if (is_one_of(phrase.words, trade::List::state_names)) return true;
    const std::size_t last = phrase.words.rfind(' ') + 1;
    return is_capital_letter(phrase.words.front()) && is_capital_letter(phrase.words[last]) &&
           small && is_one_of(phrase.lower.back(), List::ends_of_employers) &&
           std::ranges::none_of(phrase.words, is_figure); // ITIL 4 Foundation
}

// `Dr. Anneliese Okonjo`, or several words that no dictionary has and that all begin with capitals.
bool is_person(const Phrase& phrase, std::string_view sentence, const english::WordList& words) {
    constexpr std::string_view titles[] = {"Dr.", "Drs.", "Mr.",   "Mrs.",
                                           "Ms.", "Mx.",  "Prof.", "Professor"};
    const bool kin = phrase.lower.size() > 1 && is_one_of(phrase.lower[0], List::kin_and_chiefs);
    if (kin && is_capital_letter(phrase.words[phrase.words.find(' ') + 1])) return true;
    if (!is_capital_letter(phrase.words.front())) return false;
    const std::string_view before = trimmed(sentence.substr(0, phrase.extent.offset));
    if (std::ranges::any_of(titles, [&](std::string_view t) { return before.ends_with(t); }))
        return true;
    constexpr std::size_t longest_word = 24;
    const std::string_view near =
        before.substr(before.size() - std::min(before.size(), longest_word));
    const std::size_t blank = near.rfind(' ');
    const std::string_view who = blank == near.npos ? near : near.substr(blank + 1);
    const auto pieces = pieces_of(phrase.words, " ");
    const auto unlisted = [&](std::string_view piece) {
        return is_capital_letter(piece.front()) &&
               std::ranges::none_of(piece.substr(1), is_capital_letter) &&
               words.class_of(lower_case(piece)) == english::WordList::is_none;
    };
    if (is_one_of(trimmed(who, ":,"), List::kin_and_chiefs) && unlisted(pieces.front()))
        return true;
    const bool capitals = std::ranges::all_of(pieces, is_shaped_as_name);
    if (pieces.size() > 1 && capitals && std::ranges::any_of(pieces, is_given_name)) return true;
    return pieces.size() > 1 && std::ranges::all_of(pieces, [&](std::string_view piece) {
               return is_capital_letter(piece.front()) &&
                      std::ranges::none_of(piece.substr(1), is_figure) &&
                      std::ranges::none_of(piece.substr(1), is_capital_letter) &&
                      std::ranges::any_of(piece.substr(1), is_small_letter) &&
                      words.class_of(lower_case(piece)) == english::WordList::is_none;
           });
}

// Cold Harbor, WA
bool is_before_state(std::string_view after) {
    constexpr std::size_t code = 2;
    return after.starts_with(", ") && after.size() >= 2 + code &&
           is_one_of(after.substr(2, code), trade::List::state_codes) &&
           (after.size() == 2 + code || !is_ascii_letter(after[2 + code]));
}

// The Otter Room, in Merrow Hall; not: the Emergency Room.
bool is_building(const Phrase& phrase, std::string_view sentence) {
    constexpr std::string_view leads[] = {"the", "at", "in", "to", "from", "and", "of"};
    constexpr std::size_t longest_word = 8;
    if (phrase.lower.size() < 2 || !is_capital_letter(phrase.words.front()) ||
        !is_capital_letter(phrase.words[phrase.words.rfind(' ') + 1]) ||
        !is_one_of(phrase.lower.back(), List::ends_of_buildings))
        return false;
    const std::string_view before = trimmed(sentence.substr(0, phrase.extent.offset));
    const std::string_view near =
        before.substr(before.size() - std::min(before.size(), longest_word));
    const std::size_t blank = near.rfind(' ');
    return is_one_of(lower_case(blank == near.npos ? near : near.substr(blank + 1)), leads) &&
           !phrase.lower.front().ends_with("ing") &&
           !is_one_of(phrase.lower.front(), List::kinds_of_rooms);
}

// Harlan Bay, in Cold Harbor; not: Live Sound, Data Lake.
bool is_place(const Phrase& phrase, const Statement& statement, const english::WordList& words) {
    constexpr std::size_t longest_word = 24;
    const std::string_view after =
        std::string_view(statement.text)
            .substr(phrase.extent.offset + phrase.extent.length, longest_word);
    const std::string_view next = trimmed(after.substr(0, after.find_first_of(" ,.;:", 1)));
    if (is_capital_letter(phrase.words.front()) && !next.empty() &&
        is_capital_letter(next.front()) && is_one_of(lower_case(next), List::ends_of_places))
        return true; // Sable Point, of which the point is trimmed
    const bool named = phrase.lower.size() > 1 && is_capital_letter(phrase.words.front()) &&
                       is_capital_letter(phrase.words[phrase.words.rfind(' ') + 1]) &&
                       (is_one_of(phrase.lower.back(), List::ends_of_places) ||
                        is_one_of(phrase.lower.front(), List::beginnings_of_places));
    if (!named) return false;
    if (phrase.capitals && is_one_of(phrase.lower.back(), List::ends_of_places_alone)) return true;
    constexpr std::string_view leads[] = {" in",      " near",   " at", " to",    " from",
                                          " outside", " of",     " on", " along", " across",
                                          " off",     " around", "|",   "\u00B7"};
    std::string_view before =
        trimmed(std::string_view(statement.text).substr(0, phrase.extent.offset));
    if (before.ends_with(" the")) before = trimmed(before.substr(0, before.size() - 4));
    const bool placed =
        (!statement.item || statement.standing == Standing::duties) &&
        std::ranges::any_of(leads, [&](std::string_view lead) { return before.ends_with(lead); });
    return placed || is_before_state(after) ||
           std::ranges::any_of(phrase.lower, [&](const std::string& word) {
               return words.class_of(word) == english::WordList::is_none;
           });
}

// At Corbel Marsh, for The Lamp & Loaf; not: good at Excel. A person to ask for.
bool is_of_whom(const Phrase& phrase, std::string_view sentence) {
    constexpr std::size_t looked_at = 24;
    if (!is_capital_letter(phrase.words.front())) return false;
    const std::size_t end = phrase.extent.offset, begin = end - std::min(end, looked_at);
    const std::string_view typed = trimmed(sentence.substr(begin, end - begin));
    const std::string before = ' ' + lower_case(typed);
    constexpr std::string_view leads[] = {
        " at",        "join",      "reports to", "report to", "ask for",   "working for",
        "work for",   "call",      "contact",    "owned by",  "led by",    "run by",
        "founded by", "pair with", "alongside",  "meet with", "corner of", " aboard",
        "aboard the", " f/v",      " m/v",       " r/v",      " s/v"};
    constexpr std::string_view skilled[] = {
        "good at",  "skilled at",     "adept at",      "expert at", "great at",
        "handy at", "comfortable at", "proficient at", "quick at",  "experience at"};
    constexpr std::string_view vessels[] = {"f/v", "m/v", "r/v", "s/v"};
    const auto ends = [&](std::string_view lead) { return before.ends_with(lead); };
    const bool pair = typed.ends_with('&') && typed.find(" The ") != typed.npos;
    if (pair || typed.ends_with(" The") || is_one_of(phrase.lower.front(), vessels)) return true;
    return std::ranges::any_of(leads, ends) && std::ranges::none_of(skilled, ends);
}

// Under the supervision of a registered nurse; explains it to a harbormaster; supports the
// Development Director; (BLS) for Healthcare Providers: who others are.
bool is_another(const Phrase& phrase, std::string_view sentence) {
    constexpr std::size_t looked_at = 80;
    const std::size_t end = phrase.extent.offset, begin = end - std::min(end, looked_at);
    std::string before = ' ' + lower_case(trimmed(sentence.substr(begin, end - begin)));
    const bool chief =
        phrase.capitals && english::is_person_noun(phrase.lower.back(), english::Lexicon{});
    if (chief && (before.ends_with(" the") || before.ends_with(" our"))) return true;
    if (phrase.capitals && before.ends_with(") for")) return true;
    for (const std::string_view article : {" a", " an", " the", " our", " your"})
        if (before.ends_with(article)) before.resize(before.size() - article.size());
    const bool told = before.ends_with(" to") && says_any(before, List::verbs_of_telling);
    if (told && phrase.lower.size() == 1) return true;
    constexpr std::string_view leads[] = {" supervision of", " direction of", " guidance of",
                                          " supervised by",  " directed by",  " assigned by",
                                          " planned by",     " overseen by"};
    return std::ranges::any_of(leads,
                               [&](std::string_view lead) { return before.ends_with(lead); });
}

// Claudette, Mexico: a word that dictionaries have with a capital alone; not: Spanish, Linux. What
// an item asks for may be a tool.
bool is_proper(const Phrase& phrase, const Statement& statement, const english::WordList& words) {
    if (phrase.lower.size() > 1 || !is_shaped_as_name(phrase.words)) return false;
    if (is_given_name(phrase.words)) return true;
    constexpr std::size_t looked_at = 200;
    const bool asks = statement.standing <= Standing::preferred;
    const std::size_t end = phrase.extent.offset, begin = end - std::min(end, looked_at);
    const std::string_view before = std::string_view(statement.text).substr(begin, end - begin);
    if (asks && (statement.item || says_any(lower_case(before), List::lead_ins))) return false;
    return words.class_of(phrase.words) != english::WordList::is_none &&
           is_strange(phrase.words, words);
}

// From Brackwater Nursery: capitals of which the first is no word, after what leads to a place.
bool is_house(const Phrase& phrase, std::string_view sentence, const english::WordList& words) {
    constexpr std::string_view leads[] = {" from", " at", " by", " to", " from the", " by the"};
    const auto pieces = pieces_of(phrase.words, " ");
    const std::string_view before = trimmed(sentence.substr(0, phrase.extent.offset));
    return pieces.size() > 1 && is_shaped_as_name(pieces.front()) &&
           std::ranges::all_of(pieces,
                               [](std::string_view piece) { return is_capitalised(piece); }) &&
           std::ranges::any_of(leads, [&](auto lead) { return before.ends_with(lead); }) &&
           !before.ends_with("used to") && is_strange(pieces.front(), words);
}

bool is_of_grammar(const english::Sentence& sentence, std::size_t i) {
    namespace wc = english::word_class;
    return sentence.is(i, wc::determiner | wc::possessive | wc::pronoun);
}

bool is_bracket_or_sign(const english::Token& token) {
    using Kind = english::TokenKind;
    return token.depth > 0 || token.kind == Kind::sign || token.kind == Kind::open ||
           token.kind == Kind::close;
}

// Of `Studio Marrow was started by two sisters` its subject: capitals beyond the first word. A role
// is none: The Lab Aide prepares.
void add_subject(std::string_view text, std::set<std::string>& names) {
    const std::size_t second = text.find(' ', text.starts_with("The ") ? 4 : 0);
    if (!is_capital_letter(text.front()) || second + 1 >= text.size() ||
        is_small_letter(text[second + 1]))
        return;
    const english::Sentence sentence(text, {}, english::Lexicon{});
    std::vector<std::string> subject;
    std::size_t i = sentence.is_word(0, {"the"}) ? 1 : 0;
    for (; i < sentence.size(); ++i) {
        if (is_bracket_or_sign(sentence.token(i))) continue;
        if (!english::is_capital(sentence.token(i)) || is_of_grammar(sentence, i)) break;
        subject.push_back(sentence.word(i));
    }
    constexpr std::size_t fewest = 2, most = 5;
    if (subject.size() < fewest || subject.size() > most ||
        english::is_person_noun(subject.back(), english::Lexicon{}))
        return;
    const bool does = (sentence.forms(i).third && !sentence.is_word(i, {"is"})) ||
                      sentence.is_word(i, {"has", "was", "have", "were"});
    const bool used = sentence.is_word(i + 1, {"used", "required", "needed", "preferred"});
    if (does && !used) names.insert(subject.begin(), subject.end());
}

}

bool is_name(const Phrase& phrase, const Statement& statement, const english::WordList& words) {
    return is_of_an_employer(phrase) || is_building(phrase, statement.text) ||
           is_place(phrase, statement, words) || is_of_whom(phrase, statement.text) ||
           is_another(phrase, statement.text) || is_person(phrase, statement.text, words) ||
           is_proper(phrase, statement, words) || is_house(phrase, statement.text, words);
}

std::set<std::string> names_that_act(std::span<const Statement> statements) {
    std::set<std::string> names;
    for (const Statement& statement : statements)
        if (!statement.heading && !statement.item) add_subject(statement.text, names);
    return names;
}

std::size_t end_of_employer(std::string_view sentence) {
    constexpr std::size_t looked_at = 200;
    const std::string lower = lower_case(sentence.substr(0, looked_at));
    for (const std::string_view opening : {"if ", "when ", "as ", "while ", "since ", "because "})
        if (lower.starts_with(opening)) return 0;
    std::size_t end = lower.size();
    for (const std::string_view verb : listed(lines_of(List::verbs_of_hiring)))
        end = std::min(end, find_phrase(lower, verb));
    return end < lower.size() ? end : 0;
}

std::set<std::string> names_left_out(std::span<const Statement> statements) {
    std::set<std::string> names;
    for (const Statement& statement : statements) {
        if (!statement.left_out) continue;
        for (const std::string_view word : pieces_of(statement.text, " "))
            if (is_capital_letter(word.front()))
                names.insert(lower_case(trimmed(word, ".,:;!?()")));
    }
    return names;
}

std::vector<std::string> hosts_of(std::span<const Statement> statements) {
    std::vector<std::string> hosts;
    for (const Statement& statement : statements)
        for (const std::string_view word : pieces_of(statement.text, " ")) {
            const std::size_t at = word.find('@');
            const bool address = at != word.npos || word.find("www.") != word.npos ||
                                 (word.find('.') + 3 < word.size() && word.find('/') != word.npos);
            if (address) hosts.push_back(lower_case(word.substr(at == word.npos ? 0 : at)));
        }
    return hosts;
}

}

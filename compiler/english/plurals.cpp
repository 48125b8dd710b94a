// An apostrophe that makes a plural (40 PC's), one of several (11 fishing vessel), several before
// what they measure (a 30 pages report), and years that own what follows (6 years experience).
#include "compiler/english/plurals.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/english/nouns.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace quoin::english {
namespace {

namespace w = word_class;
using Kind = NumberSlip::Kind;

bool is_open(const Sentence& s, std::size_t i) { // of no closed class
    return s.token(i).kind == TokenKind::word && s.classes(i) == 0 && !s.token(i).title;
}

bool ends_noun(const Sentence& s, std::size_t i) { // what stands here is no part of a noun before
    const bool turn = s.is_word(i, {"a", "an", "per", "each", "every"}); // 20 box a day
    const bool counts_on = s.is(i, w::conjunction) && // 3 computer and 2 printers
                           (s.is_number(i + 1) || s.is(i + 1, w::determiner));
    return s.ends_phrase(i) || turn || counts_on ||
           s.is(i, w::preposition | w::relative | w::be | w::modal);
}

// More than one, and counted: 11, 2,000, three; not a year, nor a name's: Form 11, Level 3.
bool is_several(const Sentence& s, std::size_t i) {
    if (s.is(i, w::number)) return !s.is_word(i, {"zero"});
    if (s.is_word(i, {"several", "many", "few"})) return !s.is_word(i + 1, {"a", "an"});
    const std::string& figure = s.word(i);
    const bool plain = s.is_figure(i) && std::ranges::all_of(figure, [](char c) {
                           return quoin::is_figure(c) || c == ',';
                       });
    if (!plain || figure == "1" || figure == "0" || figure.front() == '0') return false;
    return figure.size() != 4 || !(figure.starts_with("19") || figure.starts_with("20"));
}

bool names_before(const Sentence& s, std::size_t i) { // room 12, Apollo 11, top 10, a 12
    if (i == 0) return false;
    const std::initializer_list<std::string_view> ranks{
        "grade",  "level", "phase", "type", "class", "age",     "ages", "top",  "tier",
        "stage",  "group", "team",  "page", "line",  "step",    "no",   "unit", "number",
        "season", "year",  "track", "room", "form",  "chapter", "week", "day"};
    const bool joined = s.is(i - 1, w::conjunction) && i > 2; // a grade 2 or 3 classroom
    if (joined && s.token(i - 2).kind == TokenKind::figure) return names_before(s, i - 2);
    return (is_capital(s.token(i - 1)) && i > 1) || s.is_word(i - 1, ranks) ||
           s.is(i - 1, w::determiner | w::possessive) || s.token(i - 1).kind == TokenKind::sign;
}

// `a $2 billion budget`, `a 3 million gallon tank`: the number is no more than a part of one.
bool is_of_scale(const Sentence& s, std::size_t i) {
    const bool scale = s.is_word(i, {"hundred", "thousand", "million", "billion"});
    if (!scale || i == 0 || s.token(i - 1).kind != TokenKind::figure) return false;
    return s.word(i - 1).starts_with('$') || (i > 1 && s.is(i - 2, w::determiner | w::possessive));
}

bool is_counted_noun(const Sentence& s, std::size_t i) {
    if (!is_open(s, i) || is_capital(s.token(i)) || is_plural_noun(s, i)) return false;
    if (s.is_word(i, {"team", "class", "committee", "club", "group", "minute"})) return true;
    if (s.is(i, List::groups) || s.is(i, List::stuff)) return false;
    return s.is(i, List::counted) || (is_person_noun(s, i) && s.forms(i).none());
}

bool describes(const Sentence& s, std::size_t i) { // new, fishing, local: before a noun
    if (s.is_word(i, {"new", "old", "big", "small", "large", "young", "local", "more", "other"}))
        return true;
    constexpr std::array<std::string_view, 6> endings{"ing", "ed", "al", "ic", "ive", "ous"};
    const std::string& word = s.word(i);
    return is_open(s, i) && !is_capital(s.token(i)) && word.size() > 4 &&
           std::ranges::any_of(endings, [&](auto ending) { return word.ends_with(ending); });
}

// `11 fishing vessel`, `140 household on well water`
std::optional<NumberSlip> one_of_several(const Sentence& s, std::size_t i) {
    if (!is_several(s, i) || names_before(s, i) || is_of_scale(s, i)) return std::nullopt;
    const bool described = describes(s, i + 1) && !ends_noun(s, i + 2); // 2,000 perennial a season
    const std::size_t noun = described ? i + 2 : i + 1;
    if (!is_counted_noun(s, noun) || !ends_noun(s, noun + 1)) return std::nullopt;
    if (s.token(noun + 1).kind == TokenKind::comma || s.token(noun + 1).kind == TokenKind::sign)
        return std::nullopt; // 4 cook, server and host shifts
    return NumberSlip{Kind::one_of_several, s.token(noun).extent, plural_form(s.word(noun)),
                      s.token(i).text};
}

// `both tank`, `these report`, `one of the guide`
std::optional<NumberSlip> one_of_those(const Sentence& s, std::size_t i) {
    const bool one_of = s.is_word(i, {"one", "each"}) && s.is_word(i + 1, {"of"}) &&
                        s.is_word(i + 2, {"the", "our", "my"});
    if (!one_of && !s.is_word(i, {"both", "these", "those"})) return std::nullopt;
    const std::size_t first = one_of ? i + 3 : i + 1;
    const std::size_t noun = describes(s, first) ? first + 1 : first;
    if (!is_counted_noun(s, noun) || (!one_of && !s.forms(first).none()) || !ends_noun(s, noun + 1))
        return std::nullopt;
    if (s.token(noun + 1).kind == TokenKind::comma || s.token(noun + 1).kind == TokenKind::sign ||
        s.is(noun + 1, w::conjunction)) // both cook and server
        return std::nullopt;
    return NumberSlip{Kind::one_of_several, s.token(noun).extent, plural_form(s.word(noun)),
                      one_of ? "one of the" : s.token(i).text};
}

// `Each students`, `every employees`
std::optional<NumberSlip> several_of_one(const Sentence& s, std::size_t i) {
    if (!s.is_word(i, {"each", "every"}) || !is_open(s, i + 1) || is_capital(s.token(i + 1)))
        return std::nullopt;
    const std::string& word = s.word(i + 1);
    if (!word.ends_with('s') || word.ends_with("ss") || !s.forms(i + 1).none()) return std::nullopt;
    const std::string one = word.substr(0, word.size() - 1);
    const bool counts = s.lexicon().has(one, List::counted) || is_person_noun(one, s.lexicon());
    if (!counts || s.lexicon().has(one, List::times)) return std::nullopt;
    return NumberSlip{Kind::several_of_one, s.token(i + 1).extent, one, s.token(i).text};
}

// `a 30 pages report`: what measures a thing stands in the singular, with a hyphen.
std::optional<NumberSlip> before_measured(const Sentence& s, std::size_t i) {
    if (!s.is_word(i, {"a", "an"}) || !is_several(s, i + 1)) return std::nullopt;
    const std::string& unit = s.word(i + 2);
    const std::string one = unit.ends_with('s') ? unit.substr(0, unit.size() - 1) : std::string();
    const bool measures = s.lexicon().has(one, List::times) || s.lexicon().has(one, List::counted);
    if (one.empty() || !measures || !is_open(s, i + 3) || is_plural_noun(s, i + 3))
        return std::nullopt;
    return NumberSlip{
        Kind::before_measured, s.extent(i + 1, i + 2), s.token(i + 1).text + '-' + one, {}};
}

// `6 years experience`, `2 weeks notice`
std::optional<NumberSlip> time_that_owns(const Sentence& s, std::size_t i) {
    const std::initializer_list<std::string_view> owned{"experience", "notice", "coursework"};
    const bool one = s.is_word(i, {"1", "one", "a"});
    const bool named = one ? s.is_word(i + 1, {"year", "month", "week", "day"})
                           : s.is_word(i + 1, {"years", "months", "weeks", "days", "yrs"}) ||
                                 s.is_word(i + 1, {"year", "month", "week", "day"});
    if (!named || (!one && !is_several(s, i) && !s.word(i).ends_with('+'))) return std::nullopt;
    const std::size_t thing = is_open(s, i + 2) && s.is_word(i + 3, owned) ? i + 3 : i + 2;
    if (!s.is_word(thing, owned) || (one && thing == i + 2 && s.is_word(i, {"a"})))
        return std::nullopt;
    const bool singular = !one && !s.word(i + 1).ends_with('s');
    if (singular && i > 0 && s.is(i - 1, w::determiner | w::possessive)) return std::nullopt;
    const std::string_view ending = one ? "'s" : singular ? "s'" : "'";
    return NumberSlip{
        Kind::no_apostrophe, s.token(i + 1).extent, s.token(i + 1).text + std::string(ending), {}};
}

// --- apostrophes

constexpr std::string_view sign = "'s";

bool is_owner_form(const Sentence& s, std::size_t i) {
    return s.token(i).kind == TokenKind::word && s.word(i).ends_with(sign) &&
           s.word(i).size() > sign.size() + 1;
}

// Of `nurse's, doctor's and patient's notes` each owns.
bool owns_further_on(const Sentence& s, std::size_t i) {
    constexpr std::size_t near = 10;
    for (std::size_t k = i + 1; k < s.size() && k < i + near; ++k) {
        if (s.token(k).kind == TokenKind::stop) return false;
        if (s.word(k).ends_with('\'') || is_owner_form(s, k)) return true;
    }
    return false;
}

// At the dentist's, a friend of my mother's: the place or the thing is left out.
bool leaves_thing_out(const Sentence& s, std::size_t i) {
    if (i > 0 && is_several(s, i - 1)) return false;
    for (std::size_t k = i; k-- > 0 && k + 4 > i;)
        if (s.is_word(k, {"at", "from", "of", "to", "than", "as"})) return true;
    return false;
}

bool is_whole_by_itself(std::string_view owner) { // master's, women's: in use without the thing
    constexpr std::array<std::string_view, 23> alone{
        "let",   "it",       "he",      "she",      "that",   "what",      "who",    "there",
        "here",  "how",      "where",   "everyone", "master", "bachelor",  "doctor", "associate",
        "women", "children", "another", "one",      "today",  "president", "dean"};
    return is_one_of(owner, alone) || owner == "men" || owner == "people" || owner == "else";
}

// `40 PC's in one night`, `taught 22 student's`, `for new hire's`
std::optional<NumberSlip> plural_with_apostrophe(const Sentence& s, std::size_t i) {
    if (!is_owner_form(s, i) || s.token(i).title || s.token(i).depth > 0) return std::nullopt;
    const std::string& typed = s.token(i).text;
    const std::string owner = typed.substr(0, typed.size() - sign.size());
    const bool initials = owner.size() > 1 && std::ranges::all_of(owner, is_capital_letter);
    if (is_capital(s.token(i)) && !initials) return std::nullopt; // Macy's
    const std::string small = lower_case(owner);
    if (is_whole_by_itself(small) || word_classes(small, s.lexicon()) != 0) return std::nullopt;
    const bool alone = s.ends_phrase(i + 1) || s.is(i + 1, w::preposition | w::relative) ||
                       s.is_word(i + 1, {"and", "or"}) ||
                       (i > 0 && is_several(s, i - 1) && s.is(i + 1, w::determiner));
    if (s.token(i + 1).kind == TokenKind::quote || s.token(i + 1).kind == TokenKind::sign)
        return std::nullopt;
    const bool list = s.is_word(i + 1, {"and", "or"}) || s.token(i + 1).kind == TokenKind::comma;
    if (!alone || (list && owns_further_on(s, i)) || leaves_thing_out(s, i)) return std::nullopt;
    if (s.is_word(i + 1, {"own", "like", "past", "inside", "outside", "near", "down"}))
        return std::nullopt; // they stand before things as well
    return NumberSlip{Kind::plural_with_apostrophe,
                      s.token(i).extent,
                      initials ? owner + 's' : plural_form(owner),
                      {}};
}

}

std::string plural_form(std::string_view noun) {
    const auto ends = [&](std::string_view ending) { return noun.ends_with(ending); };
    std::string base(noun);
    if (ends("man") && noun.size() > 3) return base.substr(0, base.size() - 2) + "en";
    if (ends("lf")) return base.substr(0, base.size() - 1) + "ves";
    if (ends("child")) return base + "ren";
    const bool vowel_before =
        noun.size() > 1 && std::string_view("aeiou").find(noun[noun.size() - 2]) != noun.npos;
    if (ends("y") && !vowel_before) return base.substr(0, base.size() - 1) + "ies";
    const bool hisses = ends("s") || ends("x") || ends("z") || ends("ch") || ends("sh");
    return base + (hisses ? "es" : "s");
}

std::vector<NumberSlip> find_number_slips(const Sentence& sentence) {
    std::vector<NumberSlip> found;
    for (std::size_t i = 0; i < sentence.size(); ++i) {
        if (sentence.token(i).title) continue;
        for (const auto& look : {one_of_several, one_of_those, several_of_one, before_measured,
                                 time_that_owns, plural_with_apostrophe})
            if (auto one = look(sentence, i)) {
                found.push_back(std::move(*one));
                break;
            }
    }
    return found;
}

}

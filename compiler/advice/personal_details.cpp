// Personal details, told by the words of a line: age, birth, marital status and the like.
#include "compiler/advice/lists.hpp"
#include "compiler/advice/privacy_phrases.hpp"
#include "compiler/base/phrases.hpp"

#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace quoin::advice {

namespace {

enum class ToldValue {
    any,
    one,      // and no list, which would be of skills
    figure,   // begins with one
    measures, // figures and units, and nothing else
    words,    // begins with one of those that tell
};

struct Labelled {
    std::string_view label; // lower case
    std::string_view what;
    ToldValue value{};
};
constexpr std::array told_labels{Labelled{"age", "your age", ToldValue::figure},
                                 Labelled{"born", "your date of birth", ToldValue::figure},
                                 Labelled{"dob", "your date of birth", ToldValue::any},
                                 Labelled{"d.o.b.", "your date of birth", ToldValue::any},
                                 Labelled{"birthday", "your date of birth", ToldValue::any},
                                 Labelled{"birth date", "your date of birth", ToldValue::any},
                                 Labelled{"birthdate", "your date of birth", ToldValue::any},
                                 Labelled{"married", "your marital status", ToldValue::any},
                                 Labelled{"religion", "your religion", ToldValue::one},
                                 Labelled{"ethnicity", "your ethnicity", ToldValue::one},
                                 Labelled{"height", "your height", ToldValue::measures},
                                 Labelled{"weight", "your weight", ToldValue::measures},
                                 Labelled{"health", "your health", ToldValue::words},
                                 Labelled{"sex", "your sex", ToldValue::words},
                                 Labelled{"gender", "your gender", ToldValue::words},
                                 Labelled{"race", "your race", ToldValue::words},
                                 Labelled{"photo", "your photo", ToldValue::words},
                                 Labelled{"photograph", "your photo", ToldValue::words}};

struct ToldPhrase {
    std::string_view words; // lower case
    std::string_view what;
};
// At the beginning of a clause.
constexpr std::array told_phrases{ToldPhrase{"date of birth", "your date of birth"},
                                  ToldPhrase{"place of birth", "your place of birth"},
                                  ToldPhrase{"marital status", "your marital status"},
                                  ToldPhrase{"civil status", "your marital status"},
                                  ToldPhrase{"religious affiliation", "your religion"},
                                  ToldPhrase{"blood type", "your health"},
                                  ToldPhrase{"photo attached", "your photo"},
                                  ToldPhrase{"photo enclosed", "your photo"}};

bool is_measure(std::string_view value) {
    return has_digit(value) && std::ranges::all_of(words_in(value), [](const WordAt& word) {
               return is_figure(word.word.front()) || is_one_of(word.word, List::measured_in);
           });
}

bool is_certificate(std::string_view value) {
    return value.find("certif") != value.npos || value.find("cpr") != value.npos;
}

// Where a line is there for the label alone, its value need not be known: Health: mild asthma.
bool tells_in_pair(const Labelled& labelled, std::string_view value) {
    return labelled.value == ToldValue::words && !value.empty() && !is_certificate(value);
}

bool tells(const Labelled& labelled, std::string_view value, bool is_list) {
    if (labelled.label == "born") return has_digit(value); // March 4, 2008
    switch (labelled.value) {
    case ToldValue::any:
        return !value.empty();
    case ToldValue::one:
        return !value.empty() && !is_list;
    case ToldValue::figure:
        return !value.empty() && is_figure(value.front());
    case ToldValue::measures:
        return is_measure(value);
    case ToldValue::words:
        break;
    }
    const auto words = words_in(value);
    return !words.empty() && is_one_of(words.front().word, List::telling);
}

bool begins_with(std::string_view text, std::string_view phrase) {
    return text.starts_with(phrase) &&
           (text.size() == phrase.size() || !is_word_byte(text[phrase.size()]));
}

std::string_view after(std::string_view text, std::string_view phrase) {
    text.remove_prefix(phrase.size());
    text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
    return text;
}

std::optional<std::string_view> labelled_detail(const Clause& clause, WhereFrom from) {
    const std::size_t colon = clause.text.find(':');
    if (colon == std::string_view::npos) return std::nullopt;
    const std::string_view label = clause.text.substr(0, colon);
    const std::string_view value = after(clause.text, clause.text.substr(0, colon + 1));
    const bool is_list = clause.rest.find(',') != std::string_view::npos;
    if ((from == WhereFrom::pair || from == WhereFrom::text) && !value.empty() &&
        !is_certificate(value))
        if (const auto what = said_of(label, lines_of(List::told_labels))) return what;
    for (const Labelled& labelled : told_labels)
        if (label == labelled.label &&
            (tells(labelled, value, is_list) ||
             (from == WhereFrom::pair && tells_in_pair(labelled, value))))
            return labelled.what;
    return std::nullopt;
}

// --- of oneself, in sentences

bool has_year_of_birth(std::string_view text) {
    return std::ranges::any_of(words_in(text), [](const WordAt& word) {
        return word.word.size() == 4 && all_figures(word.word) &&
               (word.word.starts_with("19") || word.word.starts_with("20"));
    });
}

// "born march 3, 2005", "dob 3/3/2005", "born in 2005"; "born digital" is not.
bool tells_birth(std::string_view rest) {
    constexpr std::size_t near = 40; // bytes
    if (begins_with(rest, "dob") && has_digit(rest.substr(0, near))) return true;
    if (begins_with(rest, "i was")) rest = after(rest, "i was");
    if (!begins_with(rest, "born")) return false;
    rest = after(rest, "born");
    const bool in_or_on = begins_with(rest, "in") || begins_with(rest, "on");
    if (in_or_on) rest = after(rest, "in");
    const bool dated =
        !rest.empty() && (is_figure(rest.front()) || trade::month_named(rest.substr(0, 3)));
    return dated && (has_year_of_birth(rest.substr(0, near)) || rest.find('/') < near);
}

// "father of two", "proud single mom of 3"
bool is_parent(std::string_view start) {
    constexpr std::array<std::string_view, 6> kinds{"proud",   "single", "married",
                                                    "devoted", "a",      "busy"};
    const auto words = words_in(start);
    std::size_t i = 0;
    while (i < words.size() && is_one_of(words[i].word, kinds))
        ++i;
    return i + 1 < words.size() && is_one_of(words[i].word, List::parents) &&
           words[i + 1].word == "of";
}

// "single mother and student", "christian wife and mother": a kind, or two of them.
bool is_at_home(std::string_view start) {
    const auto words = words_in(start);
    std::size_t i = 0;
    while (i < words.size() && is_one_of(words[i].word, List::kinds_of_parents))
        ++i;
    if (i >= words.size() || !is_one_of(words[i].word, List::at_home)) return false;
    const bool two = i + 2 < words.size() && words[i + 1].word == "and" &&
                     is_one_of(words[i + 2].word, List::at_home);
    return i > 0 || two;
}

std::optional<std::string_view> opened_by(std::string_view clause, std::string_view lines) {
    for (const std::string_view phrase : listed_once(lines))
        if (begins_with(clause, phrase)) return said_of(phrase, lines);
    return std::nullopt;
}

// "legally blind", "i was diagnosed with": at the beginning of a clause of prose.
std::optional<std::string_view> told_at_opening(std::string_view clause) {
    for (const std::string_view opening : {"i am", "i'm", "i\u2019m", "i was", "currently", "am"})
        if (begins_with(clause, opening)) clause = after(clause, opening);
    return opened_by(clause, lines_of(List::told_opening));
}

// "70% disability rating from the va", "rated 30% disabled"
bool tells_rating(std::string_view clause) {
    const std::string_view value = begins_with(clause, "rated") ? after(clause, "rated") : clause;
    const std::size_t end = value.find_first_not_of("0123456789");
    if (end == 0 || end == value.npos || value[end] != '%') return false;
    const std::string_view what = value.substr(end + 1);
    return has_phrase(what, "disability rating") || has_phrase(what, "disabled") ||
           has_phrase(what, "service-connected");
}

// "married senior in social work": which kind of person, and nothing that was married or widowed.
bool is_kind_of_person(std::string_view start) {
    constexpr std::array<std::string_view, 3> kinds{"married", "divorced", "widowed"};
    const auto words = words_in(start);
    return words.size() > 1 && is_one_of(words[0].word, kinds) &&
           is_one_of(words[1].word, List::persons);
}

// "married with two children", "single, no children"
bool tells_family(const Clause& clause) {
    constexpr std::size_t near = 40; // bytes
    if (clause.text == "married" || clause.text == "divorced" || clause.text == "widowed")
        return true;
    for (const std::string_view alone :
         {"single mother", "single father", "single parent", "single mom", "single dad"})
        if (has_phrase(clause.text, alone)) return true;
    const std::string_view start = clause.rest.substr(0, near);
    if (is_parent(start) || (clause.first && (is_at_home(start) || is_kind_of_person(start))))
        return true;
    if (!begins_with(start, "married") && !begins_with(start, "single")) return false;
    const std::string_view then = after(start, start.substr(0, start.find_first_of(" ,")));
    const bool joined = then.starts_with(',') || begins_with(then, "with") ||
                        begins_with(then, "no") || begins_with(then, "and");
    return joined && (has_phrase(start, "children") || has_phrase(start, "child") ||
                      has_phrase(start, "kids"));
}

Clause without_label(Clause clause, WhereFrom from) {
    const std::size_t colon = clause.text.find(": ");
    const bool labelled = from == WhereFrom::pair || from == WhereFrom::group;
    if (!labelled || colon == clause.text.npos) return clause;
    clause.text.remove_prefix(colon + 2);
    clause.rest.remove_prefix(colon + 2);
    return clause;
}

// A clause of its own: `single`, `in excellent health`, `age 46`.
std::optional<std::string_view> told_alone(const Clause& clause) {
    if (const auto what = said_of(clause.text, lines_of(List::told_alone))) return what;
    for (const std::string_view opening : {"age", "aged"}) {
        if (!begins_with(clause.text, opening)) continue;
        const std::string_view value = after(clause.text, opening);
        const bool figures = value.size() == 2 && is_figure(value[0]) && is_figure(value[1]);
        if (figures) return "your age";
    }
    return std::nullopt;
}

// What stands behind the figure of an age: "-year-old student", " years old and over".
bool is_own_age(std::string_view tail, bool of_self) {
    constexpr std::size_t near = 3; // words
    for (const std::string_view form : {" years old", " years of age"}) {
        if (!begins_with(tail, form)) continue;
        const std::string_view then = after(tail, form);
        constexpr std::array<std::string_view, 7> bounds{"over",    "up",    "older", "under",
                                                         "younger", "above", "below"};
        const auto words = words_in(then);
        const bool bounded = words.size() > 1 && is_one_of(words[1].word, bounds);
        return !bounded && (of_self || then.empty() || begins_with(then, "and"));
    }
    for (const std::string_view form : {"-year-old", " year old", "-years-old"}) {
        if (!begins_with(tail, form)) continue;
        const auto words = words_in(tail.substr(form.size()));
        const auto end = words.begin() + static_cast<std::ptrdiff_t>(std::min(near, words.size()));
        return of_self || words.empty() || std::any_of(words.begin(), end, [](const WordAt& word) {
                   return is_one_of(word.word, List::persons);
               });
    }
    return false;
}

// What one is oneself, before the age: `cellist`, not `adults` nor `care of a woman`.
bool is_own_noun(std::string_view text, std::size_t end) {
    const auto words = words_in(text.substr(0, end));
    return !words.empty() && words.size() < 3 && !words.back().word.ends_with('s') &&
           words.front().word != "for" && words.front().word != "of";
}

// `6 ft 1 in, 195 lb`, whatever the label says.
bool tells_body(std::string_view line) {
    bool height = false, weight = false;
    if (!has_digit(line)) return false;
    for (const Clause& clause : clauses_in(line)) {
        const std::size_t colon = clause.text.find(": ");
        std::string_view value = clause.text.substr(colon == clause.text.npos ? 0 : colon + 2);
        for (const std::string_view label : {"height", "weight"})
            if (begins_with(value, label)) value = after(value, label); // Height 6 ft 1 in
        if (!is_measure(value)) continue;
        const bool feet = has_phrase(value, "ft") || has_phrase(value, "feet");
        height = height || (feet && has_phrase(value, "in")) || has_phrase(value, "tall");
        weight = weight || has_phrase(value, "lb") || has_phrase(value, "lbs") ||
                 has_phrase(value, "pounds") || has_phrase(value, "kg");
    }
    return height && weight;
}

// `No arrests since my 2022 DUI`, `Clean record apart from one dismissed charge`; but not a summary
// of one who works with such cases.
bool tells_record(std::string_view line) {
    const auto words = words_in(line);
    const bool of_self =
        !words.empty() &&
        (is_one_of(words.front().word, List::openings_of_records) || has_phrase(line, "my"));
    return of_self && std::ranges::any_of(listed(List::records_of_law), [&](std::string_view one) {
               return has_phrase(line, one);
           });
}

// `Raised 3 children, the youngest with cerebral palsy`: of kin, and not of clients.
bool tells_of_sick_kin(std::string_view lower, const Phrased& phrased) {
    const auto has_any = [&](std::initializer_list<std::string_view> phrases) {
        return std::ranges::any_of(phrases, [&](auto one) { return phrased.has(one); });
    };
    const bool raised =
        begins_with(lower, "raised") && has_any({"children", "child", "son", "daughter"});
    const bool kin = raised || has_any({"my son", "my daughter", "my child", "my husband",
                                        "my wife", "my mother", "my father"});
    if (!kin || !has_any({"with", "has", "had"})) return false;
    return std::ranges::any_of(listed(List::conditions),
                               [&](std::string_view one) { return phrased.has(one); });
}

// `58 years old`, of `Office manager, 58 years old, who has run …`
bool is_age_alone(std::string_view clause) {
    const auto words = words_in(clause);
    return words.size() == 3 && words[0].word.size() == 2 && all_figures(words[0].word) &&
           words[1].word == "years" && words[2].word == "old";
}

// "22 years old", "i am a 21-year-old student", "age 22": at the beginning of a sentence, or as a
// piece of the headline.
bool tells_own_age(const Clause& clause, WhereFrom from) {
    constexpr int youngest = 14, oldest = 80;
    std::string_view text = clause.text;
    if (from == WhereFrom::text && is_age_alone(text)) return true;
    if (!clause.first && from != WhereFrom::heading) return false;
    bool of_self = false;
    for (const std::string_view opening : {"i am", "i'm", "i\u2019m", "am", "currently", "a", "an"})
        if (begins_with(text, opening)) {
            of_self = of_self || opening.starts_with('i') || opening == "am";
            text = after(text, opening);
        }
    bool aged = false;
    if (const std::size_t at = text.find(" aged "); at != text.npos && is_own_noun(text, at))
        text = text.substr(at + 1); // cellist aged 24
    for (const std::string_view opening : {"age", "aged"})
        if (begins_with(text, opening)) {
            aged = true;
            text = after(text, opening);
        }
    int years = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), years);
    if (fault != std::errc{} || years < youngest || years > oldest) return false;
    const std::string_view tail = text.substr(static_cast<std::size_t>(end - text.data()));
    if (aged) return tail.empty() || begins_with(trimmed(tail), "with");
    return is_own_age(tail, of_self);
}

}

namespace {

// Of a deed nothing is said: only what a whole bullet tells, or says in words for nothing else.
std::optional<std::string_view> told_by_bullet(std::string_view lower) {
    const Phrased phrased(lower);
    for (const std::string_view phrase : listed(List::told_within))
        if (phrased.has(phrase)) return said_of(phrase, lines_of(List::told_within));
    if (tells_body(lower)) return "your height";
    if (tells_of_sick_kin(lower, phrased)) return "the health of your family";
    const auto clauses = clauses_in(lower);
    if (clauses.empty()) return std::nullopt;
    const Clause& first = clauses.front();
    if (tells_birth(first.rest)) return "your date of birth";
    if (tells_family(first)) return "your family";
    if (tells_own_age(first, WhereFrom::bullet)) return "your age";
    const bool whole = clauses.size() == 1 || first.text.find(' ') != first.text.npos ||
                       first.text == "divorced" || first.text == "christian";
    if (const auto alone = told_alone(first); alone && whole) return alone; // not Separated, sorted
    if (const std::size_t colon = first.text.find(':'); colon != first.text.npos)
        return said_of(first.text.substr(0, colon), lines_of(List::told_anywhere));
    if (tells_rating(first.text)) return "your health";
    return opened_by(first.text, lines_of(List::told_by_bullets));
}

}

std::optional<std::string_view> personal_detail_in(std::string_view lower, WhereFrom from) {
    if (from == WhereFrom::bullet) return told_by_bullet(lower);
    if (tells_body(lower)) return "your height";
    if (from != WhereFrom::group && tells_record(lower)) return "your record";
    const bool personal = from != WhereFrom::group ||
                          is_one_of(lower.substr(0, std::min(lower.find(':'), lower.size())),
                                    List::labels_of_persons);
    for (const Clause& clause : clauses_in(lower)) {
        const std::string_view text =
            begins_with(clause.text, "my") ? after(clause.text, "my") : clause.text;
        for (const ToldPhrase& phrase : told_phrases)
            if (begins_with(text, phrase.words)) return phrase.what;
        if (const auto what = labelled_detail(clause, from)) return what;
        if (!personal) continue;
        const Clause value = without_label(clause, from);
        const bool prose = from == WhereFrom::text || from == WhereFrom::heading;
        const bool closes = value.rest.size() <= value.text.size() + 1; // Single, double entries
        if (const auto what = told_alone(value);
            what && (closes || !prose || has_digit(value.text)))
            return what;
        if (from == WhereFrom::field) {
            if (const auto what = opened_by(clause.text, lines_of(List::told_by_bullets)))
                return what;
            continue;
        }
        if (tells_rating(value.text)) return "your health";
        if (from == WhereFrom::group)
            if (const auto what = told_at_opening(value.text)) return what;
        if (from == WhereFrom::text || from == WhereFrom::heading || from == WhereFrom::pair)
            if (const auto what = told_at_opening(clause.text)) return what;
        if (tells_birth(value.rest)) return "your date of birth";
        if (tells_family(value)) return "your family";
        if (tells_own_age(value, from)) return "your age";
    }
    return std::nullopt;
}

}

// How bullets open, and whether their verbs fit the time of the entry.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <utility>

namespace quoin::advice {

namespace {

using enum trade::Holds;
using Opening = english::BulletReading::Opening;

bool is_in_capitals(std::string_view word) {
    return word.size() > 1 && is_capitalised(word.substr(0, 1)) && is_capitalised(word.substr(1));
}

// --- tense

// The verb as it would be right, in the case it is typed in; empty for forms of `be`.
std::string in_tense(std::string_view verb, WhenDone when, const english::Language& language) {
    if (is_in_capitals(verb)) return {}; // QA 12 builds
    const auto form = when == WhenDone::ended ? language.past_of(verb) : language.base_of(verb);
    if (!form || *form == "be" || *form == "was") return {};
    return is_capitalised(verb) ? capitalised(*form) : *form;
}

bool is_gerund(std::string_view verb) { // not Ring and Bring
    constexpr std::array<std::string_view, 9> bases{"bring", "cling", "fling", "ring",  "sing",
                                                    "sling", "sting", "swing", "string"};
    const std::string lower = lower_case(verb);
    return lower == "to" || (lower.ends_with("ing") && !is_one_of(lower, bases));
}

Finding& report_tense(const WordedBullet& bullet, const english::Extent& wrong,
                      const std::vector<std::string>& verbs, WhenDone when,
                      std::vector<Finding>& findings) {
    const bool ended = when == WhenDone::ended;
    const std::string entry = called(*bullet.position.entry);
    const std::string all = joined(verbs, " and ", all_of_them, in_quotes);
    const std::string_view are = verbs.size() == 1 ? "is" : "are";
    const std::string now =
        ended ? fill<messages::has_ended>(entry) : fill<messages::goes_on>(entry);
    const Place place = bullet.place(wrong);
    return is_gerund(verbs.front())
               ? report<messages::no_tense>(findings, place, all, are, now)
               : report<messages::wrong_tense>(findings, place, all, are,
                                               ended ? "present" : "past", now);
}

// What stands behind a comma goes on with the list of things, and tells nothing that came of them.
bool is_list_alone(std::string_view text) {
    constexpr std::array<std::string_view, 7> clauses{"which", "that", "so",   "who",
                                                      "where", "when", "while"};
    const std::size_t comma = text.find(',');
    if (comma == std::string_view::npos || text.find(", and ", comma) == std::string_view::npos)
        return false;
    const auto words = words_in(text.substr(comma));
    return std::ranges::none_of(words, [&](const WordAt& word) {
        const bool past = word.word.ends_with("ed") && !word.word.ends_with("eed");
        return word.word.ends_with("ing") || past || is_one_of(word.word, clauses);
    });
}

// `Ran the desk on weekends`, `on most evenings`; but `on 2 evenings`.
bool is_on_turns(std::string_view text) {
    const auto words = words_in(text);
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::string word = lower_case(words[i].word);
        if (!word.ends_with('s')) continue;
        const std::string before = lower_case(words[i - 1].word);
        const bool most =
            i > 1 && (before == "most" || before == "all") && words[i - 2].word == "on";
        if ((before == "on" || most) &&
            is_one_of(std::string_view(word).substr(0, word.size() - 1), List::turns))
            return true;
    }
    return false;
}

// `from 8 p.m. to midnight`: the hours of a shift.
bool is_at_hours(std::string_view text) {
    for (std::size_t at = text.find("from "); at != text.npos; at = text.find("from ", at + 1)) {
        const std::string_view hours = text.substr(at + 5);
        const std::size_t end = hours.find_first_not_of("0123456789:");
        if (end == 0 || end == hours.npos) continue;
        const std::string_view half = trimmed(hours.substr(end, 6));
        if (half.starts_with("a.m.") || half.starts_with("p.m.") || half.starts_with("am ") ||
            half.starts_with("pm "))
            return hours.find(" to ") != hours.npos;
    }
    return false;
}

// Before `that`: `a newsletter that 1,140 students open each day`; and what was moved `to a single
// monthly date` was moved once.
std::string_view told_of_deed(std::string_view text, std::string_view verb) {
    for (const std::string_view pronoun : {" that ", " which ", " who "})
        text = text.substr(0, text.find(pronoun));
    return is_one_of(verb, List::moved) ? text.substr(0, text.find(" to ")) : text;
}

// "every day", "weekly", among the words before the first comma: those behind it may tell what came
// of a deed that was done once.
bool speaks_of_habit(const WordedBullet& bullet) {
    const std::string_view text =
        told_of_deed(bullet.text, lower_case(bullet.words(bullet.reading.verb)));
    bool each = false, kind = false; // `Started a weekly playgroup`: what it is, and begun once
    const bool begun = is_one_of(lower_case(bullet.words(bullet.reading.verb)), List::once_begun);
    const std::size_t end = is_list_alone(text) ? text.find(';') : text.find_first_of(",;");
    for (const std::string_view word : pieces_of(text.substr(0, end), " ")) {
        const std::string plain = lower_case(trimmed(word, ".()"));
        if ((is_one_of(plain, List::habits) && !kind) || (each && is_one_of(plain, List::turns)))
            return true;
        kind = begun && (plain == "a" || plain == "an" || plain == "the");
        const bool every_other = each && (plain == "other" || plain == "second");
        each = plain == "every" || plain == "each" || every_other;
    }
    return false;
}

// `Ran the desk on weekends`, `Patrolled from 8 p.m. to midnight`; but `Won a grant for lights on
// evenings`, `Moved the opening from 8 a.m. to noon`, by one deed.
bool tells_hours(const WordedBullet& bullet) {
    const std::string verb = lower_case(bullet.words(bullet.reading.verb));
    if (is_one_of(verb, List::once_gained) || is_one_of(verb, List::moved)) return false;
    const std::string_view text = bullet.text;
    return is_on_turns(text.substr(0, text.find_first_of(",;"))) || is_at_hours(text);
}

// `Cleaned 14 rooms a day`: so many over and over; but `Saved 12 hours a week` by one deed.
bool counts_by_turn(const WordedBullet& bullet) {
    const std::string verb = lower_case(bullet.words(bullet.reading.verb));
    if (is_one_of(verb, List::once_gained)) return false;
    const std::string_view text = bullet.text;
    const auto words = words_in(text.substr(0, text.find_first_of(",;")));
    constexpr std::size_t reach = 7; // words
    bool counted = false;
    for (std::size_t i = 1; i + 1 < words.size() && i < reach; ++i) {
        const std::string word = lower_case(words[i].word);
        counted = counted || has_digit(word) || number_named(word);
        const bool per = word == "a" || word == "an" || word == "per";
        if (per && is_one_of(lower_case(words[i + 1].word), List::turns))
            return counted; // and not `a morning newsletter`
        if (i > 1 && is_one_of(word, List::needed_words)) return false; // what it is of or for
    }
    return false;
}

// In work that goes on a finished deed is rightly in the past: won, built, rewritten once. A slip
// is what is done over and over, what is joined to a verb in the present, and what has no tense.
bool may_be_finished(const WordedBullet& bullet, WhenDone when) {
    if (when != WhenDone::current) return false;
    const std::string_view verb = bullet.words(bullet.reading.wrong_for_current.front());
    return !is_gerund(verb) && bullet.reading.wrong_for_ended.empty() && !speaks_of_habit(bullet) &&
           !tells_hours(bullet) && !counts_by_turn(bullet);
}

// A weak opening is to go, in whatever tense it stands; but to deal with something is a deed.
bool is_weak_opening(const WordedBullet& bullet, const english::Extent& verb) {
    if (lower_case(bullet.words(verb)).starts_with("deal")) return false;
    const english::Extent& opening = bullet.reading.verb;
    return bullet.reading.opening == Opening::weak && verb.offset >= opening.offset &&
           verb.offset < opening.offset + opening.length;
}

void judge(const WordedBullet& bullet, WhenDone when, const ProofContext& context,
           std::vector<Finding>& findings) {
    std::vector<english::Extent> wrong =
        when == WhenDone::ended ? bullet.reading.wrong_for_ended : bullet.reading.wrong_for_current;
    if (wrong.empty() || may_be_finished(bullet, when)) return;
    std::erase_if(wrong,
                  [&](const english::Extent& verb) { return is_weak_opening(bullet, verb); });
    if (wrong.empty()) return;
    std::vector<std::string> verbs, right;
    for (const english::Extent& extent : wrong) {
        verbs.emplace_back(bullet.words(extent));
        if (std::string form = in_tense(verbs.back(), when, context.language); !form.empty())
            right.push_back(std::move(form));
    }
    Finding& finding = report_tense(bullet, wrong.front(), verbs, when, findings);
    if (!right.empty())
        finding.suggestion = fill<messages::write>(joined(right, " and ", all_of_them, in_quotes));
}

// `Lead 3 exam reviews last spring`: when it was is said. Not `figures from last year`.
std::optional<english::Extent> past_time_in(const std::string& text) {
    constexpr std::array<std::string_view, 12> of{"from", "of",    "since", "than", "to",  "with",
                                                  "that", "which", "and",   "over", "the", "by"};
    std::string lower = lower_case(text.substr(0, text.find(';'))); // its own clause
    for (std::size_t comma = lower.find(", "); comma != lower.npos;
         comma = lower.find(", ", comma + 1))
        if (words_in(lower.substr(comma, 20))
                .front()
                .word.ends_with("ing")) // tracing 900 last year
            lower.resize(comma);
    const auto words = words_in(lower);
    for (std::size_t i = 2; i + 1 < words.size(); ++i) {
        if (words[i].word != "last" || is_one_of(words[i - 1].word, of)) continue;
        if (!is_one_of(words[i + 1].word, List::turns) && !trade::month_named(words[i + 1].word))
            continue;
        const std::size_t end = words[i + 1].offset + words[i + 1].word.size();
        return english::Extent{words[i].offset, end - words[i].offset};
    }
    return std::nullopt;
}

void present_in_past_time(const WordedBullet& bullet, const ProofContext& context,
                          std::vector<Finding>& findings) {
    if (bullet.reading.opening != Opening::present_verb) return;
    const auto time = past_time_in(bullet.text);
    if (!time) return;
    const std::string verb(bullet.words(bullet.reading.verb));
    Finding& finding =
        report<messages::present_in_past_time>(findings, bullet.place(bullet.reading.verb),
                                               in_quotes(verb), in_quotes(bullet.words(*time)));
    if (const auto past = context.language.past_of(lower_case(verb)))
        finding.suggestion = fill<messages::write>(in_quotes(capitalised(*past)));
}

// --- openings

// What a noun that opens a bullet would be as a verb: Design of, Designed. Only one before a
// preposition says what was done; the first word of a compound does not: Bake sale, GIS maps.
std::string verb_of(const WordedBullet& bullet, const ProofContext& context) {
    if (!bullet.reading.names_deed) return {};
    const std::string_view word = bullet.words(bullet.reading.verb);
    const bool ended = when_done(*bullet.position.entry, context) != WhenDone::current;
    const auto form = ended ? context.language.past_of(word) : context.language.base_of(word);
    const std::string plain = form ? *form : "";
    return plain.empty() || plain == "be" || plain == "was" ? "" : capitalised(plain);
}

std::string in_time(std::string_view past, bool ended, const english::Language& language) {
    if (ended) return std::string(past);
    const std::size_t space = past.find(' ');
    const std::string_view verb = past.substr(0, space);
    const auto base = language.base_of(verb);
    if (!base) return {};
    return capitalised(*base) + std::string(past.substr(verb.size()));
}

std::string others_for(std::string_view base, bool ended, const english::Language& language) {
    const auto kin = said_of(base, lines_of(List::kin_verbs));
    if (!kin) return fill<messages::other_verbs>();
    std::vector<std::string> verbs;
    for (const std::string_view other : pieces_of(*kin, ", "))
        verbs.push_back(in_time(other, ended, language));
    return fill<messages::kin_verbs>(joined(verbs, " or ", all_of_them, in_quotes));
}

std::string begin_with_deed(const std::vector<std::string>& verbs, bool ended) {
    if (verbs.empty()) return fill<messages::begin_with_deed>();
    const std::string all = joined(verbs, " or ", all_of_them, in_quotes);
    return ended ? fill<messages::stronger_in_past>(all) : fill<messages::stronger_in_present>(all);
}

// Of those that the office prefers, the ones for words of this bullet before those for any.
std::vector<std::string>
preferred_verbs(const ProofContext& context, std::string_view text,
                const std::function<std::string(const std::string&)>& in_tense, Finding& finding) {
    constexpr std::size_t most = 2;
    std::vector<std::string> verbs;
    const std::string lower = lower_case(text);
    for (const bool for_any : {false, true})
        for (const office::PreferredVerb& one : context.rules().prefer) {
            const bool fits =
                for_any ? one.of.empty()
                        : std::ranges::any_of(one.of, [&](const std::string& word) {
                              return has_phrase(lower, word) || has_phrase(lower, word + 's');
                          });
            const std::string verb = fits ? in_tense(capitalised(one.verb)) : "";
            if (verb.empty() || verbs.size() == most) continue;
            add_once(verbs, verb, most);
            if (verbs.size() == 1)
                add_office(finding,
                           context.office->says(fill<messages::office_prefers>(in_quotes(verb)),
                                                {one.line, {}}));
        }
    return verbs;
}

bool opens_with_verb(Opening opening) {
    return opening == Opening::past_verb || opening == Opening::present_verb ||
           opening == Opening::either_tense || opening == Opening::gerund;
}

}

namespace {

// `Schedules cranes` among `Lead 14 carpenters` and `Check joints`: in another person.
void third_person_among_plain(const ProofContext& context, std::vector<Finding>& findings) {
    std::vector<const WordedBullet*> third;
    std::size_t plain = 0;
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        if (when_done(*bullet.position.entry, context) != WhenDone::current) continue;
        if (bullet.reading.opening == Opening::either_tense) ++plain; // Cut, where Cuts could stand
        if (bullet.reading.opening != Opening::present_verb) continue;
        const std::string verb = lower_case(bullet.words(bullet.reading.verb));
        const auto base = context.language.base_of(verb);
        if (!base) continue;
        if (*base == verb)
            ++plain;
        else if (verb.ends_with('s'))
            third.push_back(&bullet);
    }
    if (third.size() * 2 > plain + 1) return; // it may be the page's own way
    for (const WordedBullet* bullet : third) {
        const std::string verb(bullet->words(bullet->reading.verb));
        report<messages::third_person>(findings, bullet->place(bullet->reading.verb),
                                       in_quotes(verb), counted(plain, "other is", "others are"))
            .suggestion =
            fill<messages::write>(in_quotes(in_tense(verb, WhenDone::current, context.language)));
    }
}

}

void tense(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        const WhenDone when = when_done(*bullet.position.entry, context);
        if (when != WhenDone::unknown) judge(bullet, when, context, findings);
        if (when == WhenDone::current) present_in_past_time(bullet, context, findings);
    }
    third_person_among_plain(context, findings);
}

// `Test balance of 36 rowers`, in work that goes on and whose other bullets all open with verbs.
bool is_plain_among_deeds(const WordedBullet& bullet, const ProofContext& context) {
    const model::Entry* entry = bullet.position.entry;
    const std::string word = lower_case(bullet.words(bullet.reading.verb));
    if (when_done(*entry, context) != WhenDone::current || context.language.base_of(word) != word)
        return false;
    std::size_t deeds = 0, others = 0;
    for (const WordedBullet& other : context.bullets)
        if (other.position.entry == entry && &other != &bullet)
            ++(opens_with_verb(other.reading.opening) ? deeds : others);
    return deeds > 0 && others == 0;
}

void action_verb(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        if (bullet.reading.opening != Opening::no_verb || bullet.bullet->level > 1) continue;
        const std::string verb = verb_of(bullet, context);
        const std::string_view opening = bullet.words(bullet.reading.verb);
        if (verb == opening) continue; // `Rough in boxes`: a verb after all
        if (is_plain_among_deeds(bullet, context)) continue;
        report<messages::no_verb>(findings, bullet.place(bullet.reading.verb), in_quotes(opening))
            .suggestion = verb.empty() ? fill<messages::begin_with_verb>()
                                       : fill<messages::begin_with>(in_quotes(verb));
    }
}

// `Logged 40 dives and was in charge of the boat`: it hides a deed there as well.
void report_weak_behind(const WordedBullet& bullet, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 6> phrases{"was in charge of",     "was responsible for",
                                                      "was tasked with",      "am responsible for",
                                                      "were responsible for", "is responsible for"};
    const std::string& lower = bullet.part.lower;
    for (const std::string_view phrase : phrases) {
        const std::size_t at = find_phrase(lower, phrase);
        if (at == lower.npos || at < 5 || !lower.substr(0, at).ends_with("and ")) continue;
        report<messages::weak_opening>(findings, bullet.place({at, phrase.size()}),
                                       in_quotes(bullet.text.substr(at, phrase.size())))
            .suggestion = fill<messages::begin_with_deed>();
        return;
    }
}

// At the chair or the table to assist is the work itself: a dental assistant.
bool is_their_work(const WordedBullet& bullet) {
    constexpr std::array<std::string_view, 5> kinds{"dental", "surgical", "veterinary", "medical",
                                                    "physician"};
    if (!lower_case(bullet.words(bullet.reading.verb)).starts_with("assist")) return false;
    const std::string role = lower_case(plain_in(bullet.position.find(trade::FieldName::role)));
    return has_phrase(role, "assistant") &&
           std::ranges::any_of(kinds, [&](std::string_view one) { return has_phrase(role, one); });
}

void weak_opening(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        if (bullet.reading.opening != Opening::weak) {
            report_weak_behind(bullet, findings);
            continue;
        }
        if (is_their_work(bullet)) continue;
        const bool ended = when_done(*bullet.position.entry, context) != WhenDone::current;
        Finding& finding =
            report<messages::weak_opening>(findings, bullet.place(bullet.reading.verb),
                                           in_quotes(bullet.words(bullet.reading.verb)));
        const auto in_tense = [&](const std::string& past) {
            return in_time(past, ended, context.language);
        };
        std::vector<std::string> verbs = preferred_verbs(context, bullet.text, in_tense, finding);
        constexpr std::size_t most = 4;
        for (const std::string& past : bullet.reading.stronger_verbs)
            if (const std::string verb = in_tense(past); !verb.empty()) add_once(verbs, verb, most);
        finding.suggestion = begin_with_deed(verbs, ended);
    }
}

void repeated_opening(const ProofContext& context, std::vector<Finding>& findings) {
    const auto most = static_cast<std::size_t>(context.limits().same_opening);
    const auto bullets = bullets_under(context, {experience, projects, activities});
    std::map<std::string, std::vector<const WordedBullet*>> by_verb;
    for (const WordedBullet& bullet : bullets) {
        if (!opens_with_verb(bullet.reading.opening)) continue;
        if (const auto base = context.language.base_of(bullet.words(bullet.reading.verb)))
            by_verb[*base].push_back(&bullet);
    }
    for (const auto& [base, alike] : by_verb) {
        if (alike.size() <= most) continue;
        std::vector<Place> places;
        for (const WordedBullet* bullet : alike)
            places.push_back(bullet->bullet->place);
        const WordedBullet& third = *alike[most];
        const bool ended = when_done(*third.position.entry, context) != WhenDone::current;
        Finding& finding = report<messages::repeated_opening>(
            findings, third.place(third.reading.verb), in_quotes(third.words(third.reading.verb)),
            counted(alike.size(), "bullet", "bullets"), lines_listed(places));
        finding.suggestion = others_for(base, ended, context.language);
        judged_by(context, &office::Limits::same_opening, finding);
    }
}

}

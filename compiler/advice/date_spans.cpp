// A placement of so many weeks, a project of a course, a summer's job, and what a bullet tells of a
// month: each says how long it was or when, and the dates of the entry may say otherwise.
#include "compiler/advice/date_spans.hpp"

#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/date_spelling.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/numbers.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/limits.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

namespace {

using enum trade::Holds;
using trade::FieldName;
using Opening = english::BulletReading::Opening;

struct HeldSpan {
    const model::Field* field = nullptr;
    const model::DateRange* range = nullptr;
    int months = 0; // both its first and its last one counted
};

// None where it has several spells, or cannot be counted in months.
std::optional<HeldSpan> held_span(const model::Entry& entry, const model::Date& today) {
    const model::Field* field = entry.find(FieldName::dates);
    const model::DateRange* range = dates_in(field);
    if (!range || !range->start || !range->start->month || !range->spells.empty())
        return std::nullopt;
    const model::Date& end = range->end ? *range->end : today;
    if (!end.month) return std::nullopt;
    return HeldSpan{field, range, months_between(*range->start, end) + 1};
}

bool is_of_course(std::string_view word) {
    return word == "course" || word == "class" || word == "term" || word == "project";
}

std::string in_months(int months) {
    return counted(static_cast<std::size_t>(months), "month", "months");
}

// `10-week summer internship`: the weeks, and the words. Not `two 10-week internships`.
struct Placement {
    double months = 0;
    english::Extent words;
};

std::optional<Placement> placement_in(const TextInResume& part, bool in_project) {
    constexpr std::array<std::string_view, 9> names{"internship", "externship", "placement",
                                                    "practicum",  "clerkship",  "apprenticeship",
                                                    "rotation",   "season",     "residency"};
    constexpr std::array<std::string_view, 4> several{"each", "every", "per", "another"};
    constexpr double weeks_of_month = 4.35;
    constexpr std::size_t near = 3; // words up to its name
    const auto& words = part.words;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string_view word = part.small(words[i]);
        const std::size_t sign = word.find('-');
        if (sign == word.npos) continue;
        const std::string_view unit = word.substr(sign + 1);
        const auto count = grouped_number(word.substr(0, sign));
        if (!count || (unit != "week" && unit != "month")) continue;
        const std::string_view before = i > 0 ? part.small(words[i - 1]) : "";
        if (is_one_of(before, several) || number_named(before) || has_digit(before)) continue;
        for (std::size_t k = i + 1; k < words.size() && k <= i + near; ++k)
            if (is_one_of(part.small(words[k]), names) ||
                (in_project && is_of_course(part.small(words[k]))))
                return Placement{
                    *count / (unit == "week" ? weeks_of_month : 1),
                    {words[i].offset, words[k].offset + words[k].word.size() - words[i].offset}};
    }
    return std::nullopt;
}

void look_at_placements(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr double times = 1.5, more = 2; // months, for who came early and stayed on
    for (const WordedBullet& bullet : context.bullets) {
        const auto placement = placement_in(bullet.part, bullet.part.section->holds == projects);
        const auto span =
            placement ? held_span(*bullet.position.entry, context.today) : std::nullopt;
        if (!span || span->months <= times * placement->months + more) continue;
        report<messages::shorter_than_dates>(findings, span->field->place, in_months(span->months),
                                             in_quotes(bullet.words(placement->words)),
                                             bullet.place(placement->words).line);
    }
}

// A course is over within the year.
void look_at_courses(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr int longest = 2 * trade::months_of_year;
    for (const Position& position : positions(context.resume, {projects})) {
        const model::Field* course = position.entry->find(FieldName::course);
        const auto span = course ? held_span(*position.entry, context.today) : std::nullopt;
        if (span && span->months > longest)
            report<messages::shorter_than_dates>(
                findings, span->field->place, in_months(span->months),
                in_quotes("course: " + plain_in(course)), course->place.line);
    }
}

bool has_word_of(const model::Entry& entry, std::string_view word) {
    const std::string role = lower_case(plain_in(entry.find(FieldName::role)));
    return find_phrase(role, word) != role.npos;
}

// Of one that goes on: whether no bullet tells of now, and there are two at least.
bool is_all_past(const model::Entry& entry, const ProofContext& context) {
    std::size_t past = 0;
    for (const WordedBullet& bullet : context.bullets) {
        if (bullet.position.entry != &entry) continue;
        const bool helped = bullet.reading.opening == Opening::weak &&
                            bullet.text.substr(0, bullet.text.find(' ')).ends_with("ed");
        if (!helped && bullet.reading.opening != Opening::past_verb) return false;
        ++past;
    }
    return past > 1;
}

// `Summer Laborer`, who has been one for years, and has done all that he tells of.
bool is_summer_gone(const Position& position, const HeldSpan& span, const ProofContext& context) {
    constexpr int longest = 9;
    return has_word_of(*position.entry, "summer") && span.months > longest && !span.range->end &&
           is_all_past(*position.entry, context);
}

// An intern from June to August of the next year: of whole summers nobody stays two and the winter.
bool is_year_off(const Position& position, const HeldSpan& span) {
    constexpr int may = 5, july = 7, september = 9;
    const model::DateRange& range = *span.range;
    return has_word_of(*position.entry, "intern") && range.end &&
           range.end->year == range.start->year + 1 && *range.start->month >= may &&
           *range.start->month <= july && *range.end->month >= july &&
           *range.end->month <= september;
}

void look_at_summers(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {experience, activities})) {
        const auto span = held_span(*position.entry, context.today);
        const auto is_of_span = [&](const Finding& finding) {
            return finding.place == span->field->place;
        };
        if (!span || std::ranges::any_of(findings, is_of_span)) continue; // one cause, told once
        if (is_summer_gone(position, *span, context) || is_year_off(position, *span))
            report<messages::long_summer>(
                findings, span->field->place,
                in_quotes(plain_in(position.entry->find(FieldName::role))), in_months(span->months))
                .weight = Weight::should;
    }
}

// --- seasons that are told

struct SeasonsTold {
    double count = 0;
    int first = 0, last = 0; // months of a year; the last may be of the next
    english::Extent words;
};

// `in 3 fall seasons`, `over 4 summers`; of `records of 5 winters` others tell.
std::optional<SeasonsTold> seasons_in(const TextInResume& part) {
    constexpr std::array<std::string_view, 6> worked{"in",     "for",    "over",
                                                     "across", "during", "through"};
    struct Season {
        std::string_view name;
        int first = 0, last = 0;
    };
    constexpr std::array seasons{Season{"spring", 2, 6}, Season{"summer", 5, 9},
                                 Season{"fall", 8, 12}, Season{"winter", 11, 15}};
    const auto& words = part.words;
    for (std::size_t i = 2; i < words.size(); ++i)
        for (const auto& [name, first, last] : seasons) {
            const std::string_view word = part.small(words[i]);
            const bool many = i + 1 < words.size() && part.small(words[i + 1]) == "seasons";
            const bool plural = word.size() == name.size() + 1 && word.ends_with('s');
            if (!word.starts_with(name) || !(many ? word == name : plural) ||
                !is_one_of(part.small(words[i - 2]), worked))
                continue;
            std::optional<double> count = grouped_number(words[i - 1].word);
            if (!count) count = number_named(part.small(words[i - 1]));
            const WordAt& end = words[many ? i + 1 : i];
            if (count)
                return SeasonsTold{
                    *count,
                    first,
                    last,
                    {words[i - 1].offset, end.offset + end.word.size() - words[i - 1].offset}};
        }
    return std::nullopt;
}

// Of the season, how many these dates reach into.
int seasons_held(const SeasonsTold& told, const model::DateRange& range, const model::Date& today) {
    const int first = months(*range.start).first;
    const int last = months(range.end ? *range.end : today).last;
    int held = 0;
    for (int year = range.start->year - 1; year <= last / trade::months_of_year; ++year) {
        const int january = year * trade::months_of_year - 1;
        if (january + told.first <= last && january + told.last >= first) ++held;
    }
    return held;
}

void look_at_seasons(const ProofContext& context, std::vector<Finding>& findings) {
    for (const WordedBullet& bullet : bullets_under(context, {experience, activities})) {
        const auto told = seasons_in(bullet.part);
        const auto span = told ? held_span(*bullet.position.entry, context.today) : std::nullopt;
        if (!span || told->count <= seasons_held(*told, *span->range, context.today)) continue;
        report<messages::too_few_seasons>(findings, bullet.place(told->words),
                                          in_quotes(bullet.words(told->words)),
                                          span->field->place.line);
    }
}

// --- at one employer

// `Senior Clerk` above `Clerk`: a step up, and no second job beside it.
bool is_step_up(const model::Entry& above, const model::Entry& below) {
    const std::string higher = lower_case(plain_in(above.find(FieldName::role)));
    const std::string lower = lower_case(plain_in(below.find(FieldName::role)));
    constexpr std::array<std::string_view, 4> ranks{"senior ", "lead ", "head ", "chief "};
    const std::string role = lower.substr(0, lower.find(" ("));
    return !role.empty() && std::ranges::any_of(ranks, [&](std::string_view rank) {
        return higher.starts_with(rank) && find_phrase(higher, role) != higher.npos;
    });
}

// Two positions that follow each other at one employer, the later one above.
struct Step {
    const model::Entry &above, &below;
    HeldSpan later, earlier;
};

std::vector<Step> steps_at_one_employer(const ProofContext& context) {
    std::vector<Step> steps;
    for (const Position& position : positions(context.resume, {experience})) {
        if (position.entry != position.head) continue;
        const model::Entry* above = position.head;
        for (const model::Entry& below : position.head->further) {
            const auto later = held_span(*above, context.today);
            const auto earlier = held_span(below, context.today);
            if (later && earlier) steps.push_back({*above, below, *later, *earlier});
            above = &below;
        }
    }
    return steps;
}

// The lower position ends months after the promotion from it; or goes on beside the next step, with
// nothing of now.
void look_at_promotions(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Step& step : steps_at_one_employer(context)) {
        const model::DateRange &later = *step.later.range, &earlier = *step.earlier.range;
        const std::string since =
            spelled(*later.start, trade::DateForm::short_month, context.resume.words.dates);
        const Place place = step.earlier.field->place;
        if (earlier.end && months_between(*later.start, *earlier.end) > 1 &&
            is_step_up(step.above, step.below))
            report<messages::beyond_promotion>(findings, place, called(step.above), since);
        if (!later.end && !earlier.end && surely_before(*earlier.start, *later.start) &&
            is_all_past(step.below, context))
            report<messages::both_go_on>(findings, place, called(step.above), since);
    }
}

// The first day at an employer of that name; none where it is not one, or a day is not told.
std::optional<model::Date> first_day_at(const model::Resume& resume, const std::string& employer) {
    std::optional<model::Date> first;
    for (const Position& work : positions(resume, {experience})) {
        const model::DateRange* held = dates_in(work.entry->find(FieldName::dates));
        if (plain_in(work.find(FieldName::employer)) != employer || !held) continue;
        if (!held->start) return std::nullopt;
        if (!first || surely_before(*held->start, *first)) first = held->start;
    }
    return first;
}

// An award by an employer, from before the work there.
void look_at_awards(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& award : positions(context.resume, {honors})) {
        const std::string by = plain_in(award.entry->find(FieldName::by));
        const model::Field* field = award.entry->find(FieldName::dates);
        const model::DateRange* range = dates_in(field);
        if (by.empty() || !range || !range->end) continue;
        const auto first = first_day_at(context.resume, by);
        if (first && surely_before(*range->end, *first))
            report<messages::before_dates>(
                findings, field->place, called(*award.entry),
                spelled(*first, trade::DateForm::short_month, context.resume.words.dates));
    }
}

// --- what is told of a month

// From the first day to the last of all that the head of an entry and its further positions hold;
// without an end, what goes on.
std::optional<model::DateRange> all_dates(const model::Entry& head) {
    std::optional<model::DateRange> all;
    const auto look = [&](const model::Entry& entry) {
        const model::DateRange* range = dates_in(entry.find(FieldName::dates));
        if (!range || !range->start) return;
        if (!all) all = *range;
        if (surely_before(*range->start, *all->start)) all->start = range->start;
        if (out_of_order(*all, *range)) all->end = range->end;
    };
    look(head);
    std::ranges::for_each(head.further, look);
    return all;
}

struct MonthTold {
    model::Date date;
    english::Extent words;
};

// `the first rise since March 2019`, `the highest`: it tells of others' time.
bool compares(const TextInResume& part, std::size_t words) {
    constexpr std::array<std::string_view, 5> others{"first", "most", "best", "worst", "records"};
    return std::any_of(part.words.begin(), part.words.begin() + static_cast<std::ptrdiff_t>(words),
                       [&](const WordAt& word) {
                           const std::string_view small = part.small(word);
                           return is_one_of(small, others) || small.ends_with("est");
                       });
}

// `since January 2025`, `in March 2024`
std::optional<MonthTold> month_in(const TextInResume& part, const model::LocalDates& local) {
    const auto& words = part.words;
    for (std::size_t i = 1; i + 1 < words.size(); ++i) {
        const WordAt &before = words[i - 1], &year = words[i + 1];
        const bool told = part.small(before) == "since" || part.small(before) == "in";
        if (!told || !trade::month_named(words[i].word) || year.word.size() != 4) continue;
        const std::size_t end = year.offset + year.word.size();
        const auto read = model::read_dates(
            std::string_view(part.plain).substr(words[i].offset, end - words[i].offset), local);
        const auto* range = std::get_if<model::DateRange>(&read);
        if (range && range->end && !range->start && !compares(part, i))
            return MonthTold{*range->end, {before.offset, end - before.offset}};
    }
    return std::nullopt;
}

// `before depot closed for good in August 2024`, of a depot that is the employer's, or for good.
bool tells_of_an_end(const WordedBullet& bullet, const MonthTold& told) {
    constexpr std::array<std::string_view, 5> ends{"closed", "closing", "shut", "disbanded",
                                                   "dissolved"};
    constexpr std::array<std::string_view, 6> firms{"company", "business", "firm",
                                                    "store",   "shop",     "employer"};
    const std::string employer = lower_case(plain_in(bullet.position.find(FieldName::employer)));
    const auto& words = bullet.part.words;
    for (std::size_t i = 1; i < words.size() && words[i].offset < told.words.offset; ++i) {
        if (!is_one_of(bullet.part.small(words[i]), ends)) continue;
        const std::string_view what = bullet.part.small(words[i - 1]);
        return is_one_of(what, firms) || has_word(employer, what);
    }
    return false;
}

// What goes on, and all of whose bullets are past, one of them telling that it was closed.
void look_at_ends(const ProofContext& context, std::vector<Finding>& findings) {
    const model::LocalDates local(context.resume.words.dates);
    for (const WordedBullet& bullet : bullets_under(context, {experience})) {
        const auto told = has_digit(bullet.text) ? month_in(bullet.part, local) : std::nullopt;
        const model::Entry& entry = *bullet.position.entry;
        const auto span = told ? held_span(entry, context.today) : std::nullopt;
        if (!span || span->range->end || surely_before(context.today, told->date)) continue;
        if (!tells_of_an_end(bullet, *told)) continue;
        report<messages::goes_on_closed>(findings, span->field->place,
                                         bullet.place(told->words).line,
                                         in_quotes(bullet.words(told->words)));
    }
}

void look_at_months(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr int most = 2 * trade::months_of_year; // of a slip; what is farther is another's time
    constexpr int afterwards = 3;                   // months in which what was done comes out
    const model::LocalDates local(context.resume.words.dates);
    const auto name = [&](const model::Date& date) {
        return spelled(date, trade::DateForm::short_month, context.resume.words.dates);
    };
    for (const WordedBullet& bullet : bullets_under(context, {experience, projects, activities})) {
        const auto told = has_digit(bullet.text) ? month_in(bullet.part, local) : std::nullopt;
        const auto all = told ? all_dates(*bullet.position.head) : std::nullopt;
        if (!all || surely_before(context.today, told->date)) continue;
        const Place place = bullet.place(told->words);
        const std::string words = in_quotes(bullet.words(told->words));
        if (surely_before(told->date, *all->start) &&
            months_between(told->date, *all->start) <= most)
            report<messages::before_dates>(findings, place, words, name(*all->start));
        if (all->end && surely_before(*all->end, told->date) &&
            months_between(*all->end, told->date) > afterwards)
            report<messages::after_dates>(findings, place, words, name(*all->end)).weight =
                Weight::should;
    }
}

}

void dates_contradicted(const ProofContext& context, std::vector<Finding>& findings) {
    look_at_placements(context, findings);
    look_at_courses(context, findings);
    look_at_summers(context, findings);
    look_at_seasons(context, findings);
    look_at_promotions(context, findings);
    look_at_awards(context, findings);
    look_at_months(context, findings);
    look_at_ends(context, findings);
}

}

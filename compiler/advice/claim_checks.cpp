// Checks of what is claimed of oneself against what the page bears out.
#include "compiler/advice/bullet_wording.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/date_spelling.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/limits.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

namespace quoin::advice {

namespace {

using enum trade::Holds;
using Opening = english::BulletReading::Opening;

// --- years of experience

struct YearsClaimed {
    int years = 0;
    std::size_t offset = 0, length = 0;
    std::string of; // a name, as of a language or a tool: 8 years of Python
};

std::optional<int> number_in(std::string_view word) {
    if (const auto named = number_named(word)) return named;
    int value = 0;
    const auto end = std::from_chars(word.data(), word.data() + word.size(), value);
    const bool whole = end.ec == std::errc{} && end.ptr == word.data() + word.size();
    return whole ? std::optional(value) : std::nullopt;
}

// What stands behind the years, if it makes them years of work: `of`, `welding`, or nothing more.
bool are_of_work(std::string_view text, const std::vector<WordAt>& words, std::size_t unit) {
    const std::size_t end = words[unit].offset + words[unit].word.size();
    if (unit + 1 == words.size() || text[end] == ',' || text[end] == '.' || text[end] == ';')
        return true;
    const std::string_view next = words[unit + 1].word;
    constexpr std::array<std::string_view, 2> spans{"during", "coming"};
    return is_one_of(next, List::after_years) || (next.ends_with("ing") && !is_one_of(next, spans));
}

// `Python`, of `years of Python` or `years in R`; not `Army`, of `years of Army logistics`.
std::string name_behind(std::string_view text, const std::vector<WordAt>& words, std::size_t unit) {
    constexpr std::array<std::string_view, 5> before{"of", "in", "with", "using", "writing"};
    if (unit + 2 >= words.size() || !is_one_of(words[unit + 1].word, before)) return {};
    const WordAt& name = words[unit + 2];
    const std::string_view typed = text.substr(name.offset, name.word.size());
    const std::size_t end = name.offset + name.word.size();
    const bool ends = unit + 3 == words.size() || words[unit + 3].word == "and" ||
                      words[unit + 3].offset != end + 1; // a sign parts them
    return is_capitalised(typed) && ends ? std::string(typed) : std::string{};
}

// `6 years of`, `15 years' experience`, `9+ years in`, `a decade of`; not `in 3 years`.
std::optional<YearsClaimed> years_claimed_in(std::string_view text) {
    constexpr std::array<std::string_view, 5> units{"year", "years", "yrs", "decade", "decades"};
    constexpr std::array<std::string_view, 13> within{"in",   "within", "every", "each",  "last",
                                                      "past", "next",   "for",   "after", "coming",
                                                      "age",  "under",  "first"};
    const std::string lower = lower_case(text);
    const auto words = words_in(lower);
    for (std::size_t i = 1; i < words.size(); ++i) {
        if (!is_one_of(words[i].word, units)) continue;
        const bool one = words[i].word == "decade" && words[i - 1].word == "a";
        const auto count = one ? std::optional(1) : number_in(words[i - 1].word);
        const bool span = i > 1 && is_one_of(words[i - 2].word, within);
        if (!count || span || !are_of_work(lower, words, i)) continue;
        const int times = words[i].word.starts_with("decade") ? 10 : 1;
        const std::size_t begin = words[i - 1].offset;
        return YearsClaimed{*count * times, begin, words[i].offset + words[i].word.size() - begin,
                            name_behind(text, words, i)};
    }
    return std::nullopt;
}

bool tells_of(const model::Entry& entry, std::string_view name) {
    const std::string lower = lower_case(name);
    return std::ranges::any_of(entry.fields,
                               [&](const model::Field& field) {
                                   return has_phrase(lower_case(plain_in(&field)), lower);
                               }) ||
           std::ranges::any_of(entry.bullets, [&](const model::Bullet& bullet) {
               return has_phrase(lower_case(bullet.text.plain()), lower);
           });
}

// Of spans in months, of which there is one, those that hang together with the last: what lies
// years before is no part of the experience that is claimed.
int months_together(std::vector<std::pair<int, int>> spans, int today) {
    constexpr int gap = 6 * trade::months_of_year;
    std::ranges::sort(spans, std::greater<>{}, &std::pair<int, int>::second);
    int first = spans.front().first;
    for (const auto& [start, end] : spans)
        if (end + gap >= first) first = std::min(first, start);
    return today - first;
}

// Months from the first start among the entries, those that tell of `name`, to today.
std::optional<int> months_on_page(const ProofContext& context, std::string_view name) {
    std::vector<std::pair<int, int>> spans;
    const int today = months(context.today).last;
    for (const Position& position :
         positions(context.resume, {experience, projects, activities, other})) {
        const model::DateRange* range = dates_in(position.entry->find(trade::FieldName::dates));
        if (!range) continue;
        if (!name.empty() && !tells_of(*position.entry, name)) continue;
        const bool backwards = ends_before_start(*range); // then the earlier may be right
        const auto& first = range->start && !backwards ? range->start : range->end;
        if (!first) continue;
        const auto& last = backwards ? range->start : range->end;
        const int end = last ? std::min(months(*last).last, today) : today;
        spans.emplace_back(months(*first).first, end);
    }
    if (spans.empty()) return std::nullopt;
    return months_together(std::move(spans), today);
}

// A year is rounded up, and a tenth is no lie.
bool is_too_much(int years, int months) {
    constexpr double tolerance = 1.1;
    return years * trade::months_of_year > tolerance * months + trade::months_of_year;
}

void years_claimed(const ProofContext& context, std::vector<Finding>& findings) {
    const auto on_page = months_on_page(context, {});
    if (!on_page) return;
    for (const TextInResume& part : context.texts) {
        const bool claims = part.field && (part.field->name == trade::FieldName::headline ||
                                           part.field->name == trade::FieldName::text);
        if (!claims) continue;
        const auto claimed = years_claimed_in(part.plain);
        if (!claimed) continue;
        const int there = months_on_page(context, claimed->of).value_or(*on_page);
        if (!is_too_much(claimed->years, there)) continue;
        const int years = std::max(1, there / trade::months_of_year);
        report<messages::too_many_years>(
            findings, part.text.place(claimed->offset, claimed->length),
            in_quotes(part.plain.substr(claimed->offset, claimed->length)),
            counted(static_cast<std::size_t>(years), "year", "years"));
    }
}

// --- what is still to come

bool tells_as_done(const WordedBullet& bullet) {
    const Opening opening = bullet.reading.opening;
    const bool helped =
        opening == Opening::weak && bullet.text.substr(0, bullet.text.find(' ')).ends_with("ed");
    return helped || opening == Opening::past_verb || opening == Opening::participle;
}

// `Our team won`, `Was promoted`
bool is_told_of_others(const WordedBullet& bullet) {
    const Opening opening = bullet.reading.opening;
    return opening == Opening::person || opening == Opening::auxiliary || bullet.reading.sentence;
}

struct DateInText {
    model::Date date;
    std::size_t offset = 0, length = 0;
};

// `in May 2027`, `in 2027`, as the words of a text have it.
std::optional<DateInText> date_told(const std::string& text) {
    const auto words = words_in(text);
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        const std::string small = lower_case(words[i].word);
        if (is_one_of(small, List::until_words)) return std::nullopt;
        const bool dated = trade::month_named(words[i].word).has_value() && // Apr 2027
                           is_capital_letter(words[i].word.front());
        if (small != "in" && !dated) continue;
        const auto month = trade::month_named(words[dated ? i : i + 1].word);
        const std::size_t at = dated ? i + 1 : i + (month ? 2 : 1);
        if (at >= words.size()) return std::nullopt;
        const auto number = number_in(words[at].word);
        if (!number || *number < trade::first_year || *number > trade::last_year) continue;
        DateInText told{{*number, {}, {}, {}}, words[i].offset, 0};
        if (month) told.date.month = month->month;
        told.length = words[at].offset + words[at].word.size() - told.offset;
        return told;
    }
    return std::nullopt;
}

void report_ahead(const WordedBullet& bullet, const Place& place, const std::string& when,
                  std::vector<Finding>& findings) {
    report<messages::done_ahead>(findings, place, in_quotes(bullet.words(bullet.reading.verb)),
                                 when);
}

// A work that is out or a prize that is won, by its own date; `accepted`, `forthcoming` say so.
void ahead_in_entries(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position :
         positions(context.resume, {honors, credentials, publications})) {
        const model::Entry& entry = *position.entry;
        const model::Field* dates = entry.find(trade::FieldName::dates);
        const model::DateRange* range = dates_in(dates);
        if (!range || range->expected || !naming_field(entry)) continue;
        const auto& first = range->start ? range->start : range->end;
        if (!first || !surely_before(context.today, *first)) continue;
        const bool said = std::ranges::any_of(entry.fields, [](const model::Field& field) {
            const std::string lower = lower_case(plain_in(&field));
            return std::ranges::any_of(listed(List::to_come),
                                       [&](auto phrase) { return has_phrase(lower, phrase); });
        });
        if (!said)
            report<messages::done_ahead>(
                findings, dates->place, called(entry),
                "in " + spelled(*first, trade::DateForm::short_month, context.resume.words.dates));
    }
}

void done_ahead(const ProofContext& context, std::vector<Finding>& findings) {
    ahead_in_entries(context, findings);
    const model::Entry* told_of = nullptr;
    for (const WordedBullet& bullet : context.bullets) {
        if (bullet.position.entry == told_of) continue;
        const model::Field* dates = bullet.position.entry->find(trade::FieldName::dates);
        const model::DateRange* range = dates_in(dates);
        const auto begins = !range ? std::nullopt : range->start ? range->start : range->end;
        const bool done = tells_as_done(bullet);
        if (done && begins && surely_before(context.today, *begins)) {
            const std::string from =
                spelled(*begins, trade::DateForm::short_month, context.resume.words.dates);
            report_ahead(bullet, dates->place, "from " + from + " on", findings);
            told_of = bullet.position.entry;
            continue;
        }
        const auto told = done || is_told_of_others(bullet) ? date_told(bullet.text) : std::nullopt;
        if (told && surely_before(context.today, told->date))
            report_ahead(bullet, bullet.place(bullet.reading.verb),
                         bullet.text.substr(told->offset, told->length), findings);
    }
}

// --- what is wanted

std::size_t count_words(std::string_view lower, List list) {
    std::size_t count = 0;
    for (const std::string_view phrase : listed(list))
        if (has_phrase(lower, phrase)) ++count;
    return count;
}

std::string first_of(std::string_view lower, List list) {
    std::size_t first = lower.size();
    std::string found;
    for (const std::string_view phrase : listed(list))
        if (const std::size_t at = find_phrase(lower, phrase); at < first) {
            first = at;
            found = phrase;
        }
    return found;
}

// `my classes`, but not `my skills`; what one can do there is the writer's too: where I can.
std::string own_want(const std::string& lower) {
    const auto words = words_in(lower);
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        const std::string_view next = words[i + 1].word;
        if (words[i].word == "my" && !is_one_of(next, List::own_gifts)) {
            const bool described =
                i + 2 < words.size() && is_one_of(words[i + 2].word, List::own_gifts);
            if (!described) return "my " + std::string(next);
        }
    }
    return {};
}

// What an employer offers in a wish is taken out: it is nothing of the writer's.
std::string without_their_gifts(std::string lower) {
    for (const std::string_view phrase : listed(List::of_the_employer))
        if (const std::size_t at = find_phrase(lower, phrase); at != lower.npos)
            lower.replace(at, phrase.size(), phrase.size(), ' ');
    return lower;
}

void objective_wants(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!part.field || part.field->name != trade::FieldName::text) continue;
        const std::string& lower = part.lower;
        if (count_words(lower, List::seeking) == 0) continue;
        if (count_words(without_their_gifts(lower), List::gives) > 0 || has_digit(lower)) continue;
        std::string want = first_of(lower, List::wants);
        if (want.empty()) want = own_want(lower);
        if (want.empty()) want = first_of(lower, List::of_the_employer);
        if (want.empty()) continue;
        const std::size_t at = find_phrase(lower, want);
        report<messages::wants_alone>(findings, part.text.place(at, want.size()), in_quotes(want));
    }
}

// --- what has no year, and what is too old

bool has_year(std::string_view text) {
    return std::ranges::any_of(words_in(text), [](const WordAt& word) {
        const auto number = number_in(word.word);
        return word.word.size() == 4 && number && (*number / 100 == 19 || *number / 100 == 20);
    });
}

void award_year(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {honors, credentials})) {
        const model::Entry& entry = *position.entry;
        const model::Field* name = naming_field(entry);
        if (!name || entry.find(trade::FieldName::dates)) continue;
        if (entry.find(trade::FieldName::expires)) continue;
        const bool said = std::ranges::any_of(
            entry.fields, [](const model::Field& field) { return has_year(plain_in(&field)); });
        const bool in_bullet = std::ranges::any_of(entry.bullets, [](const model::Bullet& bullet) {
            return has_year(bullet.text.plain());
        });
        if (!said && !in_bullet) report<messages::no_year>(findings, name->place, called(entry));
    }
}

// `CPR, to August 2026`, `First Aid (expires 05/2026)`, in a list or a note
std::optional<std::string> lapsed_in(std::string_view text, const ProofContext& context) {
    constexpr std::array<std::string_view, 7> words{"to",      "through", "until", "exp",
                                                    "expires", "expired", "thru"};
    for (const WordAt& word : words_in(text)) {
        if (!is_one_of(lower_case(word.word), words)) continue;
        const std::string_view rest = trimmed(text.substr(word.offset + word.word.size()), " .:()");
        const auto read = model::read_dates(rest, model::LocalDates(context.resume.words.dates));
        const auto* range = std::get_if<model::DateRange>(&read);
        if (range && !range->start && range->end && is_over(*range->end, context.today))
            return spelled(*range->end, trade::DateForm::short_month, context.resume.words.dates);
    }
    return std::nullopt;
}

void lapsed_in_lists(const ProofContext& context, std::vector<Finding>& findings) {
    for (const TextInResume& part : context.texts) {
        if (!part.field || (part.field->name != trade::FieldName::group &&
                            part.field->name != trade::FieldName::credential))
            continue;
        const std::string& text = part.plain;
        if (const auto when = has_year(text) ? lapsed_in(text, context) : std::nullopt)
            report<messages::lapsed>(findings, part.text.place(0, text.size()), in_quotes(text),
                                     *when);
    }
}

void credential_lapsed(const ProofContext& context, std::vector<Finding>& findings) {
    lapsed_in_lists(context, findings);
    for (const Position& position : positions(context.resume, {credentials})) {
        const model::Field* expires = position.entry->find(trade::FieldName::expires);
        const model::DateRange* range = dates_in(expires);
        if (range && range->end && is_over(*range->end, context.today))
            report<messages::lapsed>(
                findings, expires->place, called(*position.entry),
                spelled(*range->end, trade::DateForm::short_month, context.resume.words.dates));
    }
}

// One that is years older stands above one that is newer.
void credential_order(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr int much = 2 * trade::months_of_year;
    const model::Entry* above = nullptr;
    for (const Position& position : positions(context.resume, {credentials})) {
        const model::Entry& entry = *position.entry;
        const model::DateRange* range = dates_in(entry.find(trade::FieldName::dates));
        if (!range || !range->end) continue;
        const model::DateRange* before =
            above ? dates_in(above->find(trade::FieldName::dates)) : nullptr;
        if (before && months_between(*before->end, *range->end) >= much)
            report<messages::older_above>(findings, place_of(*above), called(*above),
                                          called(entry));
        above = &entry;
    }
}

std::optional<int> years_since_end(const model::Entry& entry, const model::Date& today) {
    const model::Field* field = entry.find(trade::FieldName::graduation);
    const model::DateRange* range = dates_in(field ? field : entry.find(trade::FieldName::dates));
    if (!range || !range->end) return std::nullopt;
    return (months(today).first - months(*range->end).last) / trade::months_of_year;
}

// The first of them is named: one decision settles them all.
void long_ago(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {education, experience})) {
        const auto years = years_since_end(*position.entry, context.today);
        const office::LimitOf most = position.section->holds == education
                                         ? &office::Limits::degree_years
                                         : &office::Limits::job_years;
        if (!years || *years < context.limits().*most) continue;
        judged_by(context, most,
                  report<messages::so_long_ago>(findings, place_of(*position.entry),
                                                called(*position.entry), *years));
        return;
    }
}

constexpr std::array claim_table{
    Check{"years-claimed", Weight::must, "claims",
          "Years of experience in headline and summary are no more than the dates of the entries "
          "bear out, a year aside.",
          "A reader subtracts, and believes the rest of the page no more than this.",
          "common practice", "headline: Welder with 9 years of experience, first job in 2023",
          "headline: Welder with 3 years of experience", years_claimed},
    Check{"done-ahead", Weight::must, "claims",
          "What is told as done is not dated after the day of the résumé.",
          "What has not happened yet is found out with one question.", "common practice",
          "- Presented findings in May 2027, updated in 2026",
          "- Will present findings in May 2027", done_ahead},
    Check{"objective-wants", Weight::should, "claims",
          "An objective or summary says what the employer gets, not what the writer wants alone.",
          "Employers hire for what they need, and wishes are the same on every page.",
          "common practice", "text: Seeking a position where I can grow",
          "text: Baker with 2 years of early shifts, for the morning team", objective_wants},
    Check{"award-year", Weight::should, "claims", "An award or licence has its year.",
          "Without one it may be from school, or have lapsed.", "common practice",
          "award: Ellery Prize, and no 'dates:'", "dates: May 2026", award_year},
    Check{"credential-lapsed", Weight::should, "claims",
          "A licence or certificate has not expired by the day of the résumé.",
          "An employer who needs it cannot hire on one that has lapsed.", "common practice",
          "expires: May 2025, updated in 2026", "expires: May 2028", credential_lapsed},
    Check{"credential-order", Weight::consider, "claims",
          "No licence or certificate stands above one that is two years newer.",
          "Readers look for the latest at the top.", "common practice",
          "dates: May 2022 above dates: Jun 2026", "dates: Jun 2026 above dates: May 2022",
          credential_order},
    Check{"long-ago", Weight::consider, "claims",
          "No job ended more than fifteen years ago and no degree was earned more than twenty "
          "years ago.",
          "Old dates take room from later work, and a reader counts back from them.",
          "common practice", "dates: Jun 1998 - Aug 2001", "the later positions alone", long_ago,
          "Age is no ground to hire or not (29 CFR 1625), and a page need not tell it."},
};

}

std::span<const Check> claim_checks() {
    return claim_table;
}

}

// Checks of dates: that they are there, make sense, stand in order, and are up to date.
#include "compiler/advice/check.hpp"
#include "compiler/advice/date_gaps.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/date_spans.hpp"
#include "compiler/advice/date_spelling.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace quoin::advice {

namespace {

using enum trade::Holds;

void visit_dates(const model::Resume& resume,
                 const std::function<void(const model::Field&, const model::DateRange&)>& visit) {
    for (const model::Section& section : resume.sections)
        for (const model::Entry& head : section.entries) {
            const auto look = [&](const model::Entry& entry) {
                for (const model::Field& field : entry.fields)
                    if (const model::DateRange* range = dates_in(&field)) visit(field, *range);
            };
            look(head);
            std::ranges::for_each(head.further, look);
        }
}

struct DatesWithin {
    std::string_view label; // of the field that they stand in
    std::string dates;      // as typed
};

// `employer: Tide House, Port Ellery, WA, Jan 2026 - now`, `role: Cook (2022-2023)`
std::optional<DatesWithin> dates_within(const model::Entry& entry, const ProofContext& context) {
    const model::LocalDates local(context.resume.words.dates);
    for (const model::Field& field : entry.fields) {
        if (!std::holds_alternative<model::Text>(field.value)) continue;
        const std::string text = plain_in(&field);
        const std::size_t sign = text.find_last_of(",(|;");
        if (sign == text.npos) continue;
        const std::string last(trimmed(std::string_view(text).substr(sign + 1), " ()"));
        if (has_digit(last) &&
            std::holds_alternative<model::DateRange>(model::read_dates(last, local)))
            return DatesWithin{trade::label_of(field.name), last};
    }
    return std::nullopt;
}

void dates_missing(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {experience, projects, activities})) {
        const model::Entry& entry = *position.entry;
        if (entry.find(trade::FieldName::dates)) continue;
        // A club without a role in it is a line of a list.
        if (position.section->holds == activities && !entry.find(trade::FieldName::role)) continue;
        if (!naming_field(entry)) continue;
        Finding& finding = report<messages::no_dates>(findings, place_of(entry), called(entry));
        if (const auto within = dates_within(entry, context))
            finding.suggestion = fill<messages::dates_within>(within->label, within->dates);
    }
}

// Issued after it has expired.
void expires_before_issued(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {credentials})) {
        const model::Field* expires = position.entry->find(trade::FieldName::expires);
        const model::DateRange* issued = dates_in(position.entry->find(trade::FieldName::dates));
        const model::DateRange* until = dates_in(expires);
        if (!issued || !until || !issued->end || !until->end) continue;
        const model::DateRange valid{issued->start ? issued->start : issued->end, until->end};
        if (ends_before_start(valid))
            report<messages::ends_before_start>(
                findings, expires->place,
                spelled(*valid.end, trade::DateForm::short_month, context.resume.words.dates),
                spelled(*valid.start, trade::DateForm::short_month, context.resume.words.dates));
    }
}

void end_before_start(const ProofContext& context, std::vector<Finding>& findings) {
    expires_before_issued(context, findings);
    visit_dates(context.resume, [&](const model::Field& field, const model::DateRange& range) {
        if (!ends_before_start(range)) return;
        const std::string start =
            spelled(*range.start, trade::DateForm::short_month, context.resume.words.dates);
        const std::string end =
            spelled(*range.end, trade::DateForm::short_month, context.resume.words.dates);
        if (!range.one_year) {
            report<messages::ends_before_start>(findings, field.place, end, start);
            return;
        }
        model::Date year_before = *range.start;
        --year_before.year;
        report<messages::one_year_for_two>(findings, field.place, in_quotes(range.typed), start,
                                           end)
            .suggestion = fill<messages::give_both_years>(
            spelled(year_before, trade::DateForm::short_month, context.resume.words.dates));
    });
}

void day_given(const ProofContext& context, std::vector<Finding>& findings) {
    visit_dates(context.resume, [&](const model::Field& field, const model::DateRange& range) {
        const bool given = (range.start && range.start->day) || (range.end && range.end->day);
        if (!given) return;
        report<messages::day_given>(findings, field.place, in_quotes(range.typed));
    });
}

// To the end of the last position that an entry holds.
std::optional<model::DateRange> whole_range(const model::Entry& entry) {
    std::optional<model::DateRange> last;
    const auto look = [&](const model::Entry& one) {
        const model::DateRange* range = dates_in(one.find(trade::FieldName::dates));
        if (range && (!last || out_of_order(*last, *range))) last = *range;
    };
    look(entry);
    std::ranges::for_each(entry.further, look);
    return last;
}

// What ends today or later goes on, as what has no end does; of two such either may stand first. So
// may one of two that are over, where it began later and ended sooner.
bool is_out_of_order(const model::DateRange& above, const model::DateRange& below,
                     const model::Date& today) {
    if (may_go_on(above, today)) return false;
    if (goes_on(below, today)) return true;
    const bool within = above.start && below.start && surely_before(*below.start, *above.start);
    return !within && out_of_order(above, below);
}

void compare(const model::Entry& above, const std::optional<model::DateRange>& above_range,
             const model::Entry& below, const std::optional<model::DateRange>& below_range,
             const model::Date& today, std::vector<Finding>& findings) {
    if (!above_range || !below_range || ends_before_start(*above_range)) return;
    if (ends_far_ahead(*above_range, today) || ends_far_ahead(*below_range, today)) return;
    if (!is_out_of_order(*above_range, *below_range, today)) return;
    const model::Field* dates = below.find(trade::FieldName::dates);
    report<messages::below_older>(findings, dates ? dates->place : place_of(below), called(below),
                                  called(above));
}

void order_entries(
    const std::vector<const model::Entry*>& entries, const model::Date& today,
    std::vector<Finding>& findings,
    const std::function<std::optional<model::DateRange>(const model::Entry&)>& range_of) {
    const model::Entry* above = nullptr;
    for (const model::Entry* entry : entries) {
        if (!range_of(*entry)) continue;
        if (above) compare(*above, range_of(*above), *entry, range_of(*entry), today, findings);
        above = entry;
    }
}

void date_order(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array ordered{experience, projects, activities, trade::Holds::honors,
                                 publications};
    for (const model::Section& section : context.resume.sections) {
        if (!is_one_of(section.holds, ordered)) continue;
        std::vector<const model::Entry*> entries;
        for (const model::Entry& entry : section.entries)
            entries.push_back(&entry);
        order_entries(entries, context.today, findings, whole_range);
        for (const model::Entry& entry : section.entries) {
            std::vector<const model::Entry*> steps{&entry};
            for (const model::Entry& further : entry.further)
                steps.push_back(&further);
            order_entries(steps, context.today, findings,
                          [](const model::Entry& step) -> std::optional<model::DateRange> {
                              const model::DateRange* range =
                                  dates_in(step.find(trade::FieldName::dates));
                              return range ? std::optional(*range) : std::nullopt;
                          });
        }
    }
}

// --- forms

struct Spelled {
    Place place; // of the value
    const model::DateRange* range = nullptr;

    bool is_all(trade::DateForm form) const {
        return std::ranges::all_of(
            range->written, [&](const model::WrittenDate& date) { return date.form == form; });
    }
};

std::vector<Spelled> all_spelled(const ProofContext& context) {
    std::vector<Spelled> all;
    visit_dates(context.resume, [&](const model::Field& field, const model::DateRange& range) {
        if (!range.written.empty()) all.push_back({field.place, &range});
    });
    return all;
}

constexpr std::size_t form_count = 4;

std::array<std::size_t, form_count> count_forms(const std::vector<Spelled>& all) {
    std::array<std::size_t, form_count> counts{};
    for (const Spelled& each : all)
        for (const model::WrittenDate& date : each.range->written)
            ++counts.at(static_cast<std::size_t>(date.form));
    return counts;
}

// The first that has the form, as it was typed; where none has, the first of all, in that form.
std::string date_in_form(const std::vector<Spelled>& all, trade::DateForm form,
                         const page_words::DateWords& words) {
    for (const Spelled& each : all)
        for (const model::WrittenDate& date : each.range->written)
            if (date.form == form) return each.range->typed.substr(date.offset, date.length);
    return spelled(all.front().range->written.front().date, form, words);
}

void date_forms(const ProofContext& context, std::vector<Finding>& findings) {
    const std::vector<Spelled> all = all_spelled(context);
    const auto counts = count_forms(all);
    if (std::ranges::count_if(counts, [](std::size_t count) { return count > 0; }) < 2) return;
    const auto& asked = context.resume.settings.dates_as;
    const auto form =
        asked.stated()
            ? *asked
            : static_cast<trade::DateForm>(std::ranges::max_element(counts) - counts.begin());
    std::vector<Place> odd;
    std::vector<Edit> edits;
    for (const Spelled& each : all) {
        if (each.is_all(form)) continue;
        odd.push_back(each.place);
        std::ranges::move(respellings(*each.range, form, context.resume.words.dates),
                          std::back_inserter(edits));
    }
    const std::string usual = date_in_form(all, form, context.resume.words.dates);
    const std::string lines = lines_listed(odd);
    Finding& finding =
        odd.size() == 1 ? report<messages::date_form_of_one>(findings, odd.front(), lines, usual)
                        : report<messages::date_forms_of_some>(findings, odd.front(), lines, usual);
    finding.safe_mend = std::move(edits);
}

// `2021 - 2023`, where the other positions have their months.
void years_alone(const ProofContext& context, std::vector<Finding>& findings) {
    const auto has_months = [](const model::DateRange& range) {
        const auto& date = range.start ? range.start : range.end;
        return date && (date->month || date->season);
    };
    const model::Entry* with = nullptr;
    std::size_t many = 0;
    std::vector<const model::Field*> without;
    for (const Position& position : positions(context.resume, {experience})) {
        const model::Field* field = position.entry->find(trade::FieldName::dates);
        const model::DateRange* range = dates_in(field);
        if (!range || range->typed.empty()) continue;
        if (!has_months(*range)) {
            without.push_back(field);
            continue;
        }
        with = with ? with : position.entry;
        ++many;
    }
    if (without.size() != 1 || many < 2) return;
    report<messages::years_alone>(findings, without.front()->place,
                                  in_quotes(dates_in(without.front())->typed), called(*with));
}

// `on 4/9/18`
std::optional<english::Extent> date_in_figures(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (!is_figure(text[at]) || (at > 0 && text[at - 1] != ' ' && text[at - 1] != '('))
            continue;
        const std::size_t end = std::min(text.find_first_not_of("0123456789/", at), text.size());
        const std::string_view date = text.substr(at, end - at);
        const auto parts = pieces_of(date, "/");
        const bool three = parts.size() == 3 && std::ranges::count(date, '/') == 2 &&
                           parts[0].size() < 3 && parts[1].size() < 3 &&
                           (parts[2].size() == 2 || parts[2].size() == 4);
        if (three) return english::Extent{at, end - at};
    }
    return std::nullopt;
}

void dates_told(const ProofContext& context, std::vector<Finding>& findings) {
    years_alone(context, findings);
    for (const WordedBullet& bullet : context.bullets)
        if (const auto date = date_in_figures(bullet.text))
            report<messages::date_in_figures>(findings, bullet.place(*date),
                                              in_quotes(bullet.words(*date)));
}

// --- up to date

void expected_past(const ProofContext& context, std::vector<Finding>& findings) {
    const model::Date day =
        context.read_on ? later(context.today, *context.read_on) : context.today;
    visit_dates(context.resume, [&](const model::Field& field, const model::DateRange& range) {
        if (range.expected && range.end && is_over(*range.end, day))
            report<messages::expected_past>(findings, field.place, in_quotes(range.typed));
    });
}

// `Aug 2027 - present`, read in 2026.
void begins_ahead(const ProofContext& context, std::vector<Finding>& findings) {
    const model::Date day =
        context.read_on ? later(context.today, *context.read_on) : context.today;
    visit_dates(context.resume, [&](const model::Field& field, const model::DateRange& range) {
        if (range.start && !range.end && is_incoming(range, day))
            report<messages::begins_ahead>(findings, field.place, in_quotes(range.typed));
    });
}

// `Sep 2025 - Jun 2027`, read in November 2026: the end is a plan, and nothing says so.
void ends_ahead(const ProofContext& context, std::vector<Finding>& findings) {
    const model::Date day =
        context.read_on ? later(context.today, *context.read_on) : context.today;
    visit_dates(context.resume, [&](const model::Field& field, const model::DateRange& range) {
        if (field.name != trade::FieldName::dates || !range.start || !range.end) return;
        if (range.expected || !range.end->month || is_incoming(range, day)) return;
        if (ends_far_ahead(range, day))
            report<messages::ends_far_ahead>(findings, field.place, in_quotes(range.typed));
        else if (surely_before(day, *range.end))
            report<messages::ends_ahead>(findings, field.place, in_quotes(range.typed)).weight =
                Weight::should;
    });
}

std::optional<int> months_since_update(const ProofContext& context) {
    const auto& updated = *context.resume.settings.updated;
    if (!updated || !context.read_on) return std::nullopt;
    int months = months_between(*updated, *context.read_on);
    if (updated->day && context.read_on->day && *context.read_on->day < *updated->day) --months;
    return months;
}

void not_updated(const ProofContext& context, std::vector<Finding>& findings) {
    const auto months = months_since_update(context);
    if (!months || *months < context.limits().updated_within) return;
    judged_by(context, &office::Limits::updated_within,
              report<messages::not_updated>(
                  findings, context.resume.settings.updated.place,
                  counted(static_cast<std::size_t>(*months), "month", "months")));
}

void stale_present(const ProofContext& context, std::vector<Finding>& findings) {
    const auto months = months_since_update(context);
    if (!months || *months < context.limits().present_within) return;
    visit_dates(context.resume, [&](const model::Field& field, const model::DateRange& range) {
        if (range.end) return;
        judged_by(context, &office::Limits::present_within,
                  report<messages::stale_present>(
                      findings, field.place,
                      counted(static_cast<std::size_t>(*months), "month", "months")));
    });
}

constexpr std::array date_table{
    Check{"dates-missing", Weight::must, "dates",
          "Every role and project has dates; so has every degree, by its graduation.",
          "A portal cannot add up your experience without them, and a reader takes the gap for "
          "something hidden.",
          "common practice", "role: Barista, and no 'dates:'", "dates: Sep 2024 - May 2026",
          dates_missing},
    Check{"end-before-start", Weight::must, "dates", "An end does not lie before its start.",
          "A date that cannot be true makes a reader doubt the others.",
          "ISO 8601-2:2019 (EDTF); common practice", "dates: Aug 2026 - Jun 2026",
          "dates: Jun 2026 - Aug 2026", end_before_start},
    Check{"dates-contradicted", Weight::must, "dates",
          "An entry's dates are no longer than what it says of itself: an internship of ten weeks, "
          "a summer, a course; and nothing in it goes back to before they begin.",
          "Of two spans for one thing a reader believes neither.", "common practice",
          "dates: Jun 2025 - Aug 2026, and - Ran tests in a 10-week internship",
          "dates: Jun 2026 - Aug 2026", dates_contradicted},
    Check{"day-given", Weight::should, "dates", "Dates give month and year, and no day.",
          "Nobody asks on which day you began, and the figures crowd the line.", "common practice",
          "dates: Jun 14, 2026 - Aug 21, 2026", "dates: Jun 2026 - Aug 2026", day_given},
    Check{"date-order", Weight::must, "dates",
          "In a section the entry that ended last stands first, and what goes on or ends in the "
          "future stands above all; a year or a season that may hold the other date is taken to "
          "be in order.",
          "Readers look for your latest work at the top and may read no further.",
          "common practice", "Jun 2025 - Aug 2025 above Sep 2025 - May 2026",
          "Sep 2025 - May 2026 above Jun 2025 - Aug 2025", date_order},
    Check{"date-forms", Weight::consider, "dates",
          "All dates of the source are written in one form: the one that 'dates-as' names, else "
          "the one used most.",
          "The page prints one form in any case; a source in one form is easier to look over.",
          "common practice", "Jun 2026 in one entry and 09/2025 in the next",
          "Jun 2026 and Sep 2025", date_forms},
    Check{"dates-told", Weight::should, "dates",
          "One position does not give years alone where the others have months, and no bullet has "
          "a date in figures.",
          "A date in another form looks like one that hides something.", "common practice",
          "dates: 2021 - 2023 below dates: Jul 2023 - Dec 2025", "dates: Sep 2021 - May 2023",
          dates_told},
    Check{"expected-past", Weight::should, "dates",
          "What is called expected lies ahead of the day the résumé is read.",
          "An expected date that is past says that nobody has looked this over since.",
          "common practice", "graduation: May 2026 (expected), read in November 2026",
          "graduation: May 2027 (expected)", expected_past},
    Check{"begins-ahead", Weight::must, "dates",
          "What goes on to the present has begun before the day the résumé is read.",
          "A start that has yet to come makes every other date doubtful.", "common practice",
          "dates: Aug 2027 - present, read in November 2026", "dates: Aug 2025 - present",
          begins_ahead},
    Check{"ends-ahead", Weight::must, "dates",
          "What has an end in the future says that it is expected; no end lies ten years ahead.",
          "A date that has not come is a plan, and the other dates are facts.", "common practice",
          "dates: Sep 2025 - Jun 2027, read in November 2026", "dates: Sep 2025 - present",
          ends_ahead},
    Check{"date-gap", Weight::should, "dates",
          "No year and a half after a job lies open: work, studies, projects or activities fill "
          "it, or a line that says what did.",
          "A reader sees the gap, and thinks of the worst that could fill it.", "common practice",
          "dates: Mar 2014 - Apr 2017 below dates: Feb 2022 - present",
          "role: Full-Time Parent, dates: Apr 2017 - Jan 2022", date_gap},
    Check{"stale-present", Weight::should, "dates",
          "Where something goes on to the present, 'updated' is not more than a year ago.",
          "'Present' means the day the résumé was written, and readers take it for today.",
          "common practice", "dates: Sep 2023 - present, updated: 2024-01-15",
          "dates: Sep 2023 - Jun 2024", stale_present},
    Check{"not-updated", Weight::should, "dates",
          "'updated' is not more than six months ago, about a term.",
          "A term brings courses, results and hours that the page does not show yet.",
          "common practice", "updated: 2026-03-01, read in November 2026", "updated: 2026-11-03",
          not_updated},
};

}

std::span<const Check> date_checks() {
    return date_table;
}

}

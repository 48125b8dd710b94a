// Between two jobs whatever has dates fills the time, and so do studies, which begin as long before
// their end as their degree takes.
#include "compiler/advice/date_gaps.hpp"

#include "compiler/advice/date_order.hpp"
#include "compiler/advice/date_spelling.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

namespace quoin::advice {

namespace {

using trade::FieldName;
using enum trade::Holds;

constexpr int a_year = trade::months_of_year;
constexpr int told_from = 18, long_from = 24; // months
constexpr int of_interest = 10 * a_year;      // nobody asks for what lies farther back

struct Span { // of months
    int first = 0, last = 0;
    const model::Field* job = nullptr; // its dates; none: it was no job
};

// How long one studies for it, by the usual plan of study (common practice).
int months_of_study(const std::string& degree) {
    if (has_phrase(degree, "bachelor")) return 5 * a_year;
    for (const std::string_view longer : {"doctor", "ph.d.", "phd", "doctorate"})
        if (has_phrase(degree, longer)) return 7 * a_year;
    for (const std::string_view shorter : {"certificate", "diploma", "license"})
        if (has_phrase(degree, shorter)) return a_year;
    return 3 * a_year;
}

// Nothing where a degree has no date that tells when one was there.
std::optional<Span> span_of_study(const model::Entry& entry, int today) {
    const model::Field* graduation = entry.find(FieldName::graduation);
    const model::DateRange* range =
        dates_in(graduation ? graduation : entry.find(FieldName::dates));
    if (!range || !range->end) return std::nullopt;
    const int end = months(*range->end).last;
    const int start =
        range->start ? months(*range->start).first
                     : end - months_of_study(lower_case(plain_in(entry.find(FieldName::degree))));
    return Span{start, std::min(end, today)};
}

std::optional<Span> span_of_entry(const model::Entry& entry, bool job, int today) {
    const model::Field* dates = entry.find(FieldName::dates);
    const model::DateRange* range = dates_in(dates);
    if (!range) return std::nullopt;
    const auto& start = range->start ? range->start : range->end;
    const int first = months(*start).first;
    const int end = range->end ? months(*range->end).last : today;
    const auto [from, to] = std::minmax(first, std::min(end, today)); // either may have a slip
    return Span{from, to, job ? dates : nullptr};
}

// All that the page dates, from the earliest on; nothing if a part of it has no dates.
std::vector<Span> spans_on(const model::Resume& resume, int today) {
    std::vector<Span> spans;
    const auto add = [&](const std::optional<Span>& span) {
        if (span) spans.push_back(*span);
        return span.has_value();
    };
    for (const Position& position : positions(resume, {education}))
        if (!add(span_of_study(*position.entry, today))) return {};
    for (const Position& position : positions(resume, {experience}))
        if (!add(span_of_entry(*position.entry, true, today))) return {};
    for (const Position& position : positions(resume, {projects, activities, other}))
        add(span_of_entry(*position.entry, false, today));
    std::ranges::sort(spans, {}, &Span::first);
    return spans;
}

void report_gap(const Span& before, int from, int to, const ProofContext& context,
                std::vector<Finding>& findings) {
    const auto named = [&](int month) {
        const model::Date date{month / a_year, month % a_year + 1, std::nullopt, std::nullopt};
        return spelled(date, trade::DateForm::short_month, context.resume.words.dates);
    };
    Finding& finding = report<messages::gap>(findings, before.job->place, named(from), named(to));
    if (to - from < long_from) finding.weight = Weight::consider;
}

}

void date_gap(const ProofContext& context, std::vector<Finding>& findings) {
    const int today = months(context.today).last;
    const std::vector<Span> spans = spans_on(context.resume, today);
    if (spans.empty()) return;
    Span latest = spans.front(); // what ended last so far
    bool worked = false;         // before the first job nothing is asked
    const auto look = [&](int next) {
        const bool recent = today - next < of_interest;
        if (worked && latest.job && recent && next - latest.last > told_from)
            report_gap(latest, latest.last, next, context, findings);
    };
    for (const Span& span : spans) {
        look(span.first);
        worked = worked || span.job;
        if (span.last >= latest.last) latest = span;
    }
    look(today);
}

}

// Checks of schools and degrees.
#include "compiler/advice/check.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/degree_names.hpp"
#include "compiler/advice/gpa.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <string>
#include <utility>

namespace quoin::advice {

namespace {

const model::Field* date_field(const model::Entry& entry) {
    const model::Field* graduation = entry.find(trade::FieldName::graduation);
    return graduation ? graduation : entry.find(trade::FieldName::dates);
}

void visit_schools(const ProofContext& context,
                   const std::function<void(const model::Entry&)>& visit) {
    for (const Position& position : positions(context.resume, {trade::Holds::education}))
        visit(*position.entry);
}

bool is_college(const model::Entry& entry) {
    return entry.find(trade::FieldName::school) && !is_before_college(entry);
}

bool has_college(const ProofContext& context) {
    bool found = false;
    visit_schools(context, [&](const model::Entry& entry) { found = found || is_college(entry); });
    return found;
}

// A certificate, a term abroad or courses may stand below a degree whatever their dates.
bool takes_rank(const model::Entry& entry) {
    if (is_before_college(entry)) return true;
    const model::Field* degree = entry.find(trade::FieldName::degree);
    return degree ? !is_no_degree(plain_in(degree))
                  : entry.find(trade::FieldName::graduation) != nullptr;
}

void degree_order(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Section& section : context.resume.sections) {
        if (section.holds != trade::Holds::education) continue;
        const model::Entry* above = nullptr;
        for (const model::Entry& entry : section.entries) {
            const model::DateRange* range = dates_in(date_field(entry));
            if (!range || !takes_rank(entry)) continue;
            const model::DateRange* before = above ? dates_in(date_field(*above)) : nullptr;
            if (before && out_of_order(*before, *range))
                report<messages::degree_out_of_order>(findings, place_of(*above), called(*above),
                                                      called(entry));
            above = &entry;
        }
    }
}

void degree_name(const ProofContext& context, std::vector<Finding>& findings) {
    visit_schools(context, [&](const model::Entry& entry) {
        const model::Field* field = entry.find(trade::FieldName::degree);
        const std::string name = plain_in(field);
        const DegreeReading reading = read_degree(name);
        if (reading.verdict != DegreeReading::Verdict::malformed) return;
        std::vector<Edit> mend;
        const std::string_view typed = source_at(context.sources, field->place);
        // an apostrophe is printed in another form than it is typed in
        if (reading.form_alone && read_degree(typed).usual == reading.usual)
            mend.push_back({field->place, reading.usual});
        Finding& finding = report<messages::unusual_degree>(findings, field->place, in_quotes(name),
                                                            reading.fault);
        finding.suggestion = reading.form_alone ? fill<messages::usual_degree>(reading.usual)
                                                : fill<messages::likely_degree>(reading.usual);
        finding.safe_mend = std::move(mend);
    });
}

void degree_type(const ProofContext& context, std::vector<Finding>& findings) {
    visit_schools(context, [&](const model::Entry& entry) {
        const model::Field* field = entry.find(trade::FieldName::degree);
        const std::string name = plain_in(field);
        if (field && read_degree(name).verdict == DegreeReading::Verdict::type_missing)
            report<messages::no_degree_type>(findings, field->place, in_quotes(name));
    });
}

// A season will do: some colleges award by the term.
bool lacks_month(const model::DateRange* range) {
    return range && range->end && !range->end->month && !range->end->season;
}

// Once one degree has its month, the others are read for theirs.
bool has_month_elsewhere(const ProofContext& context) {
    bool found = false;
    visit_schools(context, [&](const model::Entry& entry) {
        const model::DateRange* range = dates_in(date_field(entry));
        found = found || (is_college(entry) && range && range->end && !lacks_month(range));
    });
    return found;
}

// `degree: BA in Theatre, expected June 2027`: the date, with `(expected)` where it is so.
std::optional<std::string> graduation_within(const std::string& degree) {
    const std::size_t sign = degree.find_last_of(",(|;");
    if (sign == degree.npos) return std::nullopt;
    std::string_view last = trimmed(std::string_view(degree).substr(sign + 1), " ()");
    bool expected = false;
    for (const std::string_view word : {"expected", "Expected", "anticipated", "Anticipated"})
        if (last.starts_with(word)) {
            expected = true;
            last = trimmed(last.substr(word.size()), " :");
        }
    if (!has_digit(last) || !std::holds_alternative<model::DateRange>(model::read_dates(last)))
        return std::nullopt;
    return std::string(last) + (expected ? " (expected)" : "");
}

void graduation_missing(const ProofContext& context, std::vector<Finding>& findings) {
    const bool all = is_student(*context.resume.settings.stage) || has_month_elsewhere(context);
    visit_schools(context, [&](const model::Entry& entry) {
        const model::Field* degree = entry.find(trade::FieldName::degree);
        if (!degree) return;
        const model::Field* date = date_field(entry);
        if (!date) {
            Finding& finding =
                report<messages::no_graduation>(findings, degree->place, called(entry));
            if (const auto within = graduation_within(plain_in(degree)))
                finding.suggestion = fill<messages::graduation_within>(*within);
            return;
        }
        // long after, or where it is not the degree that counts, the year alone is enough
        const bool counts = all && is_college(entry) && takes_rank(entry);
        if (counts && lacks_month(dates_in(date)))
            report<messages::no_month>(findings, date->place,
                                       in_quotes(source_at(context.sources, date->place)),
                                       called(entry));
    });
}

void judge_gpa(const Gpa& gpa, const std::string& text, const Place& place,
               std::vector<Finding>& findings) {
    if (gpa.over_scale()) {
        report<messages::gpa_over_scale>(findings, place, in_quotes(text));
        return;
    }
    const bool is_number = text.find_first_not_of("0123456789.") == std::string::npos;
    if (!gpa.scale)
        report<messages::gpa_without_scale>(findings, place, in_quotes(text)).suggestion =
            is_number && gpa.decimals <= 2 ? fill<messages::add_scale>(text)
                                           : fill<messages::add_scale_as_in>();
    if (gpa.decimals > 2)
        report<messages::many_decimals>(findings, place, in_quotes(text),
                                        counted(gpa.decimals, "decimal", "decimals"));
}

void gpa_form(const ProofContext& context, std::vector<Finding>& findings) {
    visit_schools(context, [&](const model::Entry& entry) {
        const model::Field* field = entry.find(trade::FieldName::gpa);
        if (!field) return;
        const std::string text = plain_in(field);
        if (const auto gpa = read_gpa(text))
            judge_gpa(*gpa, text, field->place, findings);
        else
            report<messages::no_gpa>(findings, field->place, in_quotes(text));
    });
}

std::string as_gpa(double value) { // "3.5", "3.25"
    std::string text = fmt::format("{:.2f}", value);
    if (text.ends_with('0')) text.pop_back();
    return text;
}

void gpa_low(const ProofContext& context, std::vector<Finding>& findings) {
    visit_schools(context, [&](const model::Entry& entry) {
        const model::Field* field = entry.find(trade::FieldName::gpa);
        const auto gpa = field ? read_gpa(plain_in(field)) : std::nullopt;
        const double least = context.limits().gpa_leave_out;
        if (gpa && gpa->is_under(least))
            judged_by(context, &office::Limits::gpa_leave_out,
                      report<messages::low_gpa>(findings, field->place, in_quotes(plain_in(field)),
                                                as_gpa(least)));
    });
}

// What ended by the month of graduation from high school, in a section of activities.
void report_school_activities(const ProofContext& context, const model::Date& graduation,
                              std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {trade::Holds::activities})) {
        const model::DateRange* range = dates_in(position.entry->find(trade::FieldName::dates));
        if (!range || !range->end || months(*range->end).last > months(graduation).last) continue;
        report<messages::activity_of_school>(findings, place_of(*position.entry),
                                             called(*position.entry));
    }
}

// Months that a degree takes, at the least.
int least_months(const model::Entry& entry) {
    constexpr int of_associate = 20, of_bachelor = 44;
    const std::string degree = lower_case(plain_in(entry.find(trade::FieldName::degree)));
    return has_phrase(degree, "bachelor")           ? of_bachelor
           : degree.empty() || is_no_degree(degree) ? 0
                                                    : of_associate;
}

// `Cape Morrow High School Peer Mediators`, over before the first degree was begun.
void report_named_for_school(const ProofContext& context, std::vector<Finding>& findings) {
    std::optional<int> begun;
    visit_schools(context, [&](const model::Entry& entry) {
        const model::DateRange* range = is_college(entry) ? dates_in(date_field(entry)) : nullptr;
        if (!range || !range->end) return;
        const int start = months(*range->end).first - least_months(entry);
        begun = std::min(begun.value_or(start), start);
    });
    if (!begun) return;
    for (const Position& position :
         positions(context.resume, {trade::Holds::activities, trade::Holds::honors})) {
        const model::DateRange* range = dates_in(position.entry->find(trade::FieldName::dates));
        const bool named = std::ranges::any_of(position.entry->fields, [](const auto& field) {
            return has_phrase(lower_case(plain_in(&field)), "high school");
        });
        if (named && range && range->end && months(*range->end).last <= *begun)
            report<messages::activity_of_school>(findings, place_of(*position.entry),
                                                 called(*position.entry));
    }
}

constexpr int months_of_first_year = 15; // months after high school: to the second September
constexpr int least_to_degree = 12;      // months to the degree, of someone in the first year
constexpr int most_of_a_degree = 30;     // months to the degree that tell the first year alone

// Months from today to the last of the dates of graduation from such schools.
std::optional<int> months_to_graduation(const ProofContext& context,
                                        bool (*of)(const model::Entry&)) {
    std::optional<int> most;
    visit_schools(context, [&](const model::Entry& entry) {
        const model::DateRange* range = of(entry) ? dates_in(date_field(entry)) : nullptr;
        if (!range || !range->end) return;
        const int distance = months(*range->end).last - months(context.today).first;
        most = std::max(most.value_or(distance), distance);
    });
    return most;
}

bool is_first_year(const ProofContext& context) {
    const auto school = months_to_graduation(context, is_before_college);
    const auto degree = months_to_graduation(context, is_college);
    if (!school) return degree && *degree >= most_of_a_degree;
    if (*school >= 0) return true; // still there
    return *school > -months_of_first_year && degree.value_or(least_to_degree) >= least_to_degree;
}

// A first term has no grades yet.
bool is_first_term(const ProofContext& context) {
    constexpr int after_school = 7; // months, to the end of January
    const auto school = months_to_graduation(context, is_before_college);
    return school && *school > -after_school && is_first_year(context);
}

// Asked of the first college alone, if none says it.
void gpa_unsaid(const ProofContext& context, std::vector<Finding>& findings) {
    if (!is_student(*context.resume.settings.stage) || is_first_term(context)) return;
    const model::Entry* first = nullptr;
    bool said = false;
    visit_schools(context, [&](const model::Entry& entry) {
        if (!is_college(entry)) return;
        said = said || entry.find(trade::FieldName::gpa) != nullptr;
        if (!first && entry.find(trade::FieldName::degree)) first = &entry;
    });
    if (!first || said) return;
    const office::Limits& limits = context.limits();
    Finding& finding = report<messages::gpa_unsaid>(
        findings, first->find(trade::FieldName::degree)->place, called(*first));
    finding.suggestion =
        fill<messages::show_gpa>(as_gpa(limits.gpa_show), as_gpa(limits.gpa_leave_out));
    judged_by(context, &office::Limits::gpa_show, finding);
}

// An apprenticeship asks for a diploma.
bool is_apprenticed(const ProofContext& context) {
    bool found = false;
    visit_schools(context, [&](const model::Entry& entry) {
        const std::string degree = lower_case(plain_in(entry.find(trade::FieldName::degree)));
        found = found || has_phrase(degree, "apprenticeship");
    });
    return found;
}

// Up to a first degree of two years school is the last that was finished.
bool is_in_short_course(const ProofContext& context) {
    bool in_short = true;
    visit_schools(context, [&](const model::Entry& entry) {
        if (!is_college(entry)) return;
        const std::string degree = lower_case(plain_in(entry.find(trade::FieldName::degree)));
        const model::DateRange* range = dates_in(date_field(entry));
        const bool ahead = range && range->end && surely_before(context.today, *range->end);
        in_short = in_short && ahead && has_phrase(degree, "associate");
    });
    return in_short;
}

void high_school(const ProofContext& context, std::vector<Finding>& findings) {
    if (!has_college(context) || is_first_year(context) || is_apprenticed(context)) return;
    if (is_in_short_course(context)) return;
    std::optional<model::Date> graduation;
    visit_schools(context, [&](const model::Entry& entry) {
        const model::Field* school = entry.find(trade::FieldName::school);
        if (!school || !is_before_college(entry)) return;
        report<messages::high_school>(findings, school->place, in_quotes(plain_in(school)));
        const model::DateRange* range = dates_in(date_field(entry));
        if (range && range->end)
            graduation = graduation ? later(*graduation, *range->end) : *range->end;
    });
    if (graduation)
        report_school_activities(context, *graduation, findings);
    else
        report_named_for_school(context, findings);
}

void honors_order(const ProofContext& context, std::vector<Finding>& findings) {
    const auto is_list = [](const model::Text& item, std::string_view whose) {
        const std::string text = lower_case(item.plain());
        return text.find(whose) != std::string::npos && has_phrase(text, "list");
    };
    visit_schools(context, [&](const model::Entry& entry) {
        const auto* items = items_in(entry.find(trade::FieldName::honors));
        if (!items) return;
        bool dean = false;
        for (const model::Text& item : *items) {
            if (dean && is_list(item, "president"))
                report<messages::honors_out_of_order>(findings, item.place(0, item.plain().size()),
                                                      in_quotes(item.plain()));
            dean = dean || is_list(item, "dean");
        }
    });
}

void course_count(const ProofContext& context, std::vector<Finding>& findings) {
    visit_schools(context, [&](const model::Entry& entry) {
        const model::Field* field = entry.find(trade::FieldName::courses);
        const auto* items = items_in(field);
        const auto most = static_cast<std::size_t>(context.limits().most_courses);
        if (!items || items->size() <= most) return;
        Finding& finding = report<messages::many_courses>(
            findings, field->place, counted(items->size(), "course is", "courses are"));
        finding.suggestion = fill<messages::keep_courses>(in_words(most));
        judged_by(context, &office::Limits::most_courses, finding);
    });
}

void course_twice(const ProofContext& context, std::vector<Finding>& findings) {
    std::set<std::string> seen;
    visit_schools(context, [&](const model::Entry& entry) {
        const auto* items = items_in(entry.find(trade::FieldName::courses));
        if (!items) return;
        for (const model::Text& course : *items) {
            const std::string name = course.plain();
            if (!seen.insert(lower_case(name)).second)
                report<messages::course_twice>(findings, course.place(0, name.size()),
                                               in_quotes(name));
        }
    });
}

constexpr std::array education_table{
    Check{"degree-order", Weight::must, "education",
          "The most recent degree stands first; certificates and terms abroad are no degrees.",
          "Readers take the first degree for the highest one you have or are working on.",
          "common practice", "Jun 2025 above May 2027 (expected)",
          "May 2027 (expected) above Jun 2025", degree_order},
    Check{"degree-name", Weight::must, "education", "A degree bears its name as colleges award it.",
          "A slip in the name of your own degree is the one that every reader sees.",
          "common practice", "degree: Bachelors of Science in Biology",
          "degree: Bachelor of Science in Biology", degree_name},
    Check{"degree-type", Weight::must, "education", "A degree says which degree it is.",
          "A portal matches 'Bachelor of Science' and its like, and finds none in 'Biology'.",
          "common practice", "degree: Biology", "degree: Bachelor of Science in Biology",
          degree_type},
    Check{"graduation-missing", Weight::must, "education",
          "A degree has the month and year of its graduation, past or expected; a season will do.",
          "Employers hire for a date, and a portal leaves out who has none.", "common practice",
          "degree: Bachelor of Arts in English, and no 'graduation:'",
          "graduation: May 2027 (expected)", graduation_missing},
    Check{"gpa-form", Weight::must, "education",
          "A GPA is a number with its scale, at most two decimals, and not over the scale.",
          "Without its scale the number says nothing, and a portal refuses one over it.",
          "common practice", "gpa: 3.625", "gpa: 3.62 / 4.00", gpa_form},
    Check{"gpa-low", Weight::should, "education", "A GPA that is shown is 3.0 of 4 or over.",
          "Below 3.0 it says less for you than anything else that could stand in its place.",
          "common practice", "gpa: 2.5 / 4.0", "no 'gpa:' line", gpa_low},
    Check{"gpa-unsaid",
          Weight::consider,
          "education",
          "A student's or recent graduate's degree without a GPA: a reminder of the thresholds.",
          "From 3.5 it opens doors, and some employers ask for it first.",
          "common practice",
          "a GPA of 3.7 that is not shown",
          "gpa: 3.70 / 4.00",
          gpa_unsaid,
          {},
          true},
    Check{"high-school", Weight::should, "education",
          "From the second year on there is no high school beside a college, and no activity that "
          "ended with it.",
          "College work has to fill the page by itself; what is older makes you look younger.",
          "common practice", "school: North Jetty High School below a college", "the college alone",
          high_school},
    Check{"honors-order", Weight::consider, "education",
          "Of the lists for grades the President's stands before the Dean's.",
          "The first honor is the one that is read.", "common practice",
          "honors: Dean's List; President's List", "honors: President's List; Dean's List",
          honors_order},
    Check{"course-count", Weight::consider, "education", "At most about eight courses are listed.",
          "A long list hides the two that matter for this job.", "common practice",
          "twelve courses", "six courses that the employer would ask about", course_count},
    Check{"course-twice", Weight::consider, "education", "No course is listed twice.",
          "The second one takes the room of another.", "common practice",
          "courses: Heat Transfer; Vibrations; Heat Transfer", "courses: Heat Transfer; Vibrations",
          course_twice},
};

}

std::span<const Check> education_checks() {
    return education_table;
}

}

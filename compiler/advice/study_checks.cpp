// Checks of studies: what is still to come and is not called expected, courses that everybody
// takes, prizes of a child, and two goals on one page.
#include "compiler/advice/check.hpp"
#include "compiler/advice/date_order.hpp"
#include "compiler/advice/lists.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <string>
#include <utility>

namespace quoin::advice {

namespace {

using trade::FieldName;
using enum trade::Holds;

const model::Date& day_of_reading(const ProofContext& context) {
    return context.read_on ? later(context.today, *context.read_on) : context.today;
}

// `graduation: May 2028`, `Spring 2028`, read in November 2026.
void not_expected(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {education})) {
        const model::Field* field = position.entry->find(FieldName::graduation);
        const model::DateRange* range = dates_in(field);
        if (!range || range->expected || range->start || !range->end) continue;
        if (surely_before(day_of_reading(context), *range->end))
            report<messages::not_expected>(findings, field->place, in_quotes(range->typed));
    }
}

// Who is about to be a bachelor, or is one, has courses of the field.
bool is_near_bachelor(const model::Entry& entry, const model::Date& today) {
    constexpr int near = 18; // months
    const model::DateRange* range = dates_in(entry.find(FieldName::graduation));
    const std::string degree = lower_case(plain_in(entry.find(FieldName::degree)));
    return has_phrase(degree, "bachelor") && range && range->end &&
           months_between(today, *range->end) < near;
}

// The first of them, in whatever list of courses.
void general_course(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {education})) {
        const auto* items = items_in(position.entry->find(FieldName::courses));
        if (!items || !is_near_bachelor(*position.entry, context.today)) continue;
        for (const model::Text& course : *items) {
            const std::string name = course.plain();
            if (!is_one_of(lower_case(name), List::general_courses)) continue;
            report<messages::general_course>(findings, course.place(0, name.size()),
                                             in_quotes(name));
            return;
        }
    }
}

bool is_of_child(std::string_view lower) {
    return std::ranges::any_of(listed(List::childhood),
                               [&](auto phrase) { return has_phrase(lower, phrase); });
}

// Who has done well in school is praised for it there; who teaches it is not.
void childhood(const ProofContext& context, std::vector<Finding>& findings) {
    const auto look = [&](const model::Text& text) {
        const std::string plain = text.plain();
        if (is_of_child(lower_case(plain)))
            report<messages::of_childhood>(findings, text.place(0, plain.size()), in_quotes(plain));
    };
    for (const Position& position : positions(context.resume, {education}))
        if (const auto* items = items_in(position.entry->find(FieldName::honors)))
            std::ranges::for_each(*items, look);
    for (const Position& position : positions(context.resume, {trade::Holds::honors}))
        if (const model::Text* name = text_in(naming_field(*position.entry))) look(*name);
}

// --- the year of study

// Of a student as the headline has it: of the years to a bachelor's degree, those still to come.
std::optional<std::pair<WordAt, int>> class_in(std::string_view lower) {
    constexpr std::array<std::pair<std::string_view, int>, 5> classes{
        {{"freshman", 3}, {"first-year", 3}, {"sophomore", 2}, {"junior", 1}, {"senior", 0}}};
    constexpr std::array<std::string_view, 6> students{"student", "major",         "at",
                                                       "in",      "undergraduate", "and"};
    const auto words = words_in(lower);
    for (std::size_t i = 0; i < words.size(); ++i)
        for (const auto& [name, years] : classes) {
            if (words[i].word != name) continue;
            const bool ends =
                i + 1 == words.size() || words[i].offset + name.size() + 1 != words[i + 1].offset;
            if (ends || is_one_of(words[i + 1].word, students)) return std::pair{words[i], years};
        }
    return std::nullopt;
}

// The academic years that end after this day, up to the one in which the degree is earned.
struct YearsToDegree {
    int years = 0;
    bool fixed = false; // at high school, where a year more is rare
};
std::optional<YearsToDegree> years_to_degree(const ProofContext& context) {
    constexpr int summer = 7; // from July on the next year has begun
    for (const Position& position : positions(context.resume, {education})) {
        const model::DateRange* range = dates_in(position.entry->find(FieldName::graduation));
        const std::string degree = lower_case(plain_in(position.entry->find(FieldName::degree)));
        const bool counted = has_phrase(degree, "bachelor") || is_before_college(*position.entry);
        if (!range || !range->end || !range->end->month || !counted) continue;
        if (!surely_before(day_of_reading(context), *range->end)) continue;
        const auto year_of = [&](const model::Date& date) {
            return date.year + (date.month.value_or(1) >= summer ? 1 : 0);
        };
        return YearsToDegree{year_of(*range->end) - year_of(day_of_reading(context)),
                             is_before_college(*position.entry)};
    }
    return std::nullopt;
}

// A year apart may be a year that took longer; two are a slip.
void class_year(const ProofContext& context, std::vector<Finding>& findings) {
    const auto ahead = years_to_degree(context);
    if (!ahead) return;
    const int years = ahead->years, least_apart = ahead->fixed ? 1 : 2;
    for (const TextInResume& part : context.texts) {
        const bool claim = part.field && (part.field->name == FieldName::headline ||
                                          part.field->name == FieldName::text);
        if (!claim) continue;
        const auto told = class_in(part.lower);
        if (!told || std::abs(told->second - years) < least_apart) continue;
        report<messages::class_differs>(
            findings, part.text.place(told->first.offset, told->first.word.size()),
            in_quotes(part.plain.substr(told->first.offset, told->first.word.size())),
            years == 0 ? fill<messages::under_a_year>()
                       : counted(static_cast<std::size_t>(years), "year", "years"));
    }
}

// --- two goals

// The degree that is sought in a text, and where it is named.
std::optional<WordAt> degree_sought(std::string_view lower) {
    constexpr std::array<std::string_view, 4> seeking{"seeking", "applicant", "applying",
                                                      "pursuing"};
    const bool sought = std::ranges::any_of(
        seeking, [&](std::string_view word) { return has_phrase(lower, word); });
    if (!sought) return std::nullopt;
    for (const std::string_view level :
         {"doctorate", "doctoral", "phd", "ph.d.", "master's", "masters", "bachelor's"})
        if (const std::size_t at = find_phrase(lower, level); at != lower.npos)
            return WordAt{level, at};
    return std::nullopt;
}

// --- two employers

// Capitalised words side by side, two at least, from the word at `i` on: Tamsin Harbor Dental.
std::string_view name_from(std::string_view text, const std::vector<WordAt>& words, std::size_t i) {
    std::size_t end = i;
    while (
        end < words.size() && is_capitalised(words[end].word) &&
        (end == i || words[end - 1].offset + words[end - 1].word.size() + 1 == words[end].offset))
        ++end;
    if (end < i + 2) return {};
    const std::size_t begin = words[i].offset;
    return text.substr(begin, words[end - 1].offset + words[end - 1].word.size() - begin);
}

// `Applicant for Attendance Secretary, Skelling School District`
std::string_view employer_sought(std::string_view headline) {
    const std::string lower = lower_case(headline);
    const std::size_t comma = headline.rfind(", ");
    const bool applies = has_phrase(lower, "applicant") || has_phrase(lower, "applying") ||
                         has_phrase(lower, "candidate");
    if (!applies || comma == headline.npos) return {};
    return name_from(headline.substr(comma), words_in(headline.substr(comma)), 0);
}

bool is_on_page(const TextsRead& texts, std::string_view name) {
    return std::ranges::any_of(texts, [&](const TextInResume& part) {
        const bool summary = part.field && part.field->name == FieldName::text;
        return !summary && has_phrase(part.lower, name);
    });
}

// `to the team at Tamsin Harbor Dental`, where the headline names another.
void another_employer(const ProofContext& context, std::vector<Finding>& findings) {
    constexpr std::array<std::string_view, 8> wishes{"eager",   "seeking", "join",  "bring",
                                                     "looking", "hope",    "apply", "excited"};
    constexpr std::array<std::string_view, 5> before{"at", "with", "join", "for", "joining"};
    const std::string headline = plain_in(context.resume.find(FieldName::headline));
    const std::string_view sought = employer_sought(headline);
    if (sought.empty()) return;
    for (const TextInResume& part : context.texts) {
        if (!part.field || part.field->name != FieldName::text || part.in_heading) continue;
        if (std::ranges::none_of(wishes, [&](auto wish) { return has_phrase(part.lower, wish); }))
            continue;
        const auto& words = part.words;
        for (std::size_t i = 1; i < words.size(); ++i) {
            if (!is_one_of(words[i - 1].word, before)) continue;
            const std::string_view name = name_from(part.plain, words, i);
            if (name.empty() || is_on_page(context.texts, lower_case(name))) continue;
            report<messages::goals_differ>(findings, part.text.place(words[i].offset, name.size()),
                                           in_quotes(name), in_quotes(sought));
            break;
        }
    }
}

void goals_differ(const ProofContext& context, std::vector<Finding>& findings) {
    another_employer(context, findings);
    const std::string headline =
        straight_apostrophes(lower_case(plain_in(context.resume.find(FieldName::headline))));
    const auto first = degree_sought(headline);
    if (!first) return;
    for (const TextInResume& part : context.texts) {
        if (!part.field || part.field->name != FieldName::text) continue;
        const auto other = degree_sought(straight_apostrophes(part.lower));
        if (!other || other->word.front() == first->word.front()) continue;
        if (other->word.front() + first->word.front() == 'd' + 'p') continue;
        report<messages::goals_differ>(findings, part.text.place(0, part.plain.size()),
                                       in_quotes(other->word), in_quotes(first->word));
    }
}

constexpr std::array study_table{
    Check{"not-expected", Weight::must, "education",
          "A graduation that is still to come is called expected.",
          "Without the word it claims a degree that is not there yet.", "common practice",
          "graduation: May 2028, read in November 2026", "graduation: May 2028 (expected)",
          not_expected},
    Check{"general-course", Weight::consider, "education",
          "No course of the first year that every student takes stands among the courses.",
          "It tells nothing of a field, and takes the room of one that does.", "common practice",
          "courses: College Writing; Marine Ecology", "courses: Marine Ecology", general_course},
    Check{"childhood", Weight::consider, "education", "No prize of grade school or middle school.",
          "Employers look at what you have done as an adult.", "common practice",
          "award: Spelling Bee Champion, Grade 6", "award: Ellery Prize", childhood},
    Check{"class-year", Weight::should, "claims",
          "The year of study that headline or summary name fits the date of the degree.",
          "One of the two is a slip, and a reader cannot tell which.", "common practice",
          "headline: Biology senior, and graduation: May 2029 (expected)",
          "headline: Biology sophomore", class_year},
    Check{"goals-differ", Weight::must, "claims",
          "Headline and summary seek the same degree, and name the same employer.",
          "It was written for another reader, and this one notices.", "common practice",
          "headline: Applicant for a master's in counseling, text: Seeking a doctorate",
          "text: Seeking a master's", goals_differ},
};

}

std::span<const Check> study_checks() {
    return study_table;
}

}

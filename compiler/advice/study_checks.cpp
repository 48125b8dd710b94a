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
#include <optional>
#include <string>

namespace quoin::advice {

namespace {

using trade::FieldName;
using enum trade::Holds;

const model::Date& day_of_reading(const ProofContext& context) {
    return context.read_on ? later(context.today, *context.read_on) : context.today;
}

// `graduation: May 2028`, read in November 2026.
void not_expected(const ProofContext& context, std::vector<Finding>& findings) {
    for (const Position& position : positions(context.resume, {education})) {
        const model::Field* field = position.entry->find(FieldName::graduation);
        const model::DateRange* range = dates_in(field);
        if (!range || range->expected || range->start || !range->end || !range->end->month)
            continue;
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

void goals_differ(const ProofContext& context, std::vector<Finding>& findings) {
    const std::string headline =
        straight_apostrophes(lower_case(plain_in(context.resume.find(FieldName::headline))));
    const auto first = degree_sought(headline);
    if (!first) return;
    visit_texts(context.resume, [&](const TextInResume& part) {
        if (!part.field || part.field->name != FieldName::text) return;
        const std::string plain = part.text.plain();
        const auto other = degree_sought(straight_apostrophes(lower_case(plain)));
        if (!other || other->word.front() == first->word.front()) return;
        if (other->word.front() + first->word.front() == 'd' + 'p') return;
        report<messages::goals_differ>(findings, part.text.place(0, plain.size()),
                                       in_quotes(other->word), in_quotes(first->word));
    });
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
    Check{"goals-differ", Weight::must, "claims", "Headline and summary seek the same degree.",
          "It was written for another program, and this one notices.", "common practice",
          "headline: Applicant for a master's in counseling, text: Seeking a doctorate",
          "text: Seeking a master's", goals_differ},
};

}

std::span<const Check> study_checks() {
    return study_table;
}

}

// Checks of what a résumé had better not tell.
#include "compiler/advice/check.hpp"
#include "compiler/advice/contact_forms.hpp"
#include "compiler/advice/privacy_phrases.hpp"
#include "compiler/advice/repository.hpp"
#include "compiler/advice/walk.hpp"
#include "compiler/base/message.hpp"
#include "compiler/base/phrases.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>

namespace quoin::advice {

namespace {

constexpr std::string_view law =
    "Local law and the employer's own rules decide; where one asks for this, give it there.";

// A line of the page: a text, or a group of skills with its label, which belong together.
struct LineInResume {
    std::string_view text, lower;
    const TextInResume& part;
    WhereFrom from{};

    // Of bytes of `text`; all of a group, whose pieces stand apart.
    Place place(english::Extent extent) const {
        return from == WhereFrom::group || from == WhereFrom::pair
                   ? part.field->place
                   : part.text.place(extent.offset, extent.length);
    }
    Place whole() const { return place({0, text.size()}); }
    std::string_view words(english::Extent extent) const {
        return text.substr(extent.offset, extent.length);
    }
};
using VisitLine = std::function<void(const LineInResume&)>;

WhereFrom where_from(const TextInResume& part) {
    if (part.bullet) return WhereFrom::bullet;
    if (part.in_heading) return WhereFrom::heading;
    if (!part.field) return WhereFrom::field;
    if (part.field->name == trade::FieldName::group) return WhereFrom::group;
    return part.field->name == trade::FieldName::text ? WhereFrom::text : WhereFrom::field;
}

std::string whole_group(const model::Field& group) {
    std::string text = group.label.empty() ? "" : group.label.plain() + ": ";
    const auto* items = items_in(&group);
    for (std::size_t i = 0; items && i < items->size(); ++i)
        text += (i > 0 ? ", " : "") + (*items)[i].plain();
    return text;
}

bool has_pair(const model::Entry& entry) {
    return entry.find(trade::FieldName::title) && entry.find(trade::FieldName::detail);
}

void visit_made(const std::string& text, const TextInResume& part, WhereFrom from,
                const VisitLine& visit) {
    visit({text, lower_case(text), part, from});
}

// `title: Marital status` above `detail: Engaged` is one line with its label.
void visit_pairs(const ProofContext& context, const VisitLine& visit) {
    for (const Position& position : positions(context.resume, {trade::Holds::other})) {
        if (!has_pair(*position.entry)) continue;
        const model::Text* text = text_in(position.entry->find(trade::FieldName::detail));
        if (!text) continue;
        const auto part = std::ranges::find(context.texts, text,
                                            [](const TextInResume& one) { return &one.text; });
        visit_made(plain_in(position.entry->find(trade::FieldName::title)) + ": " + part->plain,
                   *part, WhereFrom::pair, visit);
    }
}

std::set<const model::Field*> fields_in_pairs(const model::Resume& resume) {
    std::set<const model::Field*> fields;
    for (const Position& position : positions(resume, {trade::Holds::other}))
        if (has_pair(*position.entry))
            for (const trade::FieldName name : {trade::FieldName::title, trade::FieldName::detail})
                fields.insert(position.entry->find(name));
    return fields;
}

void visit_lines(const ProofContext& context, const VisitLine& visit) {
    visit_pairs(context, visit);
    const std::set<const model::Field*> paired = fields_in_pairs(context.resume);
    for (const TextInResume& part : context.texts) {
        const WhereFrom from = where_from(part);
        if (paired.contains(part.field)) continue;
        if (from != WhereFrom::group)
            visit({part.plain, part.lower, part, from});
        else if (&part.text == &part.field->label)
            visit_made(whole_group(*part.field), part, from, visit);
    }
}

// Of a name, a school or an employer nothing is said about oneself.
bool may_tell_of_person(const TextInResume& part) {
    return part.bullet || (part.field && has(part.field->name, trade::Trait::tells));
}

void identity_number(const ProofContext& context, std::vector<Finding>& findings) {
    visit_lines(context, [&](const LineInResume& line) {
        if (const auto number = identity_number_in(line.lower))
            report<messages::identity_number>(findings, line.place(*number));
    });
}

// The clause that tells it by itself; the whole line, if it takes several.
Place telling_place(const LineInResume& line) {
    if (line.from != WhereFrom::text) return line.whole();
    for (const Clause& clause : clauses_in(line.lower))
        if (personal_detail_in(clause.text, line.from)) return line.place(clause.extent);
    return line.whole();
}

void personal_details(const ProofContext& context, std::vector<Finding>& findings) {
    visit_lines(context, [&](const LineInResume& line) {
        if (!may_tell_of_person(line.part)) return;
        if (const auto what = personal_detail_in(line.lower, line.from))
            report<messages::personal_detail>(findings, telling_place(line), *what);
    });
}

void report_references(const LineInResume& line, english::Extent extent,
                       std::vector<Finding>& findings) {
    report<messages::references>(findings, line.place(extent), in_quotes(line.words(extent)));
}

using Sections = std::set<const model::Section*>;

// Telephone and email of somebody are told by another check.
Sections sections_with_contact(const TextsRead& texts) {
    Sections sections;
    for (const TextInResume& part : texts)
        if (part.plain.find('@') != part.plain.npos || has_digit(part.plain))
            sections.insert(part.section);
    return sections;
}

Sections sections_of_references(const model::Resume& resume) {
    Sections sections;
    for (const model::Section& section : resume.sections) {
        const std::string title = lower_case(section.title.plain());
        if (has_phrase(title, "references") || has_phrase(title, "referees"))
            sections.insert(&section);
    }
    return sections;
}

// Sections of that title, whatever they say; by their first line.
void references_named(const ProofContext& context, std::vector<Finding>& findings) {
    Sections sections = sections_of_references(context.resume);
    if (sections.empty()) return;
    const Sections with_contact = sections_with_contact(context.texts);
    visit_lines(context, [&](const LineInResume& line) {
        if (!sections.contains(line.part.section)) return;
        const bool title_itself = !line.part.field && !line.part.bullet;
        const bool offer = references_in(line.lower, line.from).has_value(); // told already
        if (!offer && (title_itself || line.text.empty())) return;
        sections.erase(line.part.section);
        if (!offer && !with_contact.contains(line.part.section))
            report<messages::references_named>(findings, line.whole(), in_quotes(line.text));
    });
}

void references_line(const ProofContext& context, std::vector<Finding>& findings) {
    visit_lines(context, [&](const LineInResume& line) {
        if (const auto offer = references_in(line.lower, line.from))
            report_references(line, *offer, findings);
    });
    references_named(context, findings);
}

void salary(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Section& section : context.resume.sections) {
        const std::string title = section.title.plain(), lower = lower_case(title);
        for (const std::string_view pay : {"salary", "salaries", "compensation", "pay history"})
            if (has_phrase(lower, pay))
                report<messages::salary>(findings, section.place, in_quotes(title));
    }
    visit_lines(context, [&](const LineInResume& line) {
        if (!may_tell_of_person(line.part) && !line.part.bullet) return;
        if (const auto told = salary_in(line.lower, line.from))
            report<messages::salary>(findings, line.place(*told), in_quotes(line.words(*told)));
    });
}

// "License #123456", "RN License No. 123456"
void licence_number(const ProofContext& context, std::vector<Finding>& findings) {
    visit_lines(context, [&](const LineInResume& line) {
        const auto number = licence_number_in(line.lower, line.from);
        if (!number) return;
        const std::string words = in_quotes(line.words(*number));
        if (line.lower.find("driv") != line.lower.npos) // by which a state knows everybody
            report<messages::drivers_number>(findings, line.place(*number), words);
        else
            report<messages::licence_number>(findings, line.place(*number), words).weight =
                Weight::consider;
    });
}

void public_repository(const ProofContext& context, std::vector<Finding>& findings) {
    for (const model::Field& field : context.resume.heading) {
        const bool street = field.name == trade::FieldName::address && has_street(plain_in(&field));
        if (!street && field.name != trade::FieldName::phone) continue;
        const auto host = public_host(context.sources.file(field.place.file).path);
        if (!host) continue;
        report<messages::public_repository>(findings, field.place, in_quotes(*host),
                                            street ? "address" : "number");
        return;
    }
}

constexpr std::array privacy_table{
    Check{"identity-number", Weight::must, "privacy",
          "No number by which a state knows you: Social Security, passport.",
          "It is all that a thief needs, and a résumé goes to strangers.",
          "Social Security Administration, on the form of its numbers; common practice",
          "SSN: 123-45-6789", "no such line", identity_number, law},
    Check{"personal-details", Weight::must, "privacy",
          "No birth date, age, marital status, religion, health, photo or the like.",
          "In the US employers may not weigh most of these, and many set aside a résumé that shows "
          "them.",
          "29 CFR 1604 to 1607 and 1625 (US equal employment opportunity); common practice",
          "Date of birth: March 3, 2005", "no such line", personal_details, law},
    Check{"references-line", Weight::should, "privacy", "No line that says references can be had.",
          "It takes a line to say what every reader knows.", "common practice",
          "text: References available upon request", "no such line", references_line},
    Check{"salary", Weight::should, "privacy", "No salary, past or wished for.",
          "The first to name a figure gives one away.", "common practice",
          "text: Desired salary: $60,000", "no such line", salary},
    Check{"licence-number", Weight::must, "privacy",
          "A licence stands without its number; a driver's above all, by which a state knows you.",
          "The number lets others pass for you, and boards answer by name.", "common practice",
          "credential: RN License #123456", "credential: Registered Nurse", licence_number,
          "A licence is worded as its issuing board requires; some ask for the number."},
    Check{"public-repository", Weight::consider, "privacy",
          "A street address or telephone number is not in a file that git tracks and sends to a "
          "public host; read from the text of git's own config and index.",
          "What is public once is copied for good.", "common practice",
          "phone: (360) 555-0142 in a file of a public repository",
          "the same file in a private one", public_repository},
};

}

std::span<const Check> privacy_checks() {
    return privacy_table;
}

}

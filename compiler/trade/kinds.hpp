// What a résumé is made of, by name: kinds of section, fields, stages of a career, papers, forms of
// dates. What the markup calls each, vocabulary.hpp says.
#pragma once

namespace quoin::trade {

enum class Holds {
    education,
    experience,
    projects,
    activities,
    skills,
    honors,
    credentials,
    languages,
    publications,
    prose,
    other
};

enum class FieldName {
    // heading
    name,
    pronouns,
    headline,
    address,
    phone,
    email,
    link,
    // entries
    school,
    place,
    degree,
    major,
    minor,
    graduation,
    dates,
    gpa,
    honors,
    courses,
    activities,
    thesis,
    role,
    employer,
    note,
    project,
    course,
    with,
    activity,
    award,
    by,
    credential,
    issuer,
    expires,
    publication,
    text,
    title,
    detail,
    group // a group of skills or languages: its label is the writer's own
};

enum class Stage { undergraduate, recent_graduate, graduate_applicant, experienced };

enum class Paper { letter, a4 };

// What a résumé prints: the form itself is the setting's value.
enum class DateForm { short_month, long_month, month_slash_year, year_month };

}

// What a résumé is made of, by name: kinds of section, stages of a career, papers, forms of dates.
// What the markup calls each, vocabulary.hpp says; its fields stand in labels.hpp.
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

enum class Stage { undergraduate, recent_graduate, graduate_applicant, experienced, academic };

enum class Paper { letter, a4 };

// What a résumé prints: the form itself is the setting's value.
enum class DateForm { short_month, long_month, month_slash_year, year_month };

}

// Checks of education, dates and entries that must not speak where an adviser would not, and the
// slips that they are for: tests/advice/clean.resume with one piece replaced. Common practice.
#include "compiler/advice/degree_names.hpp"
#include "tests/advice/proofread.hpp"

#include <algorithm>

namespace quoin::advice::proof_education_test {

namespace {

using Case = fixtures::CheckCase;
using fixtures::clean_with;

const std::string degree = "Bachelor of Science in Marine Biology";
const std::string gpa = "gpa: 3.62 / 4.00";
const std::string intern = "dates: Jun 2026 - Aug 2026";

std::string below(const std::string& entry) {
    return "school: " + entry + "\n\nsection: Relevant";
}

// clang-format off
const Case cases[] = {
    {"degree-name", degree, "Associates in Nursing", "the usual form is 'Associate in Nursing'"},
    {"degree-name", degree, "Master in Public Administration", ""},
    {"degree-name", degree, "Master in Engineering", ""},
    {"degree-name", degree, "Associate in Art", ""},
    {"degree-name", degree, "Associate of Art", "see which your school awards"},
    {"degree-name", degree, "Bachelor in Science in Biology", "'in' where 'of' is usual; the usual form is 'Bachelor of Science in Biology'; see"},
    {"degree-name", degree, "Bachelors of Science and Bachelors of Arts", "the usual form is 'Bachelor of Science and Bachelor of Arts'"},
    {"degree-name", degree, "Bachelor of Science in Nursing, Bachelor of Arts in Spanish", ""},
    {"degree-name", degree, "Honors Bachelor of Science in Biology", ""},
    {"degree-type", degree, "Post-baccalaureate Studies in Biology", ""},
    {"degree-type", degree, "Pre-Nursing Studies", ""},
    {"degree-type", degree, "Honours Bachelor of Science", ""},
    {"degree-type", degree, "Biology Studies", "which degree"},
    {"degree-type", degree, "Bachelors in Nursing", "which degree"},
    {"degree-order", "section: Relevant", below("Ellery State College\ndegree: Teaching Certificate, Secondary\ngraduation: Jun 2027 (expected)"), ""},
    {"degree-order", "section: Relevant", below("Universidade do Cabo\ndegree: Semester abroad\ndates: Fall 2027"), ""},
    {"degree-order", "section: Relevant", below("Skerry College\ndegree: Bachelor of Arts in Teaching with Certificate\ngraduation: Jun 2028 (expected)"), "most recent degree first"},
    {"graduation-missing", "May 2027 (expected)", "2027 (expected)", "'2027 (expected)' does not say in which month"},
    {"graduation-missing", "May 2027 (expected)", "Spring 2027 (expected)", ""},
    {"graduation-missing", "stage: undergraduate", "stage: experienced", ""},
    {"graduation-missing", "section: Relevant", below("Universidade do Cabo\ndegree: Study abroad\ndates: 2025"), ""},
    {"gpa-form", gpa, "gpa: Major: 3.85 / 4.00", ""},
    {"gpa-form", gpa, "gpa: Cumulative 3.6 / 4.0; Major 3.8 / 4.0", ""},
    {"gpa-form", gpa, "gpa: 3.6, in the major 3.8 / 4.0", ""},
    {"gpa-form", gpa, "gpa: 3.62 (4.0 scale)", ""},
    {"gpa-form", gpa, "gpa: 3.62 on a 4.0 scale", ""},
    {"gpa-form", gpa, "gpa: Major 3.85", "out of what; add the scale, as in"},
    {"gpa-form", gpa, "gpa: 3,62 / 4,00", "no GPA that can be read"},
    {"gpa-form", gpa, "gpa: about 4.2 (4.0 scale)", "over its scale"},
    {"high-school", "section: Relevant", below("North Jetty Preparatory Academy\ngraduation: Jun 2023"), "beside a college"},
    {"high-school", "section: Relevant", below("North Jetty Senior High\ngraduation: Jun 2023"), "beside a college"},
    {"high-school", "section: Relevant", below("North Jetty School\ndegree: High School Diploma\ngraduation: Jun 2023"), "beside a college"},
    {"high-school", "section: Relevant", below("Orrin High School Adult Programs\ndegree: Certificate in Welding\ngraduation: Jun 2023"), ""},
    {"high-school", "section: Relevant", below("Highline College\ngraduation: Jun 2023"), ""},
    // half a year after it, and the degree three years away
    {"high-school", "graduation: May 2027 (expected)", "graduation: May 2030 (expected)\n\nschool: North Jetty High School\ngraduation: Jun 2026", ""},
    {"high-school", "graduation: May 2027 (expected)", "graduation: May 2029 (expected)\n\nschool: North Jetty High School\ngraduation: Jun 2025", "from the second year on"},
    {"high-school", "degree: Bachelor of Science in Marine Biology\nminor: Statistics\ngraduation: May 2027 (expected)", "degree: Associate of Science in Marine Biology\ngraduation: May 2027 (expected)\n\nschool: North Jetty High School\ngraduation: Jun 2023", ""},
    {"high-school", "graduation: May 2027 (expected)", "graduation: May 2027 (expected)\n\nschool: North Jetty High School\ngraduation: Jun 2026", "from the second year on"},
    // still there, and at college beside it
    {"high-school", "graduation: May 2027 (expected)", "graduation: May 2027 (expected)\n\nschool: North Jetty High School\ngraduation: Jun 2027 (expected)", ""},
    // dates: the clean résumé has a position to the present above this one
    {"date-order", "Jun 2025 - Aug 2025", "Sep 2026 - Jun 2027 (expected)", "'Hatchery Technician' stands below 'Field Survey Intern'"},
    {"date-order", "role: Research Assistant", "role: Student Teacher\ndates: Sep 2026 - Jun 2027 (expected)\n\nrole: Research Assistant", ""},
    {"date-order", "role: Research Assistant", "role: Student Teacher\ndates: Jun 2027 - Aug 2027\n\nrole: Research Assistant", ""},
    {"date-order", "role: Research Assistant", "role: Student Teacher\ndates: Jun 2026 - Nov 2026\n\nrole: Research Assistant", ""},
    {"date-order", "role: Research Assistant", "role: Student Teacher\ndates: Jun 2026 - Oct 2026\n\nrole: Research Assistant", "'Research Assistant' stands below 'Student Teacher'"},
    {"end-before-start", intern, "dates: Nov-Jan 2026", "did it start in Nov 2025? then give both years"},
    {"end-before-start", intern, "dates: Nov 2025 - Jan 2026", ""},
    {"end-before-start", intern, "dates: Nov 2026 - Jan 2026", "see which of the two dates"},
    {"bullet-count", "role: Research Assistant", "role: Audit Intern\ndates: Jun 2027 - Aug 2027 (expected)\n\nrole: Research Assistant", ""},
    {"bullet-count", "role: Research Assistant", "role: Audit Intern\ndates: Summer 2027 (expected)\n\nrole: Research Assistant", ""},
    {"bullet-count", "role: Research Assistant", "role: Audit Intern\ndates: Oct 2026 - Aug 2027 (expected)\n\nrole: Research Assistant", "has no bullets"},
};
// clang-format on

}

TEST_CASE("proof: education and dates, case by case") {
    fixtures::check_each(cases);
}

TEST_CASE("proof: research or leadership under its own title is experience") {
    struct Title {
        std::string section;
        bool missing;
    };
    const Title titles[] = {{"section: Research", false},
                            {"section: Leadership and Service", false},
                            {"section: Independent Work", false},
                            {"section: Projects", true},
                            {"section: Papers of the Year", true}};
    for (const Title& title : titles) {
        CAPTURE(title.section);
        std::string text = clean_with("section: Projects", title.section + "\nholds: projects");
        const std::size_t begin = text.find("section: Relevant");
        text.erase(begin, text.find(title.section) - begin);
        CHECK(fixtures::proof_of(text)->of("section-missing").empty() != title.missing);
    }
}

// The name of a degree is the school's: only its form is mended, and only where it is known.
TEST_CASE("degree names: which slips are mended without asking") {
    struct Slip {
        std::string written;
        std::string mended; // "" if it is asked
    };
    const Slip slips[] = {
        {"Bachelors of Science in Biology", "Bachelor of Science in Biology"},
        {"Bachelor's of Arts in English", "Bachelor of Arts in English"},
        {"bachelors of science in biology", "Bachelor of Science in Biology"},
        {"Bachelor of Sciences in Biology", "Bachelor of Science in Biology"},
        {"Associates in Nursing", "Associate in Nursing"},
        {"Associate's in Applied Science", "Associate in Applied Science"},
        {"Masters of Science, Bachelors of Arts", "Master of Science, Bachelor of Arts"},
        {"Bachelor of Arts & Bachelors of Music", "Bachelor of Arts & Bachelor of Music"},
        {"Bachelors of Environmental Design", "Bachelor of Environmental Design"},
        {"Associate of Art", ""},
        {"Associates of Art", ""},
        {"Masters in Public Policy", ""},
        {"Master's in Education", ""},
        {"Bachelor in Science", ""},
        {"Bachelors in Science", ""},
        {"Bachelor Science in Biology", ""},
        {"Bachelor of Science of Biology", ""},
        {"Batchelor of Science", ""},
        {"Doctorate of Philosophy", ""},
        {"Bachelors of Science and Bachelor in Arts", ""},
        {"BS in Liberal Arts", ""},
    };
    for (const Slip& slip : slips) {
        CAPTURE(slip.written);
        const DegreeReading reading = read_degree(slip.written);
        REQUIRE(reading.verdict == DegreeReading::Verdict::malformed);
        CHECK(reading.form_alone == !slip.mended.empty());
        if (reading.form_alone) CHECK(reading.usual == slip.mended);
        CHECK(read_degree(reading.usual).verdict == DegreeReading::Verdict::well_formed);
    }
}

}

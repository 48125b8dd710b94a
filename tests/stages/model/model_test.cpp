// From text to the model: labels, kinds of sections, entries.
#include "compiler/trade/vocabulary.hpp"

#include "tests/fixtures/read_resume.hpp"
#include "tests/fixtures/worked_example.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <random>

namespace quoin::model {
namespace {

using fixtures::read_below_name;
using fixtures::read_resume;
using fixtures::value_of;
using fixtures::worked_example;

std::string show(const Tags& tags) {
    std::string text;
    for (const std::string& tag : tags.only)
        text += " " + tag;
    for (const std::string& tag : tags.except)
        text += " !" + tag;
    return text.empty() ? text : " {" + text.substr(1) + "}";
}

std::string show(const Entry& entry, const std::string& indent = "  ") {
    std::string text;
    if (!entry.tags.empty()) text += indent + "for" + show(entry.tags) + "\n";
    for (const Field& field : entry.fields) {
        const std::string label = field.name == trade::FieldName::group
                                      ? field.label.plain()
                                      : std::string{label_of(field.name)};
        text += indent + label + ": " + value_of(field) + show(field.tags) + "\n";
    }
    for (const Bullet& bullet : entry.bullets)
        text += indent + std::string(static_cast<std::size_t>(bullet.level), '-') + " " +
                bullet.text.plain() + show(bullet.tags) + "\n";
    for (const Entry& further : entry.further)
        text += indent + "further\n" + show(further, indent + "  ");
    return text;
}

std::string show(const Resume& resume) {
    std::string text;
    for (const Field& field : resume.heading)
        text +=
            std::string{label_of(field.name)} + ": " + value_of(field) + show(field.tags) + "\n";
    for (const Section& section : resume.sections) {
        text += section.title.plain() + " (" + std::string{name_of(section.holds)} +
                (section.side ? ", side)" : ")") + show(section.tags) + "\n";
        for (std::size_t i = 0; i < section.entries.size(); ++i)
            text += (i > 0 ? "\n" : "") + show(section.entries[i]);
    }
    return text;
}

constexpr const char* worked_model = R"(name: Ottoline Brandt
headline: Marine biology student, field survey and data skills
address: Port Ellery, WA
phone: (360) 555-0142
email: ottoline.brandt@ellerystate.example
link: ottolinebrandt.example
Education (education)
  school: Ellery State College
  place: Port Ellery, WA
  degree: Bachelor of Science in Marine Biology
  minor: Statistics
  graduation: expected 2027-05
  gpa: 3.62 / 4.00
  honors: President’s List (2 terms) | Dean’s List (4 terms)
  courses: Benthic Ecology | GIS for Field Science | Applied Regression
Relevant Experience (experience)
  role: Field Survey Intern
  employer: Salish Tidal Trust
  place: Anacortes, WA
  dates: 2026-06/2026-08
  - Counted 212 eelgrass quadrats at 9 sites and cut entry time 18% with a barcoded datasheet {lab field}
  - Trained 4 volunteers in GPS and quadrat placement {field}
Skills (skills)
  Laboratory: pH meter | titration | analytical balance
  Languages: Portuguese (professional) | Hindi (conversational)
)";

std::string sample_value(trade::ValueKind kind) {
    switch (kind) {
    case trade::ValueKind::dates:
        return "Jun 2026";
    case trade::ValueKind::link:
        return "ottolinebrandt.example";
    default:
        return "Something";
    }
}

}

TEST_CASE("the worked example of the language page") {
    const auto reading = read_resume(worked_example);
    CHECK(reading.messages() == "");
    REQUIRE(reading.resume);
    CHECK(show(*reading.resume) == worked_model);
    CHECK(reading.resume->settings.updated.place == Place{0, 9, 10, 10});
    CHECK(reading.resume->find(trade::FieldName::phone)->place == Place{0, 5, 8, 14});
    CHECK(reading.resume->sections[0].place == Place{0, 11, 10, 9});
    CHECK(reading.resume->sections[1].entries[0].bullets[0].place.line == 28);
}

TEST_CASE("every example of the reference is read without a message") {
    std::ifstream page(std::string{QUOIN_SOURCE_FOLDER} + "/grammar/language.md");
    std::string line, example;
    int examples = 0;
    bool inside = false;
    while (std::getline(page, line)) {
        if (inside && line == "```") {
            const bool named = example.find("name: ") != std::string::npos;
            const auto reading = named ? read_resume(example) : read_below_name(example);
            CAPTURE(example);
            CHECK(reading.messages() == "");
            CHECK(reading.resume);
            ++examples;
            inside = false;
        } else if (inside) {
            example += line + "\n";
        } else if (line == "```resume") {
            inside = true;
            example.clear();
        }
    }
    CHECK(examples == 21);
}

TEST_CASE("every label stands in its own kinds of sections and in no other") {
    for (const trade::Word& word : trade::vocabulary()) {
        const auto* name = std::get_if<trade::FieldName>(&word.means);
        if (!name) continue;
        CAPTURE(word.label);
        CHECK(trade::find_word(word.label) == &word);
        CHECK(label_of(*name) == word.label);
        const std::string line = std::string{word.label} + ": " + sample_value(word.value) + "\n";
        for (const std::string_view kind_name : trade::names_of<trade::Holds>()) {
            CAPTURE(kind_name);
            const trade::Holds kind = *trade::named<trade::Holds>(kind_name);
            const auto reading = read_below_name(
                "section: Things\nholds: " + std::string{kind_name} + "\n\n" + line);
            CHECK(reading.resume.has_value() == (word.kinds.has(kind) || has_groups(kind)));
            if (!reading.resume) continue;
            const Field& field = reading.resume->sections.at(0).entries.at(0).fields.at(0);
            CHECK(field.name == (has_groups(kind) ? trade::FieldName::group : *name));
        }
        CHECK(read_resume("name: A\n" + (*name == trade::FieldName::name ? "" : line))
                  .resume.has_value() == word.heading);
    }
}

TEST_CASE("bullets stand in the kinds that have them; elsewhere a dash is passed over") {
    for (const std::string_view name : trade::names_of<trade::Holds>()) {
        CAPTURE(name);
        const auto bullet =
            read_below_name("section: Things\nholds: " + std::string{name} + "\n\n- Something");
        REQUIRE(bullet.resume);
        const auto& entry = bullet.resume->sections.front().entries.front();
        CHECK(entry.bullets.empty() != has_bullets(*trade::named<trade::Holds>(name)));
    }
}

TEST_CASE("what a section holds is told from its labels, then from its title") {
    const struct {
        std::string title;
        std::string lines;
        std::string holds;
    } cases[] = {
        // labels alone
        {"Background", "school: A", "education"},
        {"Background", "degree: A\nplace: B", "education"},
        {"Background", "role: A\nemployer: B\ndates: 2025", "experience"},
        {"Background", "project: A", "projects"},
        {"Background", "activity: A\nrole: B", "activities"},
        {"Background", "award: A", "honors"},
        {"Background", "credential: A", "credentials"},
        {"Background", "publication: A", "publications"},
        {"Background", "text: A", "prose"},
        {"Background", "title: A\nplace: B", "other"},
        {"Background", "Laboratory: A\nWriting: B", "skills"},
        {"Toolbox", "Laboratory: A\nSoftware: B\nPlace: C", "skills"},
        {"Background", "- A", "other"},
        {"Background", "", "other"},
        // the title decides between kinds that share the labels
        {"Leadership", "role: A\ndates: 2025", "activities"},
        {"Volunteer Work", "role: A\nplace: B", "activities"},
        {"Field Experience", "role: A\ndates: 2025", "experience"},
        {"Projects", "link: a.example\ndates: 2025", "projects"},
        {"Publications and Presentations", "link: a.example\ndates: 2025", "publications"},
        // labels win over the title
        {"Leadership Experience", "role: A\nemployer: B\ndates: 2025", "experience"},
        {"Professional Experience", "activity: A\nrole: B", "activities"},
        {"Education", "award: A", "honors"},
        {"Skills and Certifications", "credential: A", "credentials"},
        // groups
        {"Skills", "Laboratory: A\nCourses: B\nHonors: C", "skills"},
        {"Languages", "Spoken: A, B", "languages"},
        {"Language Skills", "Spoken: A, B", "skills"},
        {"Research Skills", "Laboratory: A", "skills"},
        // the title alone
        {"EDUCATION", "", "education"},
        {"Education and Honors", "- A", "education"},
        {"Honors & Awards", "- A", "honors"},
        {"Work History", "- A", "experience"},
        {"Internships", "- A", "experience"},
        {"Licenses", "", "credentials"},
        {"Objective", "", "prose"},
        {"Career Summary", "", "prose"},
        {"Volunteer Experience", "- A", "activities"},
        {"Giving Back", "- A", "activities"},
        {"Outreach Experience", "- A", "activities"},
        {"Clinical Hours", "Pediatrics: 120 hours\nEmergency: over 80", "skills"},
        {"Clinical Hours", "role: Aide\nemployer: Trust", "experience"},
        {"Clinical Rotations", "Pediatrics: 120 hours\nSurgery: 80 hours", "skills"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.title);
        CAPTURE(one.lines);
        const auto reading = read_below_name("section: " + one.title + "\n\n" + one.lines);
        CHECK(reading.messages() == "");
        REQUIRE(reading.resume);
        CHECK(name_of(reading.resume->sections.at(0).holds) == one.holds);
    }
}

TEST_CASE("sections") {
    const auto reading = read_below_name(R"(
section: Things We Did {lab !field}
# under the title
holds: activities
column: side
activity: Choir

# a comment is no entry

activity: Tide Watch

section: Abroad
holds: Languages

Spoken: Portuguese (fluent, since birth), Hindi; Urdu
)");
    CHECK(reading.messages() == "");
    REQUIRE(reading.resume);
    CHECK(show(*reading.resume) == "name: Ottoline Brandt\n"
                                   "Things We Did (activities, side) {lab !field}\n"
                                   "  activity: Choir\n\n  activity: Tide Watch\n"
                                   "Abroad (languages)\n"
                                   "  Spoken: Portuguese (fluent, since birth) | Hindi | Urdu\n");
}

TEST_CASE("a second role is a further position at the same employer") {
    const auto reading = read_below_name(R"(
section: Experience

employer: Salish Tidal Trust
for: field
role: Survey Lead
place: Anacortes, WA
dates: 2026
- Led 4 volunteers
role: Survey Intern {lab}
for: !public
dates: 2025
- Counted quadrats
-- At 9 sites {field Field}
role: Volunteer
)");
    CHECK(reading.messages() == "");
    REQUIRE(reading.resume);
    CHECK(show(*reading.resume) == R"(name: Ottoline Brandt
Experience (experience)
  for {field}
  employer: Salish Tidal Trust
  role: Survey Lead
  place: Anacortes, WA
  dates: 2026
  - Led 4 volunteers
  further
    for {!public}
    role: Survey Intern {lab}
    dates: 2025
    - Counted quadrats
    -- At 9 sites {field}
  further
    role: Volunteer
)");
}

TEST_CASE("a label may stand again with other tags") {
    const auto reading = read_below_name(R"(headline: Surveys {field}
headline: Methods {lab}
link: a.example
link: b.example

section: Experience

role: Intern {lab}
role: Surveyor {!lab}
employer: Salish Tidal Trust {lab}
employer: A tidal trust {!lab}
)");
    CHECK(reading.messages() == "");
    REQUIRE(reading.resume);
    CHECK(show(*reading.resume) == R"(name: Ottoline Brandt
headline: Surveys {field}
headline: Methods {lab}
link: a.example
link: b.example
Experience (experience)
  role: Intern {lab}
  role: Surveyor {!lab}
  employer: Salish Tidal Trust {lab}
  employer: A tidal trust {!lab}
)");
}

TEST_CASE("lines in any order never crash, and give a model exactly when there is no error") {
    std::mt19937 random{20261103};
    const auto pick = [&](std::size_t count) { return random() % count; };
    std::vector<std::string> labels{"section", "section", "-", "--", "for", "Laboratory", "nmae"};
    for (const trade::Word& word : trade::vocabulary())
        labels.emplace_back(word.label);
    const std::vector<std::string> values{
        "Education",    "Experience", "skills", "2026",  "Jun 2026 - present", "11",    "lab !x",
        "a; b; (c; d)", "side",       "; ,",    "{lab}", "draft.resume",       "*open", "x {a}",
        "x {a !b c}",   "letter"};
    for (int round = 0; round < 2000; ++round) {
        std::string text = pick(8) == 0 ? "" : "name: A\n";
        for (std::size_t line = pick(24); line > 0; --line) {
            const std::string& label = labels[pick(labels.size())];
            text +=
                label + (label.front() == '-' ? " " : ": ") + values[pick(values.size())] + "\n";
            if (pick(3) == 0) text += "\n";
        }
        const auto reading = read_resume(text);
        CAPTURE(text);
        CHECK(reading.resume.has_value() == !reading.diagnostics.has_errors());
    }
}

// Of what stood above, a comment between must not make it lose the place.
TEST_CASE("bare lines with comments between are an entry each") {
    constexpr int lines = 20;
    std::string text = "section: Licenses\n\n";
    for (int i = 0; i < lines; ++i)
        text += "Boater Card\n# renewed\n# in May\n  of the state\n";
    const auto reading = read_below_name(text);
    REQUIRE(reading.resume);
    CHECK(reading.resume->sections[0].entries.size() == lines);
}

// Anything that grew with the square of the size would be felt here.
TEST_CASE("large and odd files are read in passing") {
    std::string tags = "section: Awards\n\naward: A {";
    std::string wordings = "section: Awards\n\naward: A\n";
    std::string accept = "accept: a (b)";
    for (int i = 0; i < 20000; ++i) {
        tags += "t" + std::to_string(i) + " ";
        wordings += "by: B {t" + std::to_string(i) + "}\n";
        accept += ";\n a (b)";
    }
    CHECK(read_below_name(tags + "}\n").resume);
    CHECK(read_below_name(wordings).resume);
    CHECK(read_below_name(accept + "\n").resume);
}

}

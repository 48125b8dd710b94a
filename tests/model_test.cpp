// From text to the model: labels, kinds of sections, entries, contact links, and every fault in the
// words a user reads.
#include "compiler/model/contact_links.hpp"
#include "compiler/model/vocabulary.hpp"
#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <random>

namespace quoin {
namespace {

using fixtures::read_below_name;
using fixtures::read_resume;
using fixtures::value_of;

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
        const std::string label = field.name == FieldName::group
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

struct Fault {
    std::string lines; // below a line with the name
    std::string message;
};

void check_faults(std::initializer_list<Fault> faults) {
    for (const Fault& fault : faults) {
        CAPTURE(fault.lines);
        const auto reading = read_below_name(fault.lines);
        CHECK(reading.messages() == "draft.resume:" + fault.message);
        CHECK_FALSE(reading.resume);
    }
}

constexpr const char* worked_example = R"(# Fall draft, for the wetlands internship
name: Ottoline Brandt
headline: Marine biology student, field survey and data skills
address: Port Ellery, WA
phone: (360) 555-0142
email: ottoline.brandt@ellerystate.example
link: ottolinebrandt.example
stage: undergraduate
updated: 2026-11-03

section: Education

school: Ellery State College
place: Port Ellery, WA
degree: Bachelor of Science in Marine Biology
minor: Statistics
graduation: May 2027 (expected)
gpa: 3.62 / 4.00
honors: President's List (2 terms); Dean's List (4 terms)
courses: Benthic Ecology; GIS for Field Science; Applied Regression

section: Relevant Experience

role: Field Survey Intern
employer: Salish Tidal Trust
place: Anacortes, WA
dates: Jun 2026 - Aug 2026
- Counted 212 eelgrass quadrats at 9 sites and cut entry time *18%* with a
  barcoded datasheet {lab field}
- Trained 4 volunteers in GPS and quadrat placement {field}

section: Skills

Laboratory: pH meter, titration, analytical balance
Languages: Portuguese (professional), Hindi (conversational)
)";

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

std::string sample_value(ValueKind kind) {
    switch (kind) {
    case ValueKind::dates:
        return "Jun 2026";
    case ValueKind::link:
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
    CHECK(reading.resume->find(FieldName::phone)->place == Place{0, 5, 8, 14});
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
    CHECK(examples == 19);
}

TEST_CASE("every label stands in its own kinds of sections and in no other") {
    for (const Word& word : vocabulary()) {
        const auto* name = std::get_if<FieldName>(&word.means);
        if (!name) continue;
        CAPTURE(word.label);
        CHECK(find_word(word.label) == &word);
        CHECK(label_of(*name) == word.label);
        const std::string line = std::string{word.label} + ": " + sample_value(word.value) + "\n";
        for (const std::string_view kind_name : holds_names()) {
            CAPTURE(kind_name);
            const Holds kind = *holds_named(kind_name);
            const auto reading = read_below_name(
                "section: Things\nholds: " + std::string{kind_name} + "\n\n" + line);
            CHECK(reading.resume.has_value() == (word.kinds.has(kind) || has_groups(kind)));
            if (!reading.resume) continue;
            const Field& field = reading.resume->sections.at(0).entries.at(0).fields.at(0);
            CHECK(field.name == (has_groups(kind) ? FieldName::group : *name));
        }
        CHECK(
            read_resume("name: A\n" + (*name == FieldName::name ? "" : line)).resume.has_value() ==
            word.heading);
    }
}

// language.md, "Entries"
TEST_CASE("the fields of each kind, as the language page lists them") {
    const struct {
        Holds kind;
        std::vector<std::string> labels;
    } rows[] = {
        {Holds::education,
         {"school", "place", "degree", "major", "minor", "graduation", "dates", "gpa", "honors",
          "courses", "activities", "thesis"}},
        {Holds::experience, {"role", "employer", "place", "dates", "note"}},
        {Holds::projects, {"project", "course", "with", "place", "dates", "link"}},
        {Holds::activities, {"activity", "role", "place", "dates"}},
        {Holds::honors, {"award", "by", "dates"}},
        {Holds::credentials, {"credential", "issuer", "dates", "expires"}},
        {Holds::publications, {"publication", "dates", "link"}},
        {Holds::skills, {}},
        {Holds::languages, {}},
        {Holds::prose, {"text"}},
        {Holds::other, {"title", "detail", "place", "dates"}},
    };
    for (const auto& row : rows) {
        const auto labels = labels_of(row.kind);
        std::vector<std::string> found(labels.begin(), labels.end());
        std::vector<std::string> listed = row.labels;
        std::ranges::sort(found);
        std::ranges::sort(listed);
        CHECK(found == listed);
        const auto bullet = read_below_name(
            "section: Things\nholds: " + std::string{name_of(row.kind)} + "\n\n- Something");
        CHECK(bullet.resume.has_value() == has_bullets(row.kind));
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
    check_faults({
        {"headline: A {lab}\nheadline: B {lab}", "3:1: error: 'headline' stands twice, first in "
                                                 "line 2; keep one, or tag both for different "
                                                 "builds"},
        {"headline: A {lab}\nheadline: B", "3:1: error: 'headline' stands twice, first in line 2; "
                                           "keep one, or tag both for different "
                                           "builds"},
        {"headline: A\nheadline: B {lab}", "3:1: error: 'headline' stands twice, first in line 2; "
                                           "keep one, or tag both for different "
                                           "builds"},
    });
}

TEST_CASE("a name there must be") {
    const struct {
        std::string text;
        std::string messages;
    } cases[] = {
        {"", "draft.resume:1: error: nothing but comments and blank lines; expected a line such as "
             "'name: Ottoline Brandt'"},
        {"# a draft\n\n# to come\n",
         "draft.resume:1: error: nothing but comments and blank lines; expected a line such as "
         "'name: Ottoline Brandt'"},
        {"headline: A\n", "draft.resume:1: error: no name; expected a line such as 'name: Ottoline "
                          "Brandt' above the first section"},
        {"section: Skills\n\nLaboratory: A\n", "draft.resume:1: error: no name; expected a line "
                                               "such as 'name: Ottoline Brandt' above the "
                                               "first section"},
        {"nmae: A\n", "draft.resume:1:1: error: unknown label 'nmae'; did you mean 'name'?"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.text);
        const auto reading = read_resume(one.text);
        CHECK(reading.messages() == one.messages);
        CHECK_FALSE(reading.resume);
    }
}

TEST_CASE("faults in the heading block") {
    check_faults({
        {"adress: Port Ellery", "2:1: error: unknown label 'adress'; did you mean 'address'?"},
        {"sections: Skills", "2:1: error: unknown label 'sections'; did you mean 'section'?"},
        {"birthday: 1 May", "2:1: error: unknown label 'birthday'; expected a contact field or a "
                            "setting, or a 'section:' line above it"},
        {"school: Ellery State College",
         "2:1: error: 'school' does not belong in the heading block; it is a field of education; "
         "expected a 'section:' line above it"},
        {"holds: skills", "2:1: error: 'holds' belongs right under a 'section:' line"},
        {"for: lab", "2:1: error: 'for' belongs in an entry, below a 'section:' line"},
        {"- Counted quadrats",
         "2:1: error: a bullet belongs to an entry; expected a 'section:' line above it"},
        {"name: Someone Else", "2:1: error: 'name' stands twice, first in line 1; keep one, or tag "
                               "both for different builds"},
    });
}

TEST_CASE("faults in sections") {
    check_faults({
        {"section: Stuff\n\nplace: A\ndates: 2025",
         "2:10: error: cannot tell what the section 'Stuff' holds; expected a line such as 'holds: "
         "experience' right under it, with one of 'education', 'experience', 'projects', "
         "'activities', 'skills', 'honors', 'credentials', 'languages', 'publications', 'prose' or "
         "'other'"},
        {"section: Stuff\nholds: activites\n\nactivity: A",
         "3:8: error: a section cannot hold 'activites'; expected 'education', 'experience', "
         "'projects', 'activities', 'skills', 'honors', 'credentials', 'languages', "
         "'publications', 'prose' or 'other'; did you mean 'activities'?"},
        {"section: Stuff\nholds: skills\nholds: skills\n\nA: B",
         "4:1: error: 'holds' stands twice; keep one of them"},
        {"section: Stuff\nholds: skills {lab}\n\nA: B",
         "3:16: error: 'holds' holds for every build; expected no tags after its value"},
        {"section: Skills\ncolumn: left\n\nA: B",
         "3:9: error: 'column' cannot be 'left'; expected 'side', or no such line"},
        {"section: Skills\ncolumn: side\ncolumn: side\n\nA: B",
         "4:1: error: 'column' stands twice; keep one of them"},
        {"section: Skills\n\nA: B\nholds: skills",
         "5:1: error: 'holds' belongs right under its 'section:' line"},
    });
}

TEST_CASE("faults in entries") {
    check_faults({
        {"section: Education\n\nschool: A\ndegre: B",
         "5:1: error: unknown label 'degre' in an 'education' section; did you mean 'degree'?"},
        {"section: Awards\n\naward: A\nprestige: B",
         "5:1: error: unknown label 'prestige' in an 'honors' section; expected 'award', 'by' or "
         "'dates'"},
        {"section: Awards\n\naward: A\nseciton: B",
         "5:1: error: unknown label 'seciton' in an 'honors' section; did you mean 'section'?"},
        {"section: Awards\n\naward: A\nemployer: B",
         "5:1: error: 'employer' does not belong in an 'honors' section; it is a field of "
         "experience; expected 'award', 'by' or 'dates'"},
        {"section: Awards\n\naward: A\nrole: B", "5:1: error: 'role' does not belong in an "
                                                 "'honors' section; it is a field of experience or "
                                                 "activities; expected 'award', 'by' or 'dates'"},
        {"section: Awards\n\naward: A\nstage: experienced",
         "5:1: error: 'stage' is a setting and belongs in the heading block, above the first "
         "'section:' line"},
        {"section: Awards\n\naward: A\nphone: B",
         "5:1: error: 'phone' is a contact field and belongs in the heading block, above the first "
         "'section:' line"},
        {"section: Awards\n\naward: A\ndates: 2025\nby: B\ndates: 2026",
         "7:1: error: 'dates' stands twice, first in line 5; a blank line starts a new entry"},
        {"section: Experience\n\nrole: A\ndates: 2025\nrole: B\ndates: 2026\ndates: 2024",
         "8:1: error: 'dates' stands twice, first in line 7; a blank line starts a new entry"},
        {"section: Awards\n\naward: A\ndates: Jun 2025 - 13/2024 {lab}\nby: B",
         "5:19: error: '13' is no month; expected 01 to 12"},
        {"section: Awards\n\naward: A\n-- B",
         "5:1: error: a bullet of the second level has none of the first above it; expected '- ' "
         "before its text"},
        {"section: Experience\n\nrole: A\n- B\nrole: C\n-- D",
         "7:1: error: a bullet of the second level has none of the first above it; expected '- ' "
         "before its text"},
        {"section: Skills\n\nLaboratory: A\n- B",
         "5:1: error: a 'skills' section has no bullets; expected a line such as 'Laboratory: pH "
         "meter, titration'"},
        {"section: Summary\n\n- B", "4:1: error: a 'prose' section has no bullets; expected a line "
                                    "such as 'text: Two sentences about you'"},
        {"section: Licenses\n\n- B",
         "4:1: error: a 'credentials' section has no bullets; expected a line such as 'credential: "
         "First Aid and CPR'"},
        {"section: Awards\n\nfor: lab", "4:1: error: 'for' has no entry to keep; to keep a whole "
                                        "section, write the tags after its "
                                        "title, such as 'section: Projects {lab}'"},
        {"section: Awards\n\nfor: lab\naward: A\nfor: field",
         "6:1: error: 'for' stands twice in this entry; expected all tags on one line, such as "
         "'for: lab field'"},
        {"section: Awards\n\nfor: lab, field\naward: A",
         "4:6: error: expected a tag, such as 'lab' or '!lab', found 'lab,'"},
        {"section: Awards\n\nfor: lab !\naward: A",
         "4:10: error: expected a tag, such as 'lab' or '!lab', found '!'"},
        {"section: Education\n\nschool: A\nhonors: ; ;",
         "5:9: error: 'honors' has nothing between its separators; expected items, or no such "
         "line"},
    });
}

TEST_CASE("one run reports every mistake") {
    const auto reading = read_resume("phone: (360) 555-0142\nsize: 9\n\nsection: Awards\n\n"
                                     "award: A\nemployer: B\n- fine\n\nawrd: C\n");
    CHECK(
        reading.messages() ==
        "draft.resume:1: error: no name; expected a line such as 'name: Ottoline Brandt' above "
        "the first section\n"
        "draft.resume:2:7: error: 'size' '9' is out of bounds; expected 10 to 12 (points)\n"
        "draft.resume:7:1: error: 'employer' does not belong in an 'honors' section; it is a field "
        "of experience; expected 'award', 'by' or 'dates'\n"
        "draft.resume:10:1: error: unknown label 'awrd' in an 'honors' section; did you mean "
        "'award'?");
}

// RFC 3966, section 5.1.4: global numbers with `+`; E.164: at most 15 digits. The area codes and
// exchanges of the North American Numbering Plan begin with 2 to 9. 555-0100 to 555-0199 are
// fictional.
TEST_CASE("phone numbers become links that can be dialled from anywhere") {
    const struct {
        std::string typed;
        std::string uri; // empty: no link
    } cases[] = {
        {"(360) 555-0142", "tel:+13605550142"},
        {"360.555.0142", "tel:+13605550142"},
        {"360 555 0142", "tel:+13605550142"},
        {"1-360-555-0142", "tel:+13605550142"},
        {"+1 360 555 0142", "tel:+13605550142"},
        {"(360) 555-0142 ext. 12", "tel:+13605550142;ext=12"},
        {"(360) 555-0142, x12", "tel:+13605550142;ext=12"},
        {"(360) 555-0142 #7", "tel:+13605550142;ext=7"},
        {"+31 42 123 4567", "tel:+31421234567"}, // the international form of E.123
        {"+44 (0)20 7946 0123", "tel:+442079460123"},
        {"(042) 123 4567", ""}, // the national form of E.123: no country is known
        {"555-0142", ""},
        {"360 555 0142 / 360 555 0143", ""},
        {"+1234567890123456", ""},
        {"on request", ""},
        {"", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        CHECK(phone_uri(one.typed).value_or("") == one.uri);
    }
}

// RFC 5322, section 3.4.1 (addr-spec); RFC 6068, section 2 (what is percent-encoded)
TEST_CASE("mail addresses become links if they are addr-specs") {
    const struct {
        std::string typed;
        std::string uri;
    } cases[] = {
        {"ottoline.brandt@ellerystate.example", "mailto:ottoline.brandt@ellerystate.example"},
        {"o+lab@ellerystate.example", "mailto:o+lab@ellerystate.example"},
        {"gorby%kremvax@example.com",
         "mailto:gorby%25kremvax@example.com"}, // RFC 6068, section 6.1
        {"unlikely?address@example.com", "mailto:unlikely%3Faddress@example.com"}, // the same
        {"Mike&family@example.org", "mailto:Mike%26family@example.org"},           // the same
        {"two@at@example.com", ""},
        {".dot@example.com", ""},
        {"dot.@example.com", ""},
        {"no-domain@", ""},
        {"no at", ""},
        {"a b@example.com", ""},
        {"", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        CHECK(email_uri(one.typed).value_or("") == one.uri);
    }
}

TEST_CASE("contact links") {
    const auto reading = read_below_name("phone: (360) 555-0142\nemail: nobody at all\n"
                                         "link: Portfolio <https://ottolinebrandt.example/work>");
    REQUIRE(reading.resume);
    const auto links = [&](FieldName name) {
        return std::get<Text>(reading.resume->find(name)->value).links;
    };
    CHECK(links(FieldName::phone) == std::vector<std::string>{"tel:+13605550142"});
    CHECK(links(FieldName::email).empty());
    CHECK(links(FieldName::link) ==
          std::vector<std::string>{"https://ottolinebrandt.example/work"});
    CHECK(std::get<Text>(reading.resume->find(FieldName::phone)->value).spans.at(0).link == 0u);
}

TEST_CASE("lines in any order never crash, and give a model exactly when there is no error") {
    std::mt19937 random{20261103};
    const auto pick = [&](std::size_t count) { return random() % count; };
    std::vector<std::string> labels{"section", "section", "-", "--", "for", "Laboratory", "nmae"};
    for (const Word& word : vocabulary())
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

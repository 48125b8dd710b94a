// Every fault of a heading, a section or an entry, in the words a user reads.
#include "compiler/trade/vocabulary.hpp"

#include "tests/fixtures/read_resume.hpp"

#include <doctest/doctest.h>

#include <initializer_list>
#include <string>

namespace quoin::model {
namespace {

using fixtures::read_below_name;
using fixtures::read_resume;

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
        {"Here is a page that you can use!\nname: A\n",
         "draft.resume:1:1: error: 'Here is a page that you can use!' has no label: write "
         "'headline: "
         "Here is a page that you can use!' if it says who you are, open a section above it, such "
         "as "
         "'section: Summary', or take it out"},
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
        {"adress: Port Ellery", "2:1: error: 'adress' is 'address' here"},
        {"sections: Skills",
         "2:1: error: 'sections: Skills' opens no section: write 'section: Skills'"},
        {"sunday: 1 May", "2:1: error: unknown label 'sunday'; expected a contact field or a "
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
        // a bullet of tags alone, in a list that needs no dashes
        {"section: Languages\n\n~ {a}\nFrench", "4:1: error: '~' opens no bullet: write '- text'"},
        {"section: Education\n\nschool: A\ndegre: B", "5:1: error: 'degre' is 'degree' here"},
        {"expected graduation: May 2027\n",
         "2:1: error: 'expected-graduation' is 'graduation' here, a field of education; expected a "
         "'section:' line above it"},
        {"section: Skills\n\nTools, drills, saws\nReading: prints\n",
         "4:1: error: 'Tools, drills, saws' has no label, and the other groups have one: write "
         "'Tools: drills, saws', or begin the line with a space if it goes on with the one above, "
         "or take it out"},
        {"References available upon request\n",
         "2:1: error: 'References available upon request' says what every reader takes for "
         "granted: take the line out"},
        {"section: Awards\n\naward: A\nprestige: B",
         "5:1: error: unknown label 'prestige' in an 'honors' section; expected 'award', 'by' or "
         "'dates'; what has no field of its own goes into '- Prestige: B'"},
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
         "5:3: error: 'B' has no label, and the other groups have one: write 'Label: B', or begin "
         "the line with a space if it goes on with the one above, or take it out"},
        {"section: Summary\n\ntext: A\n- B",
         "5:1: error: a 'prose' section has no bullets: write 'text: B'"},
        {"section: Licenses\n\ncredential: A\n- B",
         "5:1: error: a 'credentials' section has no bullets: write 'credential: B'"},
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

TEST_CASE("a label may not stand again with tags that do not part the two") {
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

TEST_CASE("a label whose colon was forgotten is told, whatever it is for") {
    check_faults({
        {"stage experienced", "2:1: error: 'stage' needs a colon after it, as in 'stage: value'"},
        {"phone (360) 555-0142",
         "2:1: error: 'phone' needs a colon after it, as in 'phone: value'"},
    });
    for (const trade::Word& word : trade::vocabulary())
        for (const std::string value : {" undergraduate", " 2026-06", " a {lab}"})
            for (const std::string above : {"", "\nsection: Experience\n\nrole: Tutor\n"}) {
                const std::string line = std::string(word.label) + value;
                CAPTURE(line);
                CHECK(read_below_name(above + line).messages() != "");
            }
}

}

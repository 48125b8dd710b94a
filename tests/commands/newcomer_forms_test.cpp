// What people bring along from forms, spreadsheets, outlines and paper: each slip gets one message,
// and `quoin mend` makes the line right.
#include "compiler/stages/model/dates.hpp"
#include "compiler/stages/model/dates_meant.hpp"
#include "tests/commands/newcomer_slips.hpp"

#include <string>

namespace quoin::commands {

TEST_CASE("newcomer: labels of forms") {
    check_slips({
        {"Phone Number*: (360) 555-0142\n", "2:1: error: 'phone-number' is 'phone' here",
         "phone: (360) 555-0142\n"},
        {"Your Email (required): ob@ellerystate.example\n",
         "2:1: error: 'your-email-(required)' is 'email' here", "email: ob@ellerystate.example\n"},
        {"Phone #: (360) 555-0142\n", "2:1: error: 'phone-#' is 'phone' here",
         "phone: (360) 555-0142\n"},
        {"Address*: Port Ellery, WA\n",
         "2:1: error: 'Address*:' has marks around its label, as other formats have: write the "
         "label and a colon alone, as in 'label: value'",
         "Address: Port Ellery, WA\n"},
        {"Address Line 1: 7 Halyard Street\nCity/State: Port Ellery, WA\nZip Code: 98000\n",
         "2:1: error: 'Address Line 1', 'City/State' and 'Zip Code' are one line here: write "
         "'address: 7 Halyard Street, Port Ellery, WA 98000'",
         "address: 7 Halyard Street, Port Ellery, WA 98000\n"},
        {"City: Port Ellery\nState: WA\n",
         "2:1: error: 'City' and 'State' are one line here: write 'address: Port Ellery, WA'",
         "address: Port Ellery, WA\n"},
        {"website link: N/A\n", "2:1: error: 'website link: N/A' says nothing: take the line out",
         ""},
        {"section: Education\n\nInstitution Name: Ellery State College\nMinor: none\n",
         "4:1: error: 'institution-name' is 'school' here\ndraft.resume:5:1: error: 'Minor: none' "
         "says nothing: take the line out",
         "section: Education\n\nschool: Ellery State College\n"},
        {"section: Education\n\nschool: Ellery State College\nDid you graduate? No (expected "
         "06-2027)\n",
         "5:1: error: 'Did you graduate? No (expected 06-2027)' is a question of a form, and its "
         "answer a field: write 'graduation: expected 06-2027'",
         "section: Education\n\nschool: Ellery State College\ngraduation: expected 06-2027\n"},
        {"section: Experience\n\nrole: Cook\nDescription: Baked 90 pies. Sold 40 cakes. Cleaned\n",
         "5:1: error: what 'description' tells goes into bullets: write '- text', one a line",
         "section: Experience\n\nrole: Cook\n- Baked 90 pies.\n- Sold 40 cakes.\n- Cleaned.\n"},
        {"\nObjective: To learn on a ward\n\nsection: Skills\n\nTools: R\n",
         "3:1: error: 'objective' has a section of its own: write 'section: Objective' with a "
         "blank "
         "line above it, and the text on the line below",
         "\nsection: Objective\n\nTo learn on a ward\n\nsection: Skills\n\nTools: R\n"},
    });
    CHECK(fixtures::read_resume("First Name: Ottoline\nLast Name: Brandt\n").messages() ==
          "draft.resume:1:1: error: 'First Name' and 'Last Name' are one line here: write 'name: "
          "Ottoline Brandt'");
    CHECK(read_below_name("section: Experience\n\nrole: Cook\nMay we contact this employer? Yes\n")
              .messages() ==
          "draft.resume:5:1: error: 'May we contact this employer? Yes' is a question of a form, "
          "which no résumé has: take the line out");
}

TEST_CASE("newcomer: labels without a colon") {
    check_slips({
        {"Ph. 555-0142\n", "2:1: error: 'Ph.' needs a colon after it, as in 'phone: value'",
         "phone: 555-0142\n"},
        {"E mail - ob@ellerystate.example\n",
         "2:1: error: 'E mail' needs a colon after it, as in 'email: value'",
         "email: ob@ellerystate.example\n"},
        {"\xF0\x9F\x93\x9E (360) 555-0142\n",
         "2:1: error: '\xF0\x9F\x93\x9E (360) 555-0142' has no label: write 'phone: (360) "
         "555-0142'",
         "phone: (360) 555-0142\n"},
        {"section: Education\n\nschool\tEllery State College\nRelevant Coursework - Ecology\n",
         "4:1: error: 'school' needs a colon after it, as in 'school: value'\n"
         "draft.resume:5:1: error: 'Relevant Coursework' needs a colon after it, as in 'courses: "
         "value'",
         "section: Education\n\nschool: Ellery State College\ncourses: Ecology\n"},
        {"section: Education\n\nschool: A\nMinor in Chemistry\n",
         "5:1: error: 'Minor' needs a colon after it, as in 'minor: value'",
         "section: Education\n\nschool: A\nMinor: Chemistry\n"},
        {"section: Education\n\nschool: A\nDean's List,Fall 2024,Spring 2025\n",
         "5:1: error: 'Dean's List,Fall 2024,Spring 2025' has no label: write 'honors: Dean's "
         "List, "
         "Fall 2024, Spring 2025'",
         "section: Education\n\nschool: A\nhonors: Dean's List, Fall 2024, Spring 2025\n"},
    });
    CHECK(read_below_name("section: Education\n\nSchool of Nursing, Ellery State College\n")
              .messages() ==
          "draft.resume:4:1: error: 'School of Nursing, Ellery State College' has no label: write "
          "'school: School of Nursing, Ellery State College'");
}

TEST_CASE("newcomer: rows of a table") {
    check_slips({
        {"section: Activities\n\nOrganization\tPosition\tFrom\tTo\nAccounting "
         "Society\tTreasurer\tSep-25\tpresent\n- Balanced $6,400\nRowing "
         "Club\tMember\t2024\t2025\n",
         "4:1: error: 'Organization\tPosition\tFrom\tTo' heads a table, which the markup has none "
         "of: take the line out; what stands below it is labelled line by line\n"
         "draft.resume:5:1: error: 'Accounting Society\tTreasurer\tSep-25\tpres…' says several "
         "things: "
         "give each a line of its own: 'activity: Accounting Society', 'role: Treasurer' and "
         "'dates: Sep 2025 - present'\n"
         "draft.resume:7:1: error: 'Rowing Club\tMember\t2024\t2025' says several things: give "
         "each "
         "a line of its own: 'activity: Rowing Club', 'role: Member' and 'dates: 2024 - 2025'",
         "section: Activities\n\nactivity: Accounting Society\nrole: Treasurer\ndates: Sep 2025 - "
         "present\n- Balanced $6,400\n\nactivity: Rowing Club\nrole: Member\ndates: 2024 - 2025\n"},
        {"section: Experience\n\n| Role | Employer | Dates |\n|---|---|---|\n| Cook | Ferry | 2025 "
         "|"
         "\n",
         "4:1: error: '| Role | Employer | Dates |' heads a table, which the markup has none of: "
         "take the line out; what stands below it is labelled line by line\n"
         "draft.resume:5:1: error: '|---|---|---|' heads a table, which the markup has none of: "
         "take the line out; what stands below it is labelled line by line\n"
         "draft.resume:6:1: error: '| Cook | Ferry | 2025 |' says several things: give each a line "
         "of its own: 'role: Cook', 'employer: Ferry' and 'dates: 2025'",
         "section: Experience\n\nrole: Cook\nemployer: Ferry\ndates: 2025\n"},
    });
    const struct {
        std::string line, says;
    } cases[] = {
        {"Cook          Jun 2025 - Aug 2025", "'role: Cook' and 'dates: Jun 2025 - Aug 2025'"},
        {"Cook (2023-2024)", "'role: Cook' and 'dates: 2023-2024'"},
        {"2014 till date Ferry Dock, dock upkeep",
         "'dates: 2014 - present', 'employer: Ferry Dock' and 'role: dock upkeep'"},
        {"1997 - '14     Skipper, Marigold Ann",
         "'dates: 1997 - '14', 'role: Skipper' and 'employer: Marigold Ann'"},
        {"Cook @ Ferry, Summer 2023", "'role: Cook', 'employer: Ferry' and 'dates: Summer 2023'"},
        {"Cook.......Summer 2023", "'role: Cook' and 'dates: Summer 2023'"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.line);
        const std::string said =
            read_below_name("section: Experience\n\n" + one.line + "\n").messages();
        CHECK(said.find("says several things: give each a line of its own: " + one.says) !=
              std::string::npos);
    }
}

TEST_CASE("newcomer: what is pushed in as a whole") {
    check_slips({
        {"section: Experience\n\n    role: Cook\n    employer: Ferry\n    - Baked 9 pies\n      a "
         "day\n",
         "4:5: error: 'role: Cook' and what stands below it down to line 6 is indented, so it goes "
         "on with the line above, and there is none: start each line in the first column",
         "section: Experience\n\nrole: Cook\nemployer: Ferry\n- Baked 9 pies\n      a day\n"},
        {"section: Experience\n  role: Cook\n  employer: Ferry\n",
         "3:3: error: 'role: Cook' and what stands below it down to line 4 is indented, so it goes "
         "on with the line above, and there is none: start each line in the first column",
         "section: Experience\nrole: Cook\nemployer: Ferry\n"},
        {"\n     address: Port Ellery, WA\n   phone: (360) 555-0142\n",
         "3:6: error: 'address: Port Ellery, WA' and what stands below it down to line 4 is "
         "indented, so it goes on with the line above, and there is none: start each line in the "
         "first column",
         "\naddress: Port Ellery, WA\nphone: (360) 555-0142\n"},
    });
    // what goes on with a line above it does so
    CHECK(
        read_below_name("section: Skills\n\nLanguages:\n  English, Spanish\n").messages().empty());
    CHECK(read_below_name("address:\n  Port Ellery, WA\n").messages().empty());
}

TEST_CASE("newcomer: titles as outlines have them") {
    for (const std::string title :
         {"* Education", "1. Education", "2) Education", "> Education", "~ education ~"}) {
        CAPTURE(title);
        check_slips({{"address: A, WA\n\n" + title + "\n\nschool: A\n",
                      "4:1: error: '" + title + "' opens no section: write 'section: Education'",
                      "address: A, WA\n\nsection: Education\n\nschool: A\n"}});
    }
    check_slips({
        {"\neducation:\n  school: A\n  degree: B\n",
         "3:1: error: 'education:' opens no section: write 'section: Education'\n"
         "draft.resume:4:3: error: 'school: A' and what stands below it down to line 5 is "
         "indented, "
         "so it goes on with the line above, and there is none: start each line in the first "
         "column",
         "\nsection: Education\nschool: A\ndegree: B\n"},
        {"section: Skills\n\nTools: R\n\nrole: Cook\nemployer: Ferry\n",
         "6:1: error: an entry stands in no section: write 'section: Experience' and a blank line "
         "above it",
         "section: Skills\n\nTools: R\n\nsection: Experience\n\nrole: Cook\nemployer: Ferry\n"},
    });
    CHECK(
        read_below_name("section: Experience\n\nrole: Cook\nemployer: Ferry\n\nsection: Skills\n\n"
                        "Tools: R\n\nrole: Clerk\nemployer: Dock\n")
            .messages() == "draft.resume:11:1: error: an entry stands below a list: move it to the "
                           "section 'Experience', above");
}

TEST_CASE("newcomer: what stands on paper alone") {
    check_slips({
        {"Curriculum Vitae\n",
         "2:1: error: 'Curriculum Vitae' stands on paper, and the page says it by itself: take the "
         "line out",
         ""},
        {"section: Experience\n\nrole: Cook\n- Baked 9 pies\n- page 1 of 1 -\n",
         "6:3: error: 'page 1 of 1 -' stands on paper, and the page says it by itself: take the "
         "line out",
         "section: Experience\n\nrole: Cook\n- Baked 9 pies\n"},
        {"section: Certificates\n\nFirst Aid, exp. 5/27\n",
         "4:12: warning: 'exp. 5/27' is a field of its own: write 'expires: 5/2027' on the line "
         "below",
         "section: Certificates\n\nFirst Aid\nexpires: 5/2027\n"},
    });
}

TEST_CASE("newcomer: dates in forms that are none") {
    const struct {
        std::string typed, meant; // empty: not told
    } cases[] = {
        {"09/2025 - (present)", "09/2025 - present"},
        {"(Jun 2025 - Aug 2025)", "Jun 2025 - Aug 2025"},
        {"Sep-2025 - present", "Sep 2025 - present"},
        {"Sep-25 - Jan-26", "Sep 2025 - Jan 2026"},
        {"Jun/2025 - Aug/2025", "Jun 2025 - Aug 2025"},
        {"Fall 23 - Spring 24", "Fall 2023 - Spring 2024"},
        {"9/1/25 - 12/15/25", "9/1/2025 - 12/15/2025"},
        {"2014 till date", "2014 - present"},
        {"2014 to date", "2014 - present"},
        {"Jun 2025 onwards", "Jun 2025 - present"},
        {"Jun 2025+", "Jun 2025 - present"},
        {"Jun 2025 | Aug 2025", "Jun 2025 - Aug 2025"},
        {"Jun 2025 ... present", "Jun 2025 - present"},
        {"08/2024..08/2025", "08/2024 - 08/2025"},
        {"Start: June 2025 End: Aug 2025", "June 2025 - Aug 2025"},
        {"Summer of 2025", "Summer 2025"},
        {"Winter Qtr 2025", "Winter quarter 2025"},
        {"2023, 2024, and 2025", "2023, 2024, 2025"},
        {"20250615", "2025-06-15"},
        {"Jun 2025", ""}, // can be read
        {"2024 - ?", ""},
        {"Sep 25", ""}, // a day or a year
        {"6/25 - 8/25", ""},
        {"2 years", ""},
        {"last summer", ""},
        {"Jun 2025 -", ""},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        CHECK(model::dates_meant(one.typed).value_or("") == one.meant);
    }
    check_slips(
        {{"section: Experience\n\nrole: Cook\ndates: 09/2025 - (present)\n",
          "5:8: error: '09/2025 - (present)' is no form of dates: write '09/2025 - present'",
          "section: Experience\n\nrole: Cook\ndates: 09/2025 - present\n"}});
}

TEST_CASE("newcomer: days whose month and day have changed places in one of two dates") {
    const auto said = [](const std::string& dates) {
        return read_below_name("section: Experience\n\nrole: Cook\ndates: " + dates + "\n")
            .messages();
    };
    CHECK(
        said("6/5/2026 - 31/8/2026") ==
        "draft.resume:5:8: error: '6/5/2026' can be read month first or day first: write '2026-06' "
        "or '2026-05', whichever is meant");
    CHECK(said("6/15/2026 - 31/8/2026").empty());
    CHECK(said("6/5/2026 - 8/31/2026").empty());
}

}

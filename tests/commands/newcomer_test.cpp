// What people type who have read little: each slip gets one message, and `quoin mend` makes the
// line right, or the line is markup as it stands.
#include "tests/commands/newcomer_slips.hpp"

#include <doctest/doctest.h>

#include <string>

namespace quoin::commands {

TEST_CASE("newcomer: labels that people guess") {
    check_slips({
        {"linkedin: brandt.example\n", "2:1: error: 'linkedin' is 'link' here",
         "link: brandt.example\n"},
        {"Cell: (360) 555-0142\n", "2:1: error: 'cell' is 'phone' here", "phone: (360) 555-0142\n"},
        {"location: Port Ellery, WA\n", "2:1: error: 'location' is 'address' here",
         "address: Port Ellery, WA\n"},
        {"section: Experience\n\ntitle: Deckhand\nemployer: Ferry\n",
         "4:1: error: 'title' is 'role' here",
         "section: Experience\n\nrole: Deckhand\n"
         "employer: Ferry\n"},
        {"section: Experience\n\nrole: Deckhand\ncompany: Ferry\n",
         "5:1: error: 'company' is 'employer' here",
         "section: Experience\n\nrole: Deckhand\nemployer: Ferry\n"},
        {"section: Education\n\nuniversity: Ellery State College\n",
         "4:1: error: 'university' is 'school' here",
         "section: Education\n\nschool: Ellery State College\n"},
        {"section: Experience\n\nrole: Deckhand\nfrom: Jun 2025\nto: Aug 2025\n",
         "5:1: error: 'from' and 'to' are one line here: write 'dates: Jun 2025 - Aug 2025'",
         "section: Experience\n\nrole: Deckhand\ndates: Jun 2025 - Aug 2025\n"},
        {"section: Experience\n\nrole: Deckhand\nduties: Sold 90 tickets\n",
         "5:1: error: what 'duties' tells goes into bullets: write '- text', one a line",
         "section: Experience\n\nrole: Deckhand\n- Sold 90 tickets\n"},
    });
}

TEST_CASE("newcomer: lines of another form") {
    check_slips({
        {"Education\n\nschool: A\n",
         "2:1: error: 'Education' opens no section: write 'section: "
         "Education'",
         "section: Education\n\nschool: A\n"},
        {"\nWORK EXPERIENCE\n\nrole: A\nemployer: B\n",
         "3:1: error: 'WORK EXPERIENCE' opens no section: write 'section: WORK EXPERIENCE'",
         "\nsection: WORK EXPERIENCE\n\nrole: A\nemployer: B\n"},
        {"\n# Education\nschool: A\n",
         "3:1: error: '# Education' opens no section: write 'section: Education'",
         "\nsection: Education\nschool: A\n"},
        {"\nEducation:\nschool: A\n",
         "3:1: error: 'Education:' opens no section: write 'section: Education'",
         "\nsection: Education\nschool: A\n"},
        {"section: Experience\n\nrole: A\n\xE2\x80\xA2 Sold 90 tickets\n",
         "5:1: error: '\xE2\x80\xA2' opens no bullet: write '- text'",
         "section: Experience\n\nrole: A\n- Sold 90 tickets\n"},
        {"section: Experience\n\nrole: A\n-Sold 90 tickets\n",
         "5:1: error: '-' needs a space after it to open a bullet, as in '- text'",
         "section: Experience\n\nrole: A\n- Sold 90 tickets\n"},
        {"section: Experience\n\nrole = A\n",
         "4:1: error: 'role =' was found where a label and a colon were expected, as in 'label: "
         "value'",
         "section: Experience\n\nrole: A\n"},
        {"section: Experience\n\nRole Deckhand\n",
         "4:1: error: 'Role' needs a colon after it, as in 'role: value'",
         "section: Experience\n\nRole: Deckhand\n"},
        {"section: Experience\n\nrole: A\n- Sold 90 tickets\nin two summers\n",
         "6:1: error: 'in two summers' goes on with the line above: begin it with a space, or with "
         "'- ' if it is a bullet of its own",
         "section: Experience\n\nrole: A\n- Sold 90 tickets\n  in two summers\n"},
        {"section: Experience\n\nrole: A\n1. Sold 90 tickets\nin two summers\n",
         "5:1: error: '1.' opens no bullet: write '- text'\ndraft.resume:6:1: error: 'in two "
         "summers' goes on with the line above: begin it with a space, or with '- ' if it is a "
         "bullet of its own",
         "section: Experience\n\nrole: A\n- Sold 90 tickets\n  in two summers\n"},
        {"section Experience\n\nrole: A\n",
         "2:1: error: 'section Experience' opens no section: write 'section: Experience'",
         "section: Experience\n\nrole: A\n"},
        {"\n// the short form\n",
         "3:1: error: '//' is no comment here: a line that begins with '#' is one",
         "\n# the short form\n"},
        {"(360) 555-0142 | ob@ellerystate.example\n",
         "2:1: error: '(360) 555-0142 | ob@ellerystate.example' says several things: give each a "
         "line of its own: 'phone: (360) 555-0142' and 'email: ob@ellerystate.example'",
         "phone: (360) 555-0142\nemail: ob@ellerystate.example\n"},
        {"section: Coursework\n\nEcology, GIS, Statistics\n",
         "4:1: error: 'Ecology, GIS, Statistics' has no label: write 'courses: Ecology; GIS; "
         "Statistics'",
         "section: Coursework\n\ncourses: Ecology; GIS; Statistics\n"},
        {"section: Awards\n\nTide Prize: May 2026\n",
         "4:1: error: 'Tide Prize' is no label here: write 'award: Tide Prize', and below it "
         "'dates: May 2026'",
         "section: Awards\n\naward: Tide Prize\ndates: May 2026\n"},
        {"**Phone:** (360) 555-0142\n",
         "2:1: error: '**Phone:**' has marks around its label, as other formats have: write the "
         "label and a colon alone, as in 'label: value'",
         "Phone: (360) 555-0142\n"},
        {"\"address\": Port Ellery, WA\n",
         "2:1: error: '\"address\":' has marks around its label, as other formats have: write the "
         "label and a colon alone, as in 'label: value'",
         "address: Port Ellery, WA\n"},
        {"address: \"Port Ellery, WA\",\n",
         "2:10: warning: the quotes around the value are printed: write 'Port Ellery, WA' without "
         "them",
         "address: Port Ellery, WA\n"},
        {"section: “Skills”\n\nTools: R\n",
         "2:10: warning: the quotes around the value are printed: write 'Skills' without them",
         "section: Skills\n\nTools: R\n"},
        {"\n```\n",
         "3:1: error: a line that only rules off is no part of the markup: a blank line ends "
         "an entry, and 'section: TITLE' opens a section",
         "\n\n"},
        {"section: Experience\n\nrole: A\n- See [the code](git.brandt.example/a)\n",
         "5:7: warning: this is no link here and is set as typed: write 'the code "
         "<git.brandt.example/a>'",
         "section: Experience\n\nrole: A\n- See the code <git.brandt.example/a>\n"},
        {"make it 1 page please\n",
         "2:1: error: 'make it 1 page please' is no line of the markup: write 'pages: 1'",
         "pages: 1\n"},
        {"section: Experience\n\njob_title: Cook\nemployer: Ferry\n",
         "4:1: error: 'job-title' is 'role' here",
         "section: Experience\n\nrole: Cook\nemployer: Ferry\n"},
        {"section: Experience\n\nrole: Nanny, employer: a family\n",
         "4:14: warning: 'employer:' is printed within this value: a field has a line of its own",
         "section: Experience\n\nrole: Nanny\nemployer: a family\n"},
        {"section: Education\n\nschool: A\n\nWork stuff\n\nrole: Cook\nemployer: B\n",
         "6:1: error: 'Work stuff' opens no section: write 'section: Work stuff'",
         "section: Education\n\nschool: A\n\nsection: Work stuff\n\nrole: Cook\nemployer: "
         "B\n"},
        {"address: A, WA\n\nMy jobs\n\nrole: Cook\nemployer: B\n",
         "4:1: error: 'My jobs' opens no section: write 'section: My jobs'",
         "address: A, WA\n\nsection: My jobs\n\nrole: Cook\nemployer: B\n"},
        {"sections: Experience\n\nrole: Cook\nemployer: B\n",
         "2:1: error: 'sections: Experience' opens no section: write 'section: Experience'",
         "section: Experience\n\nrole: Cook\nemployer: B\n"},
        {"\nrole: Cook\nemployer: B\n- Baked 9 pies\n\nrole: Clerk\nemployer: C\n",
         "3:1: error: an entry stands in no section: write 'section: Experience' and a blank line "
         "above it",
         "\nsection: Experience\n\nrole: Cook\nemployer: B\n- Baked 9 pies\n\nrole: "
         "Clerk\nemployer: C\n"},
        {"\nschool: A\ndegree: B\n",
         "3:1: error: an entry stands in no section: write 'section: Education' and a blank line "
         "above it",
         "\nsection: Education\n\nschool: A\ndegree: B\n"},
        {"section: Experience\n\nrole: Cook\nemployeer: B\n",
         "5:1: error: 'employeer' is 'employer' here",
         "section: Experience\n\nrole: Cook\nemployer: B\n"},
        {"address: address: A, WA\n",
         "2:10: warning: 'address:' stands twice, and the second is printed: take it out",
         "address: A, WA\n"},
        {"section: Experience\n\nrole: A\n- - Sold 90 tickets\n- [x] Sold 9 pies\n",
         "5:3: warning: '-' is printed before the bullet's text: the dash alone opens it; take it "
         "out\ndraft.resume:6:3: warning: '[x]' is printed before the bullet's text: the dash "
         "alone "
         "opens it; take it out",
         "section: Experience\n\nrole: A\n- Sold 90 tickets\n- Sold 9 pies\n"},
        {"section: Experience\n\nrole: A\n[x] Sold 90 tickets\n",
         "5:1: error: '[x]' opens no bullet: write '- text'",
         "section: Experience\n\nrole: A\n- Sold 90 tickets\n"},
        {"address: A, WA\n* * *\n",
         "3:1: error: a line that only rules off is no part of the markup: a blank line ends an "
         "entry, and 'section: TITLE' opens a section",
         "address: A, WA\n\n"},
        {"address:: A, WA\n",
         "2:9: warning: ':' before the value is printed: one colon ends the label; take it out",
         "address: A, WA\n"},
        {":address: A, WA\n",
         "2:1: error: ':address:' has marks around its label, as other formats have: write the "
         "label and a colon alone, as in 'label: value'",
         "address: A, WA\n"},
        {"address\n  A, WA\n",
         "2:1: error: 'address' needs a colon after it, as in 'address: value'",
         "address:\n  A, WA\n"},
        {"section: 2. Skills\n\nTools: R\n",
         "2:10: warning: the number '2' is printed, and a portal may not know the title with it: "
         "write 'section: Skills'",
         "section: Skills\n\nTools: R\n"},
        {"section: Skills section: Languages\n\nFrench (fluent)\n",
         "2:17: warning: 'section:' is printed within this value: a field has a line of its own",
         "section: Skills\n\nsection: Languages\n\nFrench (fluent)\n"},
        {"section(\"Skills\")\n\nTools: R\n",
         "2:1: error: 'section(\"Skills\")' opens no section: write 'section: Skills'",
         "section: Skills\n\nTools: R\n"},
        {"section: Experience\n\nrole: A\na. Sold 90 tickets\n",
         "5:1: error: 'a.' opens no bullet: write '- text'",
         "section: Experience\n\nrole: A\n- Sold 90 tickets\n"},
        {"section: Education\n\nschool: A\nexpected graduation: May 2027\n",
         "5:1: error: 'expected-graduation' is 'graduation' here: write 'graduation: May 2027 "
         "(expected)'",
         "section: Education\n\nschool: A\ngraduation: May 2027 (expected)\n"},
        {"section: Certifications\n\ncredential: A\nexpires: 3-31-28\n",
         "5:15: error: '28' is no year of four figures: write '2028' if it is the year",
         "section: Certifications\n\ncredential: A\nexpires: 3-31-2028\n"},
        {"margins: 1 inch\n",
         "2:10: error: '1 inch' is not how the markup has it: write 'margins: 1'", "margins: 1\n"},
        {"link: [Maps](https://maps.example)\n",
         "2:7: error: '[Maps](https://maps.example)' is no link: write 'link: Maps "
         "<https://maps.example>'",
         "link: Maps <https://maps.example>\n"},
        {"(360) 555-0142\n",
         "2:1: error: '(360) 555-0142' has no label: write 'phone: (360) "
         "555-0142'",
         "phone: (360) 555-0142\n"},
    });
}

TEST_CASE("newcomer: an entry torn apart is closed up") {
    check_slips({
        {"section: Experience\n\nrole: Deckhand\n\nemployer: Ferry\n\ndates: Summer 2025\n\n- Sold "
         "90 tickets\n",
         "5: warning: the blank lines at 5, 7 and 9 end the entry, and what stands below is only "
         "the "
         "rest of it; it is read as one entry: close it up",
         "section: Experience\n\nrole: Deckhand\nemployer: Ferry\ndates: Summer 2025\n- Sold 90 "
         "tickets\n"},
    });
    std::string many = "section: Experience\n\nrole: A\n";
    for (int times = 0; times < 200000; ++times)
        many += "\n- B\n";
    CHECK(read_below_name(many).messages().find(" and 199994 more end the entry") !=
          std::string::npos);
    const std::string wide =
        "section: Experience\n\nrole: A\n" + std::string(1000000, '\n') + "- B\n";
    CHECK(read_below_name(wide).messages().find(" and 999994 more end the entry") !=
          std::string::npos);
    // two entries, each whole by itself
    for (const std::string whole :
         {"section: Experience\n\nrole: A\nemployer: B\n\nrole: C\nemployer: D\n",
          "section: Experience\n\nrole: A\ndates: 2024\n- B\n\nemployer: D\nrole: C\n",
          "section: Education\n\nschool: A\ndegree: B\n\ndegree: C\n",
          "section: Honors\n\naward: A\n\naward: B\n", "section: Skills\n\nA: B\n\nC: D\n"}) {
        CAPTURE(whole);
        CHECK(read_below_name(whole).messages().empty());
    }
}

TEST_CASE("newcomer: invisible signs and signs that only look different") {
    check_slips({
        {"phone: \u202A(360) 555-0142\u202C\n",
         "2:8: warning: U+202A, an invisible sign, before '(360)': it is left out; 'quoin mend' "
         "takes it out of the file\ndraft.resume:2:22: warning: U+202C, an invisible sign, before "
         "the line's end: it is left out; 'quoin mend' takes it out of the file",
         "phone: (360) 555-0142\n"},
        {"headline: Field\u200B\u200B work\n",
         "2:16: warning: U+200B and 1 more, invisible signs, before 'work': they are left out; "
         "'quoin mend' takes them out of the file",
         "headline: Field work\n"},
        {"headline: Field\u2028work\n",
         "2:16: warning: U+2028, an invisible line end, before 'work': it is read as a space; "
         "'quoin mend' makes it one",
         "headline: Field work\n"},
    });
    const struct {
        std::string typed, read;
    } forms[] = {
        {"O\uFB03ce", "Office"},          {"\uFF26\uFF49\uFF45\uFF4C\uFF44", "Field"},
        {"\U0001D405ield", "Field"},      {"20 \u2103", "20 °C"},
        {"5 µm, ½, m²", "5 µm, ½, m²"}, // these say something of their own
        {"نص\u200Fعربي", "نص\u200Fعربي"},
    };
    for (const auto& form : forms) {
        CAPTURE(form.typed);
        const auto reading = read_below_name("headline: " + form.typed + "\n");
        CHECK(reading.messages().empty());
        REQUIRE(reading.resume);
        CHECK(fixtures::value_of(*reading.resume->find(trade::FieldName::headline)) == form.read);
    }
}

TEST_CASE("newcomer: bare lines are markup where their kind has a use for them") {
    const struct {
        std::string lines;
        std::size_t entries;
        std::string first;
    } cases[] = {
        {"section: Skills\nC++, C#, Python\nExcel\n", 1, "C++ | C# | Python | Excel"},
        {"section: Summary\nStudent of marine biology\nwith two seasons at sea.\n", 1,
         "Student of marine biology with two seasons at sea."},
        {"section: Awards\nPresident's List\ndates: Fall 2025\nTide Prize\n", 2,
         "President’s List"},
        {"section: Publications\nEelgrass at Nine Sites\n", 1, "Eelgrass at Nine Sites"},
        {"section: Publications\n- Eelgrass at Nine Sites\n- Kelp\n", 2, "Eelgrass at Nine Sites"},
        {"section: Skills\n- C++\n- Excel\n", 1, "C++ | Excel"},
        {"section: Skills\n- Office: Excel\n- Code: C++\n", 1, "Excel"},
        {"section: Objective\nTo find work: at sea.\n", 1, "To find work: at sea."},
    };
    for (const auto& one : cases) {
        CAPTURE(one.lines);
        const auto reading = read_below_name(one.lines);
        CHECK(reading.messages().empty());
        REQUIRE(reading.resume);
        const auto& entries = reading.resume->sections.front().entries;
        CHECK(entries.size() == one.entries);
        CHECK(fixtures::value_of(entries.front().fields.front()) == one.first);
    }
}

TEST_CASE("newcomer: a hyphen between figures is a dash in ranges alone") {
    const struct {
        std::string typed, set;
    } cases[] = {
        {"12-15", "12–15"},
        {"$1.2M-$1.5M", "$1.2M–$1.5M"},
        {"2019-21", "2019–21"},
        {"5-10k", "5–10k"},
        {"200-1500 guests", "200–1500 guests"},
        {"98221-0142", "98221-0142"},
        {"98221-1042", "98221-1042"},
        {"555-0142", "555-0142"},
        {"555-1042", "555-1042"},
        {"won 3-2", "won 3-2"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        const auto reading = read_below_name("headline: " + one.typed + "\n");
        REQUIRE(reading.resume);
        CHECK(fixtures::value_of(*reading.resume->find(trade::FieldName::headline)) == one.set);
    }
}

TEST_CASE("newcomer: dates that life has") {
    const struct {
        std::string typed, read;
    } cases[] = {
        {"15.08.2024", "2024-08-15"},
        {"15/08/2024", "2024-08-15"},
        {"05.2024", "2024-05"},
        {"Fall Semester 2024", "2024-23"},
        {"AY 2024-25", "2024/2025"},
        {"Academic Year 2024-25", "2024/2025"},
        {"Jun 2024 - in progress", "2024-06/.."},
        {"Summers 2024, 2025", "2024-22/2025-22"},
        {"Summers 2022-2025", "2022-22/2025-22"},
        {"Jun 2024, Aug 2025", "2024-06/2025-08"},
        {"Jun-Aug 2024, Jun-Aug 2025", "2024-06/2025-08"},
        {"Aug 2025, June, 2024", "2024-06/2025-08"},
        {"Fall 2024/Spring 2025", "2024-23/2025-21"},
        {"2025-09-01/2026-05-15", "2025-09-01/2026-05-15"},
        {"2025/2026 academic year", "2025/2026"},
        {"Fall 2024 semester", "2024-23"},
        {"Class of 2027", "2027"},
        {"Graduating May 2027", "2027-05"},
        {"2025 -> present", "2025/.."},
        {"14JUN2025 - PRES", "2025-06-14/.."},
        {"3-31-2028", "2028-03-31"},
        {"2025 Sep - 2026 Nov", "2025-09/2026-11"},
        {"2024 (6 weeks)", "2024"},
        {"01/02/2025", "2025-01-02"}, // month first, as the United States have it
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        const auto read = model::read_dates(one.typed);
        const auto* range = std::get_if<model::DateRange>(&read);
        REQUIRE(range);
        CHECK(model::edtf(*range) == one.read);
    }
    const auto reading = read_below_name("language: en-GB\nsection: Experience\n\nrole: A\n"
                                         "dates: 01/02/2025 - 15/08/2025\n");
    CHECK(reading.messages() == "draft.resume:6:8: error: '01/02/2025' can be read month first or "
                                "day first: write '2025-01' or '2025-02', whichever is meant");
}

TEST_CASE("newcomer: a name without its colon is a name all the same") {
    CHECK(
        fixtures::read_resume("Name - Ottoline Brandt\nPort Ellery WA\n").messages() ==
        "draft.resume:1:1: error: 'Name' needs a colon after it, as in 'name: value'\n"
        "draft.resume:2:1: error: 'Port Ellery WA' has no label: write 'address: Port Ellery WA'");
}

TEST_CASE("newcomer: what needs the writer's own hand") {
    CHECK(read_below_name("section: Skills\n\nLab:\n- PCR\n- titration\nTools: R\n").messages() ==
          "draft.resume:4:1: error: 'Lab:' has its list on the lines below it: write all on one "
          "line, as 'Lab: one, two'");
    CHECK(read_below_name("A nursing student of Ellery State who looks for a ward to learn on in "
                          "summer\n\nsection: Skills\n\nTools: R\n")
              .messages() ==
          "draft.resume:2:1: error: 'A nursing student of Ellery State who lo…' stands in no "
          "section: open one above it, such as 'section: Summary', or take it out");
    // titles of works have quotes of their own, and a section's own entries no title above them
    CHECK(read_below_name("section: Plays\nholds: other\n\ntitle: \"The Heron\"\n")
              .messages()
              .empty());
    CHECK(read_below_name("section: Experience\n\nrole: Cook\nemployer: A\n\nrole: Clerk\n"
                          "employer: B\n")
              .messages()
              .empty());
}

TEST_CASE("newcomer: signs that would leave the page, or be printed, are warned of") {
    const struct {
        std::string typed, message;
    } cases[] = {
        {"- Wrote a parser for {JSON}", "23: warning: '{JSON}' is a tag, which is not printed: it "
                                        "keeps the line for builds that ask for it; braces that "
                                        "are text are typed '\\{JSON}'"},
        {"- Wrote a parser for \\{JSON}", ""},
        {"- Moved /etc/tides to one w/", "9: warning: '/etc/tides to one w/' is set in italics "
                                         "without its slashes: write '\\/' for a slash that is to "
                                         "be printed"},
        {"- Moved \\/etc/tides to one w/ notes", ""},
        {"- Counted /Zostera marina/ and/or kelp", ""},
        {"- Cleared C:\\Temp", "13: warning: a backslash before 'T' is not printed: write '\\\\' "
                               "for one that is"},
        {"- Wrote C#, F# and x^2", ""},
        {"- Cut `make` time", "7: warning: backquotes are no marks and are printed: take them out, "
                              "or write '*text*' for strong"},
        {"- A &amp; B", "5: warning: '&amp;' is set as typed: type the character itself, and "
                        "'*strong*' or '/emphasis/' for marks"},
        {"- Cut time 9%  # ask", "16: warning: '#' opens no comment within a line, so it is "
                                 "printed: a comment stands on a line of its own, with '#' in the "
                                 "first column"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.typed);
        const std::string messages =
            read_below_name("section: Experience\n\nrole: A\n" + one.typed + "\n").messages();
        CHECK(messages == (one.message.empty() ? "" : "draft.resume:5:" + one.message));
    }
    // where tags are at work, one more is no slip
    CHECK(read_below_name("section: Experience\n\nrole: A\n- B {lab}\n- C {lab}\n- D {sea}\n")
              .messages()
              .empty());
}

}

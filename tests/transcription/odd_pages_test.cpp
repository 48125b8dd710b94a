// Pages of other builds than most: forms, dates above entries, pages pasted with their heads.
#include "tests/transcription/transcribing.hpp"

#include <doctest/doctest.h>

namespace quoin::transcription {

TEST_CASE("a form filled in: captions to fields, questions to a comment") {
    test::check_pieces(R"(First Name: Ottoline
Last Name: Brandt
Email Address: ottoline@ellerystate.example
City: Port Ellery
State: WA
Are you willing to travel for this job? Yes

Job Title: Tide Gauge Aide
Company: Salish Tidal Trust
Location: Port Ellery, WA
From: 05/2024
To: Present
Description: - Read six gauges a day. - Logged level 1-3 faults.
Supervisor: Noor Haddad

School: Ellery State College
Degree: Bachelor of Science
Major: Marine Biology
Graduation Date: 06/2028
GPA: 3.71

Skills: SCUBA, Excel
Certifications: First Aid Card (exp. 05/2027); Open Water Diver
Languages: Igbo - fluent
)",
                       {"name: Ottoline Brandt\n", "address: Port Ellery, WA\n",
                        "Are you willing to travel",
                        "role: Tide Gauge Aide\nemployer: Salish Tidal Trust\n"
                        "place: Port Ellery, WA\ndates: 05/2024 \u2013 Present\n"
                        "- Read six gauges a day.\n- Logged level 1-3 faults.\n",
                        "# the old page also says: Supervisor: Noor Haddad\n",
                        "degree: Bachelor of Science\nmajor: Marine Biology\n"
                        "graduation: 06/2028\ngpa: 3.71\n",
                        "credential: First Aid Card\nexpires: 05/2027\n",
                        "credential: Open Water Diver\n", "SCUBA, Excel\n", "Igbo - fluent\n"});
}

TEST_CASE("a form filled in: answers below their captions, as a portal shows them to be reviewed") {
    test::check_pieces(R"(My Application > Review and Submit
* indicates a required field

Personal Information
First Name *
Ottoline
Middle Name

Last Name *
Brandt
Email Address *
ottoline@ellerystate.example
Phone Type
Mobile
City
Port Ellery
State
WA

Work History
Position 1
Job Title *
Tide Gauge Aide
Company *
Salish Tidal Trust
Location
Port Ellery, WA
I currently work here
Yes
From *
05/2024
To

Role Description
- Read six gauges a day
- Logged level 1-3 faults

Position 2
Job Title *
Deckhand
Company *
Rosario Ferries
I currently work here
No
From *
05/2022
To
01/2024
Role Description
Loaded 80 cars a sailing

Education
School or University *
Ellery State College
Degree
Bachelor of Science
Field of Study
Marine Biology
Overall Result (GPA)
3.71
From
2024
To (Actual or Expected)
2028

Certifications
Certification
First Aid Card
Issued
11/2025

Languages
Language
Igbo
I am fluent in this language
No
Overall Proficiency
Intermediate

Skills
SCUBA x  Excel x  Line handling x

Are you at least 18 years of age? *
Yes
)",
                       {"name: Ottoline Brandt\n", "address: Port Ellery, WA\n",
                        "role: Tide Gauge Aide\nemployer: Salish Tidal Trust\n"
                        "place: Port Ellery, WA\ndates: 05/2024 \u2013 present\n"
                        "- Read six gauges a day\n- Logged level 1-3 faults\n",
                        "role: Deckhand\nemployer: Rosario Ferries\n"
                        "dates: 05/2022 \u2013 01/2024\n- Loaded 80 cars a sailing\n",
                        "school: Ellery State College\ndegree: Bachelor of Science\n"
                        "major: Marine Biology\ngpa: 3.71\n",
                        "2024 \u2013 2028\n", "credential: First Aid Card\ndates: 11/2025\n",
                        "Igbo, Intermediate\n", "SCUBA, Excel, Line handling\n"});
}

TEST_CASE("rows of dates go with what leaves no entry without them") {
    test::check_pieces(R"(Ottoline Brandt
ottoline@ellerystate.example

2023-2027 (expected)
Ellery State College, B.S. Marine Biology

June 2026 - September 2026
Survey Intern, Salish Tidal Trust, Port Ellery, WA
- Counted quadrats

Summer '24
Deckhand, Rosario Ferries, Port Ellery, WA
- Loaded 80 cars

MATLAB, Arduino, rigging, French (some)
)",
                       {"school: Ellery State College\ndegree: B.S. Marine Biology\n"
                        "dates: 2023-2027 (expected)\n",
                        "role: Survey Intern\nemployer: Salish Tidal Trust\n"
                        "place: Port Ellery, WA\ndates: June 2026 - September 2026\n",
                        "role: Deckhand\nemployer: Rosario Ferries\nplace: Port Ellery, WA\n"
                        "dates: Summer '24\n",
                        "holds: skills\n"});
    const std::string below = test::source_of_text(R"(Ottoline Brandt
ottoline@ellerystate.example

Experience
Survey Intern, Salish Tidal Trust
June 2026 - September 2026
- Counted quadrats
Deckhand, Rosario Ferries
Summer '24
- Loaded 80 cars
)");
    CAPTURE(below);
    CHECK(below.find("employer: Salish Tidal Trust\ndates: June 2026") != std::string::npos);
    CHECK(below.find("employer: Rosario Ferries\ndates: Summer '24\n") != std::string::npos);
    CHECK(below.find("guessed: dates") == std::string::npos);
}

TEST_CASE("dates that would do for either neighbour are guessed") {
    test::check_pieces(R"(Ottoline Brandt
ottoline@ellerystate.example

Experience
Survey Intern, Salish Tidal Trust
- Counted quadrats
June 2026 - September 2026
Deckhand, Rosario Ferries
- Loaded 80 cars
Summer '24
Cook, Galley Nine
- Fried fish
)",
                       {"guessed: dates"});
    test::check_pieces(R"(Ottoline Brandt
ottoline@ellerystate.example

Experience
Survey Intern, Salish Tidal Trust
June 2026 - September 2026
Deckhand, Rosario Ferries
Summer '24
)",
                       {"employer: Salish Tidal Trust\ndates: June 2026 - September 2026\n",
                        "employer: Rosario Ferries\ndates: Summer '24\n"});
}

TEST_CASE("a page's head in a pasted text is no entry, and what follows it goes on") {
    test::check_pieces(R"(Ottoline Brandt                         ottoline@ellerystate.example
14 Alder Street, Port Ellery, WA         (360) 555-0142

Experience

SALISH SEALIFT, Port Ellery, WA and at sea          2014-2022
Storekeeper, First Class (2019-2022)
 o  Kept 9,000 parts
Storekeeper, Second Class (2016-2019)
 o  Issued parts


Ottoline Brandt                                     Page 2
ottoline@ellerystate.example                        (360) 555-0142

 o  Counted them twice a year
)",
                       {"role: Storekeeper, First Class\nemployer: SALISH SEALIFT\n"
                        "place: Port Ellery, WA and at sea\ndates: 2019-2022\n"
                        "- Kept 9,000 parts\n"
                        "role: Storekeeper, Second Class\ndates: 2016-2019\n- Issued parts\n"
                        "- Counted them twice a year\n"});
}

TEST_CASE("a name below a sidebar's titles; phrases without signs are bullets") {
    test::check_pieces(R"(Contact

ottoline.brandt@ellerystate.example
Port Ellery, Washington

Skills

Figma
Screen printing

OTTOLINE BRANDT
Design Student

Experience

Print Shop Assistant
Salish Print Works
September 2024 - Present

Set up and run 30 jobs a week on two presses
Cut paper waste by 22% with a new template

Warehouse Associate
Breakwater Supply
06/2023 - 08/2024

Picked and packed 90 orders a day
)",
                       {"name: OTTOLINE BRANDT\nheadline: Design Student\n",
                        "employer: Salish Print Works\ndates: September 2024 - Present\n"
                        "- Set up and run 30 jobs a week on two presses\n"
                        "- Cut paper waste by 22% with a new template\n",
                        "employer: Breakwater Supply\ndates: 06/2023 - 08/2024\n"
                        "- Picked and packed 90 orders a day\n"});
}

TEST_CASE("pronouns behind a name; titles with a colon; what a licence's number is") {
    test::check_pieces(R"(Ignatius Brandt, He/Him
ignatius@ellerystate.example

Education:
Ellery State College | Bachelor of Science in Nursing | May 2027
- Cumulative GPA 3.58/4.0; Nursing GPA 3.7
- President's List, 3 terms

Licenses:
- Nursing Assistant-Certified, State of Washington, NC00000117, exp. 08/2027

Ward Weeks:
Medical-Surgical | Skerry Valley Hospital | 120 hours | Spring 2026
Pediatrics | Rosario Sound Medical Center | 90 hours | Fall 2026

Skills:
SAP  *  rigging  *  contract review
)",
                       {"name: Ignatius Brandt\n", "pronouns: He/Him\n", "gpa: 3.58/4.0\n",
                        "- Nursing GPA 3.7\n", "honors: President's List, 3 terms\n",
                        "credential: Nursing Assistant-Certified\nissuer: State of Washington\n"
                        "expires: 08/2027\n",
                        "section: Ward Weeks\n", "SAP\nrigging\ncontract review\n"});
}

TEST_CASE("a date beside an average is no part of it") {
    test::check_pieces("Ottoline Brandt\nottoline@ellerystate.example\n\nEducation\n"
                       "Ellery State College                            Port Ellery, WA\n"
                       "Bachelor of Science in Biology\n"
                       "05/2027 (expected) \u00B7 GPA 3.48 / 4.00\n",
                       {"gpa: 3.48 / 4.00\n", "graduation: 05/2027 (expected)\n"});
}

}

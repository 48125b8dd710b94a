// Old documents in plain text and the sources made of them.
#include "tests/transcription/transcribing.hpp"

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/transcription/draft_source.hpp"
#include "compiler/transcription/kept_words.hpp"

#include <doctest/doctest.h>

#include <initializer_list>
#include <random>
#include <string>

namespace quoin::transcription {

TEST_CASE("a résumé in plain text") {
    CHECK(test::source_of_text(R"(Ottoline Brandt
Port Ellery, WA | (360) 555-0142 | ottoline.brandt@ellerystate.example

EDUCATION
Ellery State College, Port Ellery, WA                     May 2027 (expected)
Bachelor of Science in Marine Biology
GPA: 3.62 / 4.00
Relevant coursework: Benthic Ecology, Applied Regression

EXPERIENCE
Field Survey Intern, Salish Tidal Trust                   Jun 2026 - Aug 2026
 * Counted 212 eelgrass quadrats at 9 sites and cut entry time 18% with a
   barcoded datasheet
 * Trained 4 volunteers in GPS and quadrat placement

SKILLS
Laboratory: pH meter, titration
Languages: Portuguese (professional)
)") == R"(name: Ottoline Brandt
phone: (360) 555-0142
email: ottoline.brandt@ellerystate.example
address: Port Ellery, WA

section: EDUCATION

# the old page also says: Relevant coursework:
school: Ellery State College
place: Port Ellery, WA
degree: Bachelor of Science in Marine Biology
graduation: May 2027 (expected)
gpa: 3.62 / 4.00
courses: Benthic Ecology; Applied Regression

section: EXPERIENCE

role: Field Survey Intern
employer: Salish Tidal Trust
dates: Jun 2026 - Aug 2026
- Counted 212 eelgrass quadrats at 9 sites and cut entry time 18% with a barcoded datasheet
- Trained 4 volunteers in GPS and quadrat placement

section: SKILLS

Laboratory: pH meter, titration
Languages: Portuguese (professional)
)");
}

TEST_CASE("positions at one employer, bullets of an odd sign, a name set wide") {
    const std::string source = test::source_of_text(R"(            OTTOLINE   BRANDT
Port Ellery, WA * (360) 555-0142

Experience

Port Ellery Library, Port Ellery, WA
Circulation Assistant, September 2025 to present
 o  Mend bindings; 40 volumes saved last
    year
Circulation Page, June 2024 to August 2025
 o  Shelved and read shelves

Education
Associate of Arts, Skerry Community College, June 2025
High School Diploma, Ellery Point High School, 2023
)");
    for (const char* piece :
         {"name: OTTOLINE BRANDT\n", "address: Port Ellery, WA\n",
          "role: Circulation Assistant\nemployer: Port Ellery Library\nplace: Port Ellery, WA\n"
          "dates: September 2025 to present\n- Mend bindings; 40 volumes saved last year\n"
          "role: Circulation Page\ndates: June 2024 to August 2025\n",
          "school: Skerry Community College\ndegree: Associate of Arts\ngraduation: June 2025\n",
          "school: Ellery Point High School\ndegree: High School Diploma\ngraduation: 2023\n"}) {
        CAPTURE(piece);
        CAPTURE(source);
        CHECK(source.find(piece) != std::string::npos);
    }
}

TEST_CASE("what is guessed is said above it, with the old page's own words") {
    const std::string source = test::source_of_text(R"(Ottoline Brandt

Experience
Bluewater, Heron       2024
- Counted 212 quadrats
)");
    CHECK(source.find("# guessed: role; the old page says: Bluewater, Heron 2024\n"
                      "role: Bluewater, Heron\n") != std::string::npos);
}

TEST_CASE("captions before each value, and text for the web") {
    test::check_pieces(
        R"(Resume of Basil T. Wren
basil.wren@example.org

Work History

Employer: Brannock County Roads
Position: Flagger
Dates: May 2022 to November 2022
Duties: Held traffic at four sites.

Employer: Tern Island Oyster Company
Position: Sorter
Dates: 2020 - 2022
)",
        {"name: Basil T. Wren\n",
         "employer: Brannock County Roads\nrole: Flagger\ndates: May 2022 to November "
         "2022\n- Held traffic at four sites.\n",
         "employer: Tern Island Oyster Company\nrole: Sorter\ndates: 2020 - 2022\n"});
    test::check_pieces(
        R"(# Wystan Okafor
wystan@example.net

## Experience

**Help Desk Technician** - Marrow Bay College, Port Ansel (Sept 2021 - now)
* Close 25 tickets a week
)",
        {"name: Wystan Okafor\n", "role: Help Desk Technician\n",
         "employer: Marrow Bay College\nplace: Port Ansel\ndates: Sept 2021 - now\n"});
}

TEST_CASE("an entry that goes on in sentences; dates that the margin breaks") {
    test::check_pieces(
        R"(Cosima Ferrant
cosima@example.net

Experience
Office Manager (January 2020 to present), Tolliver Dental Group, Gullhaven, WA. Supervise three
front-desk staff; schedule two dentists.
Receptionist (2017 to 2019), Inlet Eye Clinic, Port Ansel, WA. Answered six lines.
)",
        {"role: Office Manager\nemployer: Tolliver Dental Group\nplace: Gullhaven, WA\n"
         "dates: January 2020 to present\n- Supervise three front-desk staff; schedule two "
         "dentists.\n",
         "role: Receptionist\nemployer: Inlet Eye Clinic\n"});
    test::check_pieces(R"(Thaddeus Coley
t.coley@example.com

MILITARY EXPERIENCE
JUN 2012 - JUN      United Coastal Service
2020                Unit Supply Sergeant
                    - Accountable for property across four sites
)",
                       {"role: Unit Supply Sergeant\nemployer: United Coastal Service\n"
                        "dates: JUN 2012 - JUN 2020\n"});
}

TEST_CASE("dates above each entry; an employer with the time of all positions") {
    test::check_pieces(R"(Xiomara Dell
xiomara@example.com

Employment
AUGUST 2022 - PRESENT
Bank Teller, Inlet Savings, Gullhaven
- Balance a drawer of $20,000 daily
JUNE 2020 - AUGUST 2022
Shift Lead, Fathom Bread, Gullhaven
- Closed the shop
)",
                       {"role: Shift Lead\nemployer: Fathom Bread\nplace: Gullhaven\n"
                        "dates: JUNE 2020 - AUGUST 2022\n- Closed the shop\n"});
    test::check_pieces(
        R"(Lorcan Ibekwe
lorcan@example.net

Work
Northlight Systems, Port Ansel, WA              2020 - present
Support Engineer                                Jan 2023 - present
- Own the on-call handbook
Support Clerk                                   Jun 2020 - Dec 2022
- Wrote 60 help articles
)",
        {"role: Support Engineer\nemployer: Northlight Systems\nplace: Port Ansel, WA\n"
         "dates: Jan 2023 - present\n- Own the on-call handbook\n"
         "role: Support Clerk\ndates: Jun 2020 - Dec 2022\n"});
}

TEST_CASE("publications as lists of references have them (APA's and AMA's order)") {
    test::check_pieces(
        R"(Anselm Okonjo
anselm@example.org

Publications
Okonjo, A. (2022). The storekeeper's second ledger. Coastal History Review, 31(1), 55-82.
Harrow, L., & Okonjo, A. (2021). Who signed on? A database of crews. Notes in Data, 4, 9-17.
Okonjo A, Harrow L. Mapping a shore that moved. Inlet Studies. 2020;3:4-9.
)",
        {"author: Okonjo, A.\npublication: The storekeeper's second ledger\n"
         "venue: Coastal History Review, 31(1), 55-82\ndates: 2022\n",
         "author: Harrow, L., & Okonjo, A.\n"
         "publication: Who signed on? A database of crews\nvenue: Notes in Data, 4, 9-17\n",
         "author: Okonjo A, Harrow L\npublication: Mapping a shore that moved\n"
         "venue: Inlet Studies\ndates: 2020\n"});
}

TEST_CASE("signs of the markup stand for themselves") {
    struct Case {
        const char *text, *written;
    };
    for (const Case& one :
         {Case{"and/or, snake_case, 2*3", "and/or, snake_case, 2*3"},
          {"/slanted/ *strong* _under_", "\\/slanted\\/ \\*strong\\* \\_under\\_"},
          {"a <b> {c}", "a \\<b> \\{c}"},
          {"C:\\data", "C:\\\\data"}}) {
        CAPTURE(one.text);
        CHECK(in_markup(one.text) == one.written);
    }
}

TEST_CASE("words that are not kept are named in their order") {
    WordBag bag;
    bag.add("Counted 212 quadrats, 'at' 9 sites");
    CHECK(bag.take_out("counted 212 eelgrass quadrats at nine of 9 sites | sites") ==
          "eelgrass … nine of … sites");
    CHECK(bag.take_out("212").size() == 3); // it was there once
    CHECK(bag.take_out("• – ·").empty());
}

TEST_CASE("a comment is no title") {
    for (const char* text :
         {"Ottoline Brandt\n* {tag}      No. 36043 open\n-----      # number one\n"
          "Languages: Welsh\nSkills: Experience role: x\n\n\n98299     Experience\n"
          "Jun 2026 - now EDUCATION\n# number one\n\nholds: what\n"}) {
        const std::string source = test::source_of_text(text);
        CHECK(source.find("\n# Experience\n") == std::string::npos);
        CHECK(source.find("\n# … Experience\n") != std::string::npos);
    }
}

namespace {

// Whatever the page says, its source can be read and has all its words.
void require_whole(const std::string& text) {
    const std::string source = test::source_of_text(text);
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("draft", source, diagnostics);
    REQUIRE(file);
    const auto resume =
        model::build_resume(sources, *file, test::data_folder() / "themes/words", diagnostics);
    CAPTURE(text);
    CAPTURE(source);
    CHECK(resume);
    WordBag said;
    said.add(source);
    CHECK(said.take_out(in_markup(text)).empty());
}

}

TEST_CASE("a page that nothing can be made of is kept in comments") {
    for (const char* text : {"{g/", "section: ", "name:", "include: x", "theme: none", "# x"})
        require_whole(text);
}

TEST_CASE("nothing is lost of pages of words thrown together") {
    constexpr const char* pieces[] = {"Ottoline Brandt",
                                      "EDUCATION",
                                      "Experience",
                                      "Skills:",
                                      "References",
                                      "Jun 2026 - now",
                                      "2024",
                                      "Salish Trust",
                                      "Intern",
                                      "role: x",
                                      "- bullet of it",
                                      "* {tag}",
                                      "Port Ellery, WA",
                                      "# number one",
                                      "a@b.example",
                                      "GPA 3.9",
                                      "\t",
                                      "    ",
                                      "-----",
                                      "holds: what",
                                      "sections: x",
                                      "“Quoted,” ",
                                      "(360) 555-0142",
                                      "Summary",
                                      "Languages: Welsh",
                                      "13/2024",
                                      "C/C++",
                                      "/a/ *b* _c_",
                                      "C. one",
                                      "Publications",
                                      "name:",
                                      "https://a.example"};
    std::mt19937 random(7); // the same every time
    for (int page = 0; page < 150; ++page) {
        std::string text = "Ottoline Brandt\n";
        const auto lines = 3 + random() % 20;
        for (unsigned line = 0; line < lines; ++line) {
            const auto words = random() % 4;
            for (unsigned word = 0; word < words; ++word)
                text += std::string(pieces[random() % std::size(pieces)]) +
                        (random() % 3 ? " " : "      ");
            text += '\n';
        }
        require_whole(text);
    }
}

TEST_CASE("a page without titles, a page of one line, a page without a name") {
    for (const char* text :
         {"Ottoline Brandt\n", "x\n", "12345\n", "- one\n- two\n",
          "Ottoline Brandt\n(360) 555-0142\nDeckhand, Port Ellery Ferry, 2024\nCounted 212\n"})
        require_whole(text);
}

TEST_CASE("time grows with the length of the page, whatever is on it") {
    for (const char* word : {"a ", "2024 ", "- ", "Education\n", "x\n", "(", "a, ", "· "}) {
        std::string text = "Ottoline Brandt\n";
        while (text.size() < 100'000)
            text += word;
        CAPTURE(word);
        CHECK_FALSE(test::source_of_text(text).empty());
    }
}

}

// What files of settings, other languages, chats and notes leave in a first draft: each slip gets
// one message, and `quoin mend` makes the line right where that is safe.
#include "tests/commands/newcomer_slips.hpp"

#include <string>

namespace quoin::commands {

TEST_CASE("newcomer: lines of files of settings") {
    check_slips({
        {"phone = \"(360) 555-0142\"\n",
         "2:1: error: 'phone =' has a sign of equality, as files of settings have it: write "
         "'phone: (360) 555-0142'",
         "phone: (360) 555-0142\n"},
        {"phone = (360) 555-0142\n",
         "2:1: error: 'phone =' was found where a label and a colon were expected, as in 'label: "
         "value'",
         "phone: (360) 555-0142\n"},
        {"\nskills = [R, Python, GIS]\n",
         "3:1: error: 'skills' has a section of its own: write 'section: Skills' with a blank line "
         "above it, and the text on the line below",
         "\nsection: Skills\n\nR, Python, GIS\n"},
        {"section: Skills\n\nMethods: [R, Python]\n",
         "4:10: warning: the brackets around the list are printed: write 'R, Python' without them",
         "section: Skills\n\nMethods: R, Python\n"},
        {"section: Education\n\n- school: Ellery State College\n  place: Port Ellery, WA\n  "
         "degree: Bachelor of Arts in History\n",
         "4:3: error: 'school: Ellery State College' is an item of a list, as other formats have "
         "entries, and so is what stands below it down to line 6: take out the dash, and start "
         "each line in the first column",
         "section: Education\n\nschool: Ellery State College\nplace: Port Ellery, WA\ndegree: "
         "Bachelor of Arts in History\n"},
    });
    CHECK(read_below_name("section: Experience\n\nrole: Cook\n- Led: a shift\n  of 4\n")
              .messages()
              .empty());
}

TEST_CASE("newcomer: a value below its label") {
    check_slips({
        {"Phone:\n(360) 555-0142\n",
         "2:1: error: 'Phone:' has its value on the line below it: write both on one line, as "
         "'Phone: (360) 555-0142'",
         "Phone: (360) 555-0142\n"},
        {"section: Experience\n\nrole:\nCook\nCompany:\nFerry\n",
         "4:1: error: 'role:' has its value on the line below it: write both on one line, as "
         "'role: Cook'\n"
         "draft.resume:6:1: error: 'Company:' has its value on the line below it: write both on "
         "one line, as 'Company: Ferry'; and 'company' is 'employer' here",
         "section: Experience\n\nrole: Cook\nemployer: Ferry\n"},
    });
}

TEST_CASE("newcomer: a label and a value that are both wrong are one message") {
    CHECK(read_below_name("section: Education\n\nschool: Ellery State College\nGrad: may 27\n")
              .messages() == "draft.resume:5:1: error: 'grad' is 'graduation' here; and '27' is no "
                             "year of four figures: write '2027' if it is the year");
    check_slips({
        {"Adress: Port Ellery, WA\n", "2:1: error: 'adress' is 'address' here",
         "address: Port Ellery, WA\n"},
        {"section: Experience\n\nrole: Cook\nstart: 2025-09\nend: 2026-01\n",
         "5:1: error: 'start' and 'end' are one line here: write 'dates: 2025-09 - 2026-01'",
         "section: Experience\n\nrole: Cook\ndates: 2025-09 - 2026-01\n"},
    });
    CHECK(
        read_below_name("section: Experience\n\nrole: Cook\nstart: 2025-09\nend: ~\n").messages() ==
        "draft.resume:5:1: error: 'start' and 'end' are one line here: write "
        "'dates: 2025-09 - present'");
}

TEST_CASE("newcomer: words of other languages") {
    const struct {
        std::string typed, meant;
    } dates[] = {
        {"seit 11/2024", "11/2024 - present"},
        {"01.07.2025 bis 30.09.2025", "01.07.2025 - 30.09.2025"},
        {"10/2023 - heute", "10/2023 - present"},
        {"M\u00E4rz 2024 - Mai 2024", "March 2024 - May 2024"},
        {"enero de 2024 a mayo de 2025", "January 2024 - May 2025"},
        {"depuis janvier 2024", "January 2024 - present"},
        {"July 2023, 2wks", "July 2023 (2wks)"},
        {"Jun 2024 - Aug 2024 part-time", "Jun 2024 - Aug 2024 (part-time)"},
    };
    for (const auto& [typed, meant] : dates) {
        const std::string entry = "section: Experience\n\nrole: Cook\ndates: ";
        check_slips({{entry + typed + "\n",
                      "5:8: error: '" + typed + "' is no form of dates: write '" + meant + "'",
                      entry + meant + "\n"}});
    }
    check_slips({
        {"Telefon: (360) 555-0142\n", "2:1: error: 'telefon' is 'phone' here",
         "phone: (360) 555-0142\n"},
        {"section: Experience\n\nPraktikum: Cook\nempresa: Ferry\n",
         "4:1: error: 'praktikum' is 'role' here\n"
         "draft.resume:5:1: error: 'empresa' is 'employer' here",
         "section: Experience\n\nrole: Cook\nemployer: Ferry\n"},
        {"section: Skills\n\nTools: R\n\nPort Ellery, den 30. November 2026\n",
         "6:1: error: 'Port Ellery, den 30. November 2026' stands on paper, and the page says it "
         "by "
         "itself: take the line out",
         "section: Skills\n\nTools: R\n\n"},
    });
    CHECK(read_below_name("section: Ausbildung\n\n10/2023 - heute\tEllery State College, B.A. "
                          "History\n")
              .messages() ==
          "draft.resume:4:1: error: '10/2023 - heute\tEllery State College, B.…' says several "
          "things: give each a line of its own: 'dates: 10/2023 - present', 'school: Ellery State "
          "College' and 'degree: B.A. History'");
}

TEST_CASE("newcomer: a line that begins another entry says so") {
    CHECK(read_below_name("section: Education\n\nschool: Ellery State College\ndegree: Bachelor of "
                          "Arts in History\ngraduation: May 2030\nPort Ellery High, class of '26, "
                          "gpa 3.4\n")
              .messages() ==
          "draft.resume:7:1: error: 'Port Ellery High, class of '26, gpa 3.4' says several things "
          "of another entry: leave a blank line above it, and give each a line of its own: "
          "'school: Port Ellery High', 'graduation: class of '26' and 'gpa: 3.4'");
    CHECK(read_below_name("section: Education\n\nschool: Ellery State College\nAverage 1,7\n")
              .messages() ==
          "draft.resume:5:1: error: 'Average 1,7' has no label: write 'gpa: 1,7'");
}

TEST_CASE("newcomer: signs of chats and of lists by hand") {
    const std::string cook = "section: Experience\n\nrole: Cook\nemployer: The Salted Pier\n\n";
    check_slips({
        {cook + "role: Dishwasher\nemployer: same\n",
         "8:11: error: 'same' stands for the line above, and is printed as it stands: write "
         "'employer: The Salted Pier'",
         cook + "role: Dishwasher\nemployer: The Salted Pier\n"},
        {cook + "role: Baker\n- Wrote rotas in `Rust`\n",
         "8:18: warning: backquotes are no marks and are printed: take them out, or write '*text*' "
         "for strong",
         cook + "role: Baker\n- Wrote rotas in Rust\n"},
    });
    CHECK(fixtures::read_resume("MATEO QUILLFEATHER \xF0\x9F\x8C\x8A\n").messages() ==
          "draft.resume:1:1: error: 'MATEO QUILLFEATHER \xF0\x9F\x8C\x8A' has no label: write "
          "'name: MATEO QUILLFEATHER'");
    CHECK(
        read_below_name("section: Experience\n\nrole: Cook\nemployer: same\n").messages().empty());
}

TEST_CASE("newcomer: labels with a number, in pieces, or that tell of several things") {
    check_slips({
        {"section: Projects\n\nProject 1: Slackwater\n",
         "4:1: error: 'project-1' is 'project' here", "section: Projects\n\nproject: Slackwater\n"},
        {"section: Experience\n\nrole: Cook\ncity: Port Ellery\nstate: WA\n",
         "5:1: error: 'city' and 'state' are one line here: write 'place: Port Ellery, WA'",
         "section: Experience\n\nrole: Cook\nplace: Port Ellery, WA\n"},
        {"contact: (360) 555-0142, ob@ellerystate.example\n",
         "2:1: error: '(360) 555-0142, ob@ellerystate.example' says several things: give each a "
         "line of its own: 'phone: (360) 555-0142' and 'email: ob@ellerystate.example'",
         "phone: (360) 555-0142\nemail: ob@ellerystate.example\n"},
        {"section: Skills\n\nLanguages: French\nSoftware - Excel, Word\nOther..... driving\n",
         "5:1: error: 'Software' needs a colon after it, as in 'Software: value'\n"
         "draft.resume:6:1: error: 'Other' needs a colon after it, as in 'Other: value'",
         "section: Skills\n\nLanguages: French\nSoftware: Excel, Word\nOther: driving\n"},
        {"section: Education\n\nschool: Ellery State College\nGrad Date = 5/2027\n",
         "5:1: error: 'Grad Date =' was found where a label and a colon were expected, as in "
         "'label: value'; and 'grad-date' is 'graduation' here",
         "section: Education\n\nschool: Ellery State College\ngraduation: 5/2027\n"},
    });
    CHECK(read_below_name("section: Experience\n\nrole: Cook | Marlowe Cafe | 2025\n").messages() ==
          "draft.resume:4:7: error: 'Cook | Marlowe Cafe | 2025' says several things: give each a "
          "line of its own: 'role: Cook', 'employer: Marlowe Cafe' and 'dates: 2025'");
}

TEST_CASE("newcomer: what telephones, spreadsheets and old pages leave") {
    check_slips({
        {"\U0001F4CD Port Ellery\n",
         "2:1: error: '\U0001F4CD Port Ellery' has no label: write 'address: Port Ellery'",
         "address: Port Ellery\n"},
        {"section: Skills\n\nTools: R\n\nSent from my phone\n",
         "6:1: error: 'Sent from my phone' stands on paper, and the page says it by itself: take "
         "the "
         "line out",
         "section: Skills\n\nTools: R\n\n"},
        {"Section; skills\n\nTools: R\n",
         "2:1: error: 'Section; skills' opens no section: write 'section: Skills'",
         "section: Skills\n\nTools: R\n"},
        {"section: Experience\n\n\"role\";\"employer\";\"tasks\"\n\"Cook\";\"Ferry, "
         "Inc.\";\"Baked 9 pies; sold 4\"\n",
         "4:1: error: '\"role\";\"employer\";\"tasks\"' heads a table, which the markup has none "
         "of: take the line out; what stands below it is labelled line by line\n"
         "draft.resume:5:1: error: '\"Cook\";\"Ferry, Inc.\";\"Baked 9 pies; sold…' says several "
         "things: give each a line of its own: 'role: Cook', 'employer: Ferry, Inc.' and '- Baked "
         "9 "
         "pies; sold 4'",
         "section: Experience\n\nrole: Cook\nemployer: Ferry, Inc.\n- Baked 9 pies; sold 4\n"},
    });
    CHECK(fixtures::read_resume("OTTOLINE BRANDT, CNA\n").messages() ==
          "draft.resume:1:1: error: 'OTTOLINE BRANDT, CNA' has no label: write 'name: OTTOLINE "
          "BRANDT, CNA'");
    CHECK(read_below_name("section: Experience\n\nLine cook @ The Salt Shed\n").messages() ==
          "draft.resume:4:1: error: 'Line cook @ The Salt Shed' says several things: give each a "
          "line of its own: 'role: Line cook' and 'employer: The Salt Shed'");
    CHECK(read_below_name("section: Education\n\nEllery State College, Port Ellery, WA\t\tMay "
                          "2027\n")
              .messages() ==
          "draft.resume:4:1: error: 'Ellery State College, Port Ellery, WA\t\tM…' says several "
          "things: give each a line of its own: 'school: Ellery State College', 'place: Port "
          "Ellery, WA' and 'graduation: May 2027'");
}

}

// The interview as a machine of states: lines in, a source out, along every path there is.
#include "tests/interview/talk.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"

#include <algorithm>

namespace quoin::interview {

namespace {

using fixtures::skipped_to;
using fixtures::Talk;
using Lines = std::vector<std::string>;

struct Path {
    std::string label; // where it begins
    Lines typed;
    std::string answers; // the lines of the source, but for name and stage
};

const Path paths[] = {
    // answered, and as habit has it: with its label, with a dash, with blanks around
    {"address", {"Port Ellery, WA"}, "address: Port Ellery, WA\n"},
    {"address", {"address: Port Ellery, WA"}, "address: Port Ellery, WA\n"},
    {"address", {"\tPort Ellery, WA  \r"}, "address: Port Ellery, WA\n"},
    // skipped
    {"address", {"", "(360) 555-0142"}, "phone: (360) 555-0142\n"},
    // wrong, and typed again; wrong, and insisted on; wrong, and left
    {"phone", {"555-0142", "(360) 555-0142"}, "phone: (360) 555-0142\n"},
    {"phone", {"555-0142", "!"}, "phone: 555-0142\n"},
    {"phone", {"555-0142", ""}, ""},
    {"email", {"otti@ellery", "!"}, "email: otti@ellery\n"},
    {"phone", {"!"}, ""}, // nothing to insist on
    {"phone", {"555-0142", "?", "!"}, "phone: 555-0142\n"},
    {"school",
     {"Ellery State College", "", "Bachelor of Arts in Biology", "", "May 2027", "3.6",
      "3.62 / 4.00"},
     "section: Education\nschool: Ellery State College\ndegree: Bachelor of Arts in Biology\n"
     "graduation: May 2027\ngpa: 3.62 / 4.00\n"},
    // back, and changed; back, and kept; back at the very first
    {"phone", {"(360) 555-0142", "<", "(360) 555-0187"}, "phone: (360) 555-0187\n"},
    {"phone",
     {"(360) 555-0142", "<", "", "ottoline.brandt@ellerystate.example"},
     "phone: (360) 555-0142\nemail: ottoline.brandt@ellerystate.example\n"},
    {"phone", {"(360) 555-0142", "<", "-"}, ""},
    // an entry, and what is taken out of it
    {"role",
     {"Barista", "Lantern Street Coffee", "Port Ellery, WA", "Sep 2025 - present"},
     "section: Experience\nrole: Barista\nemployer: Lantern Street Coffee\n"
     "place: Port Ellery, WA\ndates: Sep 2025 - present\n"},
    {"role",
     {"Barista", "", "", "", "Trained 4 baristas", "Brewed 90 cups a day", "<", "<", "-"},
     "section: Experience\nrole: Barista\n- Brewed 90 cups a day\n"},
    {"role",
     {"Barista", "", "", "", "- Trained 4 baristas", "Brewed 90 cups a day", "", "Cook"},
     "section: Experience\nrole: Barista\n- Trained 4 baristas\n- Brewed 90 cups a day\n"
     "role: Cook\n"},
    {"role",
     {"Barista", "", "", "", "", "Cook", "<", "<", "<", "<", "<", "<", "-"},
     "section: Experience\nrole: Cook\n"},
    {"role",
     {"Barista", "", "", "", "Trained 4 baristas", "", "", "<", "<", "Poured 9 cups"},
     "section: Experience\nrole: Barista\n- Trained 4 baristas\n- Poured 9 cups\n"},
    // what cannot be read stands in a comment
    {"role", {"Barista", "", "", "since summer", "!"}, "section: Experience\nrole: Barista\n"},
    {"role",
     {"Barista", "", "", "since summer", "Jun 2026"},
     "section: Experience\nrole: Barista\ndates: Jun 2026\n"},
    // the tense that the dates ask for
    {"role",
     {"Barista", "", "", "Jun 2024 - Aug 2024", "Train 4 baristas", "Trained 4 baristas"},
     "section: Experience\nrole: Barista\ndates: Jun 2024 - Aug 2024\n- Trained 4 baristas\n"},
    // skills: a group of the field's, one of the writer's own
    {"another group",
     {"copy editing", "Media: copy editing, photo captions"},
     "section: Skills\nMedia: copy editing, photo captions\n"},
    {"another group", {"section: Secrets", "Email: x", ""}, ""},
    {"Languages",
     {"Spanish", "Spanish (conversational)"},
     "section: Skills\nLanguages: Spanish (conversational)\n"},
    // a section skipped, all the rest skipped
    {"school", {">", "Barista"}, "section: Experience\nrole: Barista\n"},
    {"role", {"Barista", ">>"}, "section: Experience\nrole: Barista\n"},
    // looked at and helped with: nothing moves
    {"phone", {"=", "?", "(360) 555-0142"}, "phone: (360) 555-0142\n"},
    // what is no answer at all, and cannot be insisted on
    {"address", {"\x1b[A", "!", "\xff\xfe", "!", std::string(1200, 'x'), "!"}, ""},
};

}

TEST_CASE("interview: every path of answers leads to its source") {
    for (const Path& path : paths) {
        CAPTURE(path.label);
        CAPTURE(path.typed.front());
        Talk talk;
        talk.type_all(skipped_to(path.label));
        talk.type_all(path.typed);
        CAPTURE(talk.heard);
        std::string answers;
        const std::string lines = talk.answers();
        for (const std::string_view line : pieces_of(lines, "\n"))
            if (line != "  name: Ottoline Brandt" && line != "  stage: undergraduate")
                answers += std::string(line.substr(2)) + '\n';
        CHECK(answers == path.answers);
    }
}

TEST_CASE("interview: what is said at a wrong answer is what the check says") {
    struct Said {
        std::string label;
        std::string typed;
        std::string said;
    };
    for (const Said& one : {
             Said{"stage", "freshman", "'freshman' is none of these"},
             Said{"field", "softwear", "did you mean 'software'?"},
             Said{"name", "ottoline brandt", "a name has its capitals"},
             Said{"address", "1420 Spindrift Lane, Port Ellery, WA", "city and state are enough"},
             Said{"phone", "555-0142", "the area code is missing"},
             Said{"email", "otti@ellery", "mail goes to a domain"},
             Said{"email", "otti@@ellery.example", "no address that mail can reach"},
             Said{"email", "beachbum42@mail.example", "one made of your name"},
             Said{"link", "https://www.ottoline.example", "takes room and tells nothing"},
             Said{"role", "{lab}", "'!' to keep it as a comment"},
             Said{"another group", "copy editing", "names no group"},
             Said{"another group", "for: lab", "not a group of skills"},
             Said{"Interests", "Watching television", ""},
             Said{"Computer", "Internet, email", ""},
             Said{"phone", "\x1b[D", "signs that do not print"},
             Said{"phone", "\xc3", "no text in UTF-8"},
             Said{"phone", "!", "nothing to keep"},
             Said{"phone", "=", "name: Ottoline Brandt"},
             Said{"phone", "?", "< to go back"},
             Said{"stage", "<", "the first question"},
         }) {
        CAPTURE(one.label);
        CAPTURE(one.typed);
        Talk talk;
        talk.type_all(skipped_to(one.label));
        const Spot before = talk.interview.spot();
        const Reply reply = talk.interview.take(one.typed);
        CAPTURE(reply.says);
        CHECK(reply.says.find(one.said) != std::string::npos);
        CHECK_FALSE(reply.says.empty());
        CHECK(talk.interview.spot() == before);
    }
}

TEST_CASE("interview: an entry's answers are looked at together") {
    struct Said {
        Lines before;
        std::string typed;
        std::string said;
    };
    for (const Said& one : {
             Said{{"Barista", "", ""}, "Aug 2026 - Jun 2026", "before it starts"},
             Said{{"Barista", "", ""}, "Jun 14, 2026 - present", "gives the day"},
             Said{{"Barista", "", ""}, "summer", "no year"},
             Said{{"Barista", "", ""}, "Jun 2028 - present", "begins in the future"},
             Said{{"Barista", "", "", "Jun 2024 - Aug 2024"}, "Train 4 baristas", "has ended"},
             Said{{"Barista", "", "", "Sep 2025 - present"}, "Trained 4 baristas", ""},
             Said{{"Barista", "", "", ""}, "Responsible for 4 baristas", "not what you did"},
             Said{{"Barista", "", "", ""}, "I trained 4 baristas", "first person"},
             Said{{"Barista", "", "", ""}, "Recieved 14 deliveries", "'received'?"},
         }) {
        CAPTURE(one.typed);
        Talk talk;
        talk.type_all(skipped_to("role"));
        talk.type_all(one.before);
        const Reply reply = talk.interview.take(one.typed);
        CAPTURE(reply.says);
        CHECK(lower_case(reply.says).find(one.said) != std::string::npos);
    }
}

TEST_CASE("interview: a bullet's question names the tense that the dates ask for") {
    struct Tense {
        std::string dates;
        std::string said;
    };
    for (const Tense& one :
         {Tense{"Sep 2025 - present", "in the present: 'Train'"},
          Tense{"Sep 2025 - May 2027 (expected)", "in the present: 'Train'"},
          Tense{"Jun 2024 - Aug 2024", "in the past: 'Trained'"}, Tense{"", ""}}) {
        Talk talk;
        talk.type_all(skipped_to("role"));
        talk.type_all({"Barista", "", "", one.dates});
        const std::string asks = talk.interview.asks();
        CAPTURE(asks);
        CHECK(asks.find(one.said) != std::string::npos);
        CHECK((asks.find("verb in the") != std::string::npos) == !one.said.empty());
    }
}

TEST_CASE("interview: five bullets are asked for, and no sixth") {
    Talk talk;
    talk.type_all(skipped_to("role"));
    talk.type_all({"Barista", "", "", ""});
    for (const char* bullet : {"Trained 4 baristas", "Brewed 90 cups a day", "Opened 3 days a week",
                               "Ordered beans for 2 shops", "Washed 40 cups an hour"})
        talk.type(bullet);
    CHECK(label_at(talk.interview.plan(), talk.interview.spot()) == "role");
    CHECK(talk.interview.spot().entry == 1);
}

TEST_CASE("interview: another stage asks other questions, and nothing answered is lost") {
    Talk talk;
    talk.type_all(skipped_to("school"));
    talk.type_all({"Ellery State College", "", "Bachelor of Arts in Biology", "Statistics"});
    while (talk.interview.spot() != Spot{})
        talk.type("<");
    CAPTURE(talk.heard);
    talk.type_all({"experienced", "health", ">>"});
    CHECK(talk.interview.is_done());
    const std::string source = talk.source();
    CAPTURE(source);
    CHECK(source.find("\nstage: experienced\n") != std::string::npos);
    CHECK(source.find("\ndegree: Bachelor of Arts in Biology\n") != std::string::npos);
    CHECK(source.find("\n# minor: Statistics\n") !=
          std::string::npos); // not asked for at this stage
}

// --- left and gone on with

TEST_CASE("interview: killed after any answer, it goes on where it was") {
    Lines typed = skipped_to("name");
    typed.insert(typed.end(), {"Wren Halloran",
                               "",
                               "Port Ellery, WA",
                               "555-0171",
                               "!",
                               "wren.halloran@ellerystate.example",
                               "",
                               "Ellery State College",
                               "Port Ellery, WA",
                               "Bachelor of Arts in Biology",
                               "",
                               "May 2030",
                               ">",
                               "Barista",
                               "Lantern Street Coffee",
                               "",
                               "since summer",
                               "!",
                               "Make 140 drinks a morning with crew of 3",
                               "",
                               "Cook",
                               "<",
                               "<",
                               "Take 30 orders an hour",
                               ">",
                               ">",
                               ">",
                               ">",
                               "Excel pivot tables",
                               "Spanish (basic)",
                               "",
                               "Media: photo captions"});
    Talk whole;
    whole.type_all(typed);
    for (std::size_t killed = 0; killed < typed.size(); ++killed) {
        CAPTURE(killed);
        Talk talk;
        for (std::size_t i = 0; i < typed.size(); ++i) {
            // what '!' would keep is typed again by whoever goes on
            if (i == killed && typed[i] != "!") talk.go_on_from_disk();
            talk.type(typed[i]);
        }
        CHECK(talk.source() == whole.source());
    }
}

TEST_CASE("interview: '.' leaves at any question") {
    Talk talk;
    while (!talk.interview.is_done()) {
        CHECK(talk.interview.take(".").then == Then::leave);
        talk.type("");
    }
}

}

// Which part of a posting a sentence stands in, and what is left out.
#include "compiler/postings/parts.hpp"
#include "compiler/postings/stretches.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace quoin::postings;

namespace {

// Of the sentence that has these words; `out` if it was left out.
std::string standing_of(const std::string& posting, const std::string& words) {
    const auto lines = is_html(posting) ? html_lines(posting) : text_lines(posting);
    for (const Statement& statement : statements(lines))
        if (statement.text.find(words) != std::string::npos)
            return std::string(statement.left_out ? "out" : name_of(statement.standing));
    return "nowhere";
}

}

TEST_CASE("postings: a heading says what stands below it") {
    for (const char* heading :
         {"Requirements", "QUALIFICATIONS:", "Must have:", "What you'll need:",
          "What we\xE2\x80\x99re looking for:", "Minimum qualifications:",
          "To do this job you must have the following, without exception:"})
        CHECK(standing_of(std::string(heading) + "\n- Welding\n", "Welding") == "required");
    for (const char* heading : {"Preferred qualifications", "Nice to have:", "BONUS POINTS",
                                "Desired:", "It would help if you also had:"})
        CHECK(standing_of(std::string(heading) + "\n- Welding\n", "Welding") == "preferred");
    for (const char* heading :
         {"Responsibilities", "What you'll do:", "ESSENTIAL DUTIES", "The work:", "A typical day:"})
        CHECK(standing_of(std::string(heading) + "\n- Welding\n", "Welding") == "duties");
    for (const char* heading : {"Benefits", "How to apply:", "ABOUT US", "What we offer:", "Pay:"})
        CHECK(standing_of(std::string(heading) + "\n- Welding\n", "Welding") == "out");
}

TEST_CASE("postings: a heading's voice, its person and its turns are no matter") {
    struct Row {
        const char* heading;
        const char* part;
    };
    const Row rows[] = {
        {"What will I be doing?", "duties"},
        {"So what do you need?", "required"},
        {"What must I bring?", "required"},
        {"What the farm asks:", "required"},
        {"What the employer would like:", "preferred"},
        {"What the worker does:", "duties"},
        {"We'd be tickled by:", "preferred"},
        {"What would move you up the pile", "preferred"},
        {"Would tip the balance", "preferred"},
        {"What we need to see in an application", "required"},
        {"**What we look for when we talk to you, every single time**", "required"},
        {"To do this job you need:", "required"},
        {"You're our person if you:", "required"},
        {"We won't budge on", "required"},
        {"Bring these too and we'll be impressed", "preferred"},
        {"On a typical shift you", "duties"},
        {"In the bosun's locker you would...", "duties"},
        {"About the role", "duties"},
        {"About Halyard", "out"},
        {"What comes with the job", "out"},
        {"We'd love to hear from you:", "out"},
        {"What do I get?", "out"},
        {"What lands in your pocket, and what you get", "out"},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.heading));
        CHECK(standing_of("Deckhand\n\n" + std::string(row.heading) + "\n- Rigging\n- Knots\n",
                          "Rigging") == row.part);
    }
}

// In forms that the labelled postings do not have.
TEST_CASE("postings: headings in their many forms") {
    struct Row {
        const char* posting;
        const char* standing; // of the welding in it
    };
    const Row rows[] = {
        {"Deckhand\n\nYou come with\n\n- Welding\n- Knots\n", "required"},
        {"Deckhand\n\nNon-negotiables\n- Welding\n", "required"},
        {"Deckhand\n\n**You're a fit if you know**\n\n- Welding\n", "required"},
        {"Deckhand\n\nThe ideal candidate will have:\n- Welding\n", "required"},
        {"Deckhand\n\nPrerequisites - Welding and knots.\n", "required"},
        {"Deckhand\n\nBrownie points\n- Welding\n", "preferred"},
        {"Deckhand\n\nWe'd love it if you also know:\n- Welding\n", "preferred"},
        {"Deckhand\n\nWish list\n---------\nWelding, knots.\n", "preferred"},
        {"Deckhand\n\nKnots required; welding preferred.\n", "preferred"},
        {"Deckhand\n\nRequirements\n- Knots\n- Welding a plus\n", "preferred"},
        {"Deckhand\n\n## What you'd do\n\n- Welding\n", "duties"},
        {"Deckhand\n\nOn the water\n- Welding\n", "duties"},
        {"Deckhand\n\nYour contribution: Welding and painting.\n", "duties"},
        {"Deckhand\n\nIn your hands\n- Repair hulls by welding\n- Paint decks\n", "duties"},
        {"Deckhand\n\nSome words\n- Two years of welding\n- Knowledge of knots\n", "required"},
        {"Deckhand\n\nThe sweet part\n- Paid welding school\n- Health cover\n", "out"},
        {"Deckhand\n\nTotal rewards\n- Welding\n", "out"},
        {"Deckhand\n\nWhat happens next\n\nA welding test.\n", "out"},
        {"Deckhand\n\nThe mate and her lead need a third pair of hands, and yours would be on the "
         "line."
         "\n\nMost mornings you mend hulls by welding.\n\nIt would sweeten us if you had "
         "rigging.\n",
         "duties"},
        {"Deckhand\n\nMust-haves. Rigging. Two years of welding.\n\nKnots.\n", "required"},
        {"Deckhand\n\nDuties\n\nReports to Marit Wick. Welding, every day.\n", "duties"},
        {"Benefits Clerk\n\nDuties\n- Welding\n", "duties"}, // a title is no heading
    };
    for (const Row& row : rows) {
        CAPTURE(row.posting);
        const std::string found = standing_of(row.posting, "elding");
        CHECK(found == row.standing);
    }
}

TEST_CASE("postings: headings of pages") {
    const auto standing = [](const char* html) {
        const auto lines = html_lines(html);
        for (const Statement& statement : statements(lines))
            if (statement.text.find("elding") != std::string::npos)
                return std::string(statement.left_out ? "out" : name_of(statement.standing));
        return std::string("nowhere");
    };
    CHECK(standing("<h1>Hand</h1><p><b>You bring</b> Welding and knots.</p>") == "required");
    CHECK(standing("<h1>Hand</h1><p><strong>Bonus</strong><br>Welding</p>") == "preferred");
    CHECK(standing("<h1>Hand</h1><dl><dt>Nice extras</dt><dd>Welding</dd></dl>") == "preferred");
    CHECK(standing("<h1>Hand</h1><p><b>Perks.</b> Welding school</p>") == "out");
}

TEST_CASE("postings: headings in the forms that postings give them") {
    struct Row {
        const char* posting;
        const char* required;
        const char* preferred;
        const char* left_out;
    };
    const Row rows[] = {
        {"~ What you'll need ~\nRigging, every day.\n\n~ Nice extras ~\nSonar, some days.\n\n"
         "~ The deal ~\nHammocks for all.\n",
         "Rigging", "Sonar", "Hammocks"},
        {"**Requirements**\n\n- Rigging\n\n**Preferred**\n\n- Sonar\n\n## How to apply\n\n"
         "Bring hammocks.\n",
         "Rigging", "Sonar", "hammocks"},
        {"[ Must ]\n- Rigging\n\n[ Nice ]\n- Sonar\n\n[ Offer ]\n- Hammocks\n", "Rigging", "Sonar",
         "Hammocks"},
        {"Requirements\n============\nRigging.\nDesired\n-------\nSonar.\nBenefits\n--------\n"
         "Hammocks.\n",
         "Rigging", "Sonar", "Hammocks"},
        {"2. MINIMUM QUALIFICATIONS\n2.1 Knowledge of rigging.\n\n3. DESIRABLE QUALIFICATIONS\n"
         "3.1 Skill with sonar.\n\n4. PHYSICAL DEMANDS\nHauling of hammocks.\n",
         "rigging", "sonar", "hammocks"},
        {"REQUIRED:\nRigging\n\nPREFERRED:\nSonar\n\nCOMPENSATION:\nHammocks\n", "Rigging", "Sonar",
         "Hammocks"},
        {"Must have: rigging\nNice to have: sonar\nPerks: hammocks\n", "rigging", "sonar",
         "hammocks"},
        {"You bring\n- Rigging\n- Knots\n\nIcing on the cake\n- Sonar\n- Radar\n\n"
         "What we give back\n- Hammocks\n- Tea\n",
         "Rigging", "Sonar", "Hammocks"},
        {"Rigging is required; sonar is preferred. No hammocks needed.\n", "Rigging", "sonar",
         "hammocks"},
        {"<table><tr><th>Minimum</th><th>Preferred</th><th>Benefits</th></tr><tr><td>Rigging</td>"
         "<td>Sonar</td><td>Hammocks</td></tr><tr><td>Knots</td><td>Radar</td></tr></table>",
         "Knots", "Sonar", "Hammocks"},
        {"<table><tr><td><b>Must "
         "have</b></td><td><b>Bonus</b></td></tr><tr><td><ul><li>Rigging</li>"
         "<li>Knots</li></ul></td><td><ul><li>Sonar</li></ul></td></tr></table><h2>Perks</h2>"
         "<p>Hammocks</p>",
         "Knots", "Sonar", "Hammocks"},
        {"<table><tr><th></th><th>Required</th><th>Preferred</th></tr><tr><td>Experience</td>"
         "<td>Rigging</td><td>Sonar</td></tr></table><h2>Benefits</h2><p>Hammocks</p>",
         "Rigging", "Sonar", "Hammocks"},
        {"<table><tr><th>Criterion</th><th>Essential</th><th>Desirable</th></tr>"
         "<tr><td>Rigging</td><td>X</td><td></td></tr><tr><td>Sonar</td><td></td><td>X</td></tr>"
         "</table><h2>Pay</h2><p>Hammocks</p>",
         "Rigging", "Sonar", "Hammocks"},
        {"<p><b>Must-haves\xE2\x80\xA6</b> Rigging.</p><p><b>Nice-to-haves\xE2\x80\xA6</b> "
         "Sonar.</p><p><b>Perks\xE2\x80\xA6</b> Hammocks.</p>",
         "Rigging", "Sonar", "Hammocks"},
        {"<table><tr><th>Required</th><td>Rigging</td></tr><tr><th>Preferred</th><td>Sonar</td></"
         "tr>"
         "<tr><th>Pay</th><td>Hammocks</td></tr></table>",
         "Rigging", "Sonar", "Hammocks"},
        {"<dl><dt>Needed</dt><dd>Rigging</dd><dt>Would be nice</dt><dd>Sonar</dd><dt>Pay</dt>"
         "<dd>Hammocks</dd></dl>",
         "Rigging", "Sonar", "Hammocks"},
        {"<p><strong>Must-haves</strong> Rigging.</p><p><strong>Nice-to-haves</strong> Sonar.</p>"
         "<p><strong>Perks</strong> Hammocks.</p>",
         "Rigging", "Sonar", "Hammocks"},
        {"<div><div><span><b>You bring</b></span></div><div>Rigging</div><div><b>Bonus points</b>"
         "</div><div>Sonar</div><div><b>What we offer</b></div><div>Hammocks</div></div>",
         "Rigging", "Sonar", "Hammocks"},
    };
    for (const Row& row : rows) {
        const std::string form = row.posting;
        const std::string posting =
            (form.starts_with('<') ? "<h1>Deckhand</h1>" : "Deckhand\n\n") + form;
        INFO(posting);
        CHECK(standing_of(posting, row.required) == "required");
        CHECK(standing_of(posting, row.preferred) == "preferred");
        CHECK(standing_of(posting, row.left_out) == "out");
    }
}

TEST_CASE("postings: a heading without white above") {
    const char* posting =
        "Deckhand, ketch\nWhat fills the hours\n- Weld the hulls\n- Prepare the "
        "nets\nIt counts for something if you have\n- Rigging\nBenefits\nHammocks "
        "for all, and a berth aft.\n";
    CHECK(standing_of(posting, "Weld") == "duties");
    CHECK(standing_of(posting, "Rigging") == "preferred");
    CHECK(standing_of(posting, "Hammocks") == "out");
}

TEST_CASE("postings: what stands under a heading that says nothing known") {
    const char* lists =
        "Deckhand\n\nMornings aboard\n- Weld the hulls\n- Scrape old paint\n- Prepare the nets\n\n"
        "The sailor\n- Knowledge of rigging\n- At least two years at sea\n- Able to climb\n\n"
        "Sweetly\n- Paid holidays\n- Free meals\n- Health insurance\n";
    CHECK(standing_of(lists, "Weld") == "duties");
    CHECK(standing_of(lists, "rigging") == "required");
    CHECK(standing_of(lists, "meals") == "out");
    CHECK(
        standing_of("Deckhand\n\nAboard\n\nYou splice rope and you'll mend nets. You will paint.\n",
                    "splice") == "duties");
    CHECK(standing_of("Skills:\n- Sailing experience - sloops and yawls\n", "Sailing") ==
          "required");
}

TEST_CASE("postings: a sentence says more for itself than its heading") {
    CHECK(standing_of("Requirements:\n- CPR\n- Spanish a plus\n", "Spanish") == "preferred");
    CHECK(standing_of("Duties:\n- Weld hulls\n- Ideally, some diving\n", "diving") == "preferred");
    CHECK(standing_of("You must hold a license. We'd be over the moon if you fish.", "fish") ==
          "preferred");
    CHECK(standing_of("Duties:\n- Help clients with r\xC3\xA9sum\xC3\xA9s and letters\n",
                      "clients") == "duties");
    CHECK(standing_of("You must hold a license. Knots are helpful.", "license") == "required");
    CHECK(standing_of("You must hold a license. Knots are helpful.", "Knots") == "preferred");
    CHECK(standing_of("Any of it would move you up: GPS; kayak handling.", "kayak") == "preferred");
    CHECK(standing_of("Location: Port Ellery\nRequirements: welding\n", "welding") == "required");
    CHECK(standing_of("Location: Port Ellery\nRequirements: welding\n", "Port Ellery") == "out");
}

TEST_CASE("postings: what asks for nothing is left out") {
    for (const char* sentence :
         {"Pay is $20.15 an hour.", "We offer health insurance and a pension.",
          "All qualified applicants are considered without regard to race.",
          "Send a r\xC3\xA9sum\xC3\xA9 to jobs@employer.example.", "You don't need a high GPA.",
          "Founded in 1938, we are a family-owned mill."})
        CHECK(standing_of(std::string("Hello. ") + sentence, sentence) == "out");
    CHECK(standing_of("Requirements:\n- Skill in interviews and references\n", "interviews") ==
          "required");
}

TEST_CASE("postings: sentences end where they end") {
    using Pieces = std::vector<std::string_view>;
    CHECK(sentences_of("Lift 50 lb. and stand. Sing; dance") ==
          Pieces{"Lift 50 lb. and stand.", "Sing;", "dance"});
    CHECK(sentences_of("Open 2 p.m. to 4 p.m. daily, e.g. now") ==
          Pieces{"Open 2 p.m. to 4 p.m. daily, e.g. now"});
    CHECK(sentences_of("Use Node.js daily") == Pieces{"Use Node.js daily"});
    CHECK(sentences_of("") == Pieces{});
}

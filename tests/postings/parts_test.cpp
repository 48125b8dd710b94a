// Which part of a posting a sentence stands in, and what is left out.
#include "compiler/postings/parts.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace quoin::postings;

namespace {

// Of the sentence that has these words; `out` if it was left out.
std::string standing_of(const std::string& posting, const std::string& words) {
    const auto lines = text_lines(posting);
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

TEST_CASE("postings: a sentence says more for itself than its heading") {
    CHECK(standing_of("Requirements:\n- CPR\n- Spanish a plus\n", "Spanish") == "preferred");
    CHECK(standing_of("Duties:\n- Weld hulls\n- Ideally, some diving\n", "diving") == "preferred");
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

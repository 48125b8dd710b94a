// What the checks say of the lines of judged_lines.hpp and adviser_lines.hpp.
#include "tests/advice/adviser_lines.hpp"
#include "tests/advice/judged_lines.hpp"
#include "tests/advice/proofread.hpp"

#include <string>

namespace quoin::fixtures {

namespace {

void judge_lines(const std::vector<JudgedLine>& lines) {
    for (const JudgedLine& one : lines) {
        CAPTURE(one.check);
        CAPTURE(one.line);
        const auto found = proof_of(judged_page(one.where, one.line))->of(one.check);
        CHECK(found.empty() == one.told.empty());
        if (!found.empty()) CHECK(found.front().text.find(one.told) != std::string::npos);
    }
}

}

TEST_CASE("judged lines: values that cannot be") {
    judge_lines(value_lines);
}

TEST_CASE("judged lines: units and notations of one page") {
    judge_lines(unit_lines);
}

TEST_CASE("judged lines: roles, blame and studies") {
    judge_lines(role_lines);
}

TEST_CASE("judged lines: sentences that stop short, part ways or run on") {
    judge_lines(sentence_lines);
}

TEST_CASE("adviser's lines: habits, and verbs that part ways") {
    judge_lines(habit_lines);
}

TEST_CASE("adviser's lines: number, and slips that are words") {
    judge_lines(number_lines);
}

TEST_CASE("adviser's lines: what is not to be told") {
    judge_lines(confidence_lines);
}

TEST_CASE("adviser's lines: figures, dates and forms") {
    judge_lines(measured_lines);
}

TEST_CASE("adviser's lines: the employer that headline and summary seek") {
    struct Case {
        std::string summary, told;
    };
    for (const Case& one : std::initializer_list<Case>{
             {"Eager to bring these skills to the team at Tamsin Harbor Dental.",
              "'Tamsin Harbor Dental' is sought here, and 'Skelling Tide Trust' in the headline"},
             {"Hoping to join Kelp County Fisheries.", "'Kelp County Fisheries' is sought here"},
             {"Eager to bring these skills to Skelling Tide Trust.", ""},
             {"Diver with 2 summers at Salish Tidal Trust, seeking field work.", ""},
             {"Diver trained with Gull Bay Rescue.", ""}}) {
        CAPTURE(one.summary);
        std::string text =
            clean_with("headline: Marine biology student, field survey and data skills",
                       "headline: Applicant for Deckhand, Skelling Tide Trust");
        const std::string education = "section: Education";
        text.insert(text.find(education), "section: Summary\n\ntext: " + one.summary + "\n\n");
        const auto found = proof_of(text)->of("goals-differ");
        CHECK(found.empty() == one.told.empty());
        if (!found.empty()) CHECK(found.front().text.find(one.told) != std::string::npos);
    }
}

}

// One cause, one finding: every pair of checks that may touch the same words, on a page made to
// bring them together.
#include "compiler/advice/one_cause.hpp"
#include "compiler/advice/proof.hpp"
#include "tests/advice/proofread.hpp"

#include <algorithm>
#include <set>

namespace quoin::advice {

namespace {

Finding finding_of(std::string_view check, std::uint32_t column) {
    return {check, Place{0, 9, column, 8}, "", "", {}};
}

std::vector<std::string_view> checks_of(const std::vector<Finding>& findings) {
    std::vector<std::string_view> names;
    for (const Finding& finding : findings)
        names.push_back(finding.check);
    return names;
}

}

TEST_CASE("one cause: of every pair in a family the one that says most is kept") {
    for (const Kin& family : kin_checks())
        for (std::size_t i = 0; i < family.checks.size(); ++i)
            for (std::size_t k = i + 1; k < family.checks.size(); ++k) {
                CAPTURE(family.checks[i]);
                CAPTURE(family.checks[k]);
                std::vector<Finding> both{finding_of(family.checks[k], 3),
                                          finding_of(family.checks[i], 5)};
                keep_one_of_a_cause(both);
                CHECK(checks_of(both) == std::vector{family.checks[i]});
                std::vector<Finding> apart{finding_of(family.checks[k], 3),
                                           finding_of(family.checks[i], 40)};
                keep_one_of_a_cause(apart);
                CHECK(apart.size() == (family.on_one_line ? 1 : 2));
            }
}

TEST_CASE("one cause: one finding on the words that two checks look at") {
    struct Case {
        std::string bullet;
        std::string_view kept;
        std::vector<std::string_view> silent;
    };
    for (const Case& one : std::initializer_list<Case>{
             {"Assisted with diving lessons for 9 guests", "weak-opening", {"tense"}},
             {"Logs were kept of 9 dives", "passive", {"action-verb", "full-sentence"}},
             {"The crew surveyed 9 sites", "full-sentence", {"action-verb"}},
             {"My crew surveyed 9 sites", "first-person", {"full-sentence", "action-verb"}},
             {"Was tasked with 9 dives", "weak-opening", {"passive", "tense"}},
             {"Mapped the the edge of 9 beds", "doubled-word", {"little-words"}}}) {
        CAPTURE(one.bullet);
        const auto proof = fixtures::proof_of(
            fixtures::clean_with("- Run rescue", "- " + one.bullet + "\n- Run rescue"));
        CHECK(proof->of(one.kept).size() == 1);
        for (const std::string_view check : one.silent) {
            CAPTURE(check);
            CHECK(proof->of(check).empty());
        }
    }
}

}

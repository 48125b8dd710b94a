// What the checks say of the lines of judged_lines.hpp.
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

}

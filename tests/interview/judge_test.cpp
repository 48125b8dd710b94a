// An office's rules hold for answers as they do for the whole résumé.
#include "compiler/interview/judge.hpp"
#include "tests/interview/talk.hpp"
#include "tests/office/rules.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <set>
#include <string>

namespace quoin::interview {
namespace {

office::Office office_of(const std::string& text) {
    const auto read = fixtures::rules_of("office: Ellery State career office\n" + text,
                                         {{"gpa-low", "gpa-form"}, {}});
    REQUIRE(read.office);
    return *read.office;
}

bool is_passed(const std::string& gpa, const office::Office* office) {
    static const std::filesystem::path data{QUOIN_DATA_FOLDER};
    const Judge judge(data, fixtures::language(), fixtures::read_on, office);
    Interview interview({}, {}, judge);
    for (const std::string& line : fixtures::skipped_to("school"))
        interview.take(line);
    for (const char* line :
         {"Ellery State College", "", "Bachelor of Arts in Biology", "", "May 2027"})
        interview.take(line);
    const Spot asked = interview.spot();
    interview.take(gpa);
    return !(interview.spot() == asked);
}

}

TEST_CASE("judge: an answer by the office's own number, and not by what is off") {
    struct Case {
        const char *rules, *gpa;
        bool passed;
    };
    for (const Case& c : {Case{"", "2.80 / 4.00", false},
                          {"gpa-leave-out: 2.5\n", "2.80 / 4.00", true},
                          {"off: gpa-low\n", "2.80 / 4.00", true},
                          {"gpa-leave-out: 3.25\n", "3.10 / 4.00", false},
                          {"", "3.10 / 4.00", true}}) {
        CAPTURE(c.rules);
        const office::Office office = office_of(c.rules);
        CHECK(is_passed(c.gpa, &office) == c.passed);
    }
    CHECK_FALSE(is_passed("2.80 / 4.00", nullptr));
}

}

// What an academic's page is excused from.
#include "tests/advice/proofread.hpp"

#include <doctest/doctest.h>

#include <string>

TEST_CASE("an academic's positions need no bullets, and others' do") {
    const auto counts = [](const std::string& stage, const std::string& bullets) {
        const std::string page = "name: Ana Reyes\nstage: " + stage +
                                 "\n\nsection: Appointments\n\nrole: Lecturer\n"
                                 "employer: Ellery State College\nplace: Port Ellery, WA\n"
                                 "dates: 2022 - 2024\n" +
                                 bullets;
        return quoin::fixtures::proof_of(page)->of("bullet-count").size();
    };
    CHECK(counts("experienced", "") == 1);
    CHECK(counts("academic", "") == 0);
    CHECK(counts("academic", "- Taught 3 courses\n") == 0);
}

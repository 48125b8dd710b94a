// The text for a portal's form.
#include "compiler/stages/plain/plain.hpp"

#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <string>
#include <utility>

using quoin::composed::compose;
using quoin::composed::example;
using quoin::plain::plain_text;

TEST_CASE("the example as plain text") {
    CHECK(plain_text(compose(example)) == R"(Ottoline Brandt
Marine biology student, field survey and data skills
Port Ellery, WA | (360) 555-0142 | ottoline.brandt@ellerystate.example | ottolinebrandt.example

Education
Ellery State College, Port Ellery, WA
Bachelor of Science in Marine Biology, Minor in Statistics | May 2027 (expected)
GPA 3.62 / 4.00 | Honors: President's List (2 terms); Dean's List (4 terms)
Relevant courses: Benthic Ecology; GIS for Field Science; Applied Regression

Relevant Experience
Field Survey Intern, Salish Tidal Trust, Anacortes, WA | Jun 2026 - Aug 2026
- Counted 212 eelgrass quadrats at 9 sites and cut entry time 18% with a barcoded datasheet
- Trained 4 volunteers in GPS and quadrat placement

Skills
Laboratory: pH meter, titration, analytical balance
Languages: Portuguese (professional), Hindi (conversational)
)");
}

TEST_CASE("signs, links and levels in plain text") {
    const std::pair<const char*, const char*> cases[] = {
        {"- \"Quoted\" -- it's 12-15\\ km", "- \"Quoted\" - it's 12-15 km\n"},
        {"- Café Zoë, Łódź", "- Café Zoë, Łódź\n"},
        {"- Outer\n-- Inner", "- Outer\n  - Inner\n"},
        {"- See the map <https://maps.example/bay>", "- See the map (https://maps.example/bay)\n"},
        {"- <https://maps.example/bay> has it", "- maps.example/bay has it\n"},
        {"- A *bold /map/* <https://maps.example/>, drawn",
         "- A bold map (https://maps.example/), drawn\n"},
        {"role: Mate\n\nrole: Cook\n- Fed 8", "Mate\n\nCook\n- Fed 8\n"},
    };
    for (const auto& row : cases) {
        const auto& [lines, expected] = row;
        CAPTURE(row.first);
        const std::string text = plain_text(
            compose(std::string("name: Ana Reyes\n\nsection: Experience\nholds: experience\n\n") +
                    lines + "\n"));
        CHECK(text == std::string("Ana Reyes\n\nExperience\n") + expected);
    }
}

// The text for a portal's form.
#include "compiler/stages/plain/plain.hpp"

#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <string>
#include <utility>

using quoin::composed::compose;
using quoin::composed::example;
using quoin::plain::entry_text;
using quoin::plain::in_ascii;
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

TEST_CASE("one entry in plain text, by its number or by words of it") {
    const auto page = compose("name: Ana Reyes\n\nsection: Experience\n\nrole: Mate\n- Fed 8\n\n"
                              "role: Cook\n- Sold 9\n\nsection: Skills\n\nTools: knots\n");
    const std::pair<const char*, const char*> cases[] = {
        {"1", "Mate\n- Fed 8\n"},
        {"2", "Cook\n- Sold 9\n"},
        {"3", "Tools: knots\n"},
        {"cook", "Cook\n- Sold 9\n"},
        {"fed 8", "Mate\n- Fed 8\n"},
        {"4", "none"},
        {"0", "none"},
        {"Pilot", "none"},
    };
    for (const auto& row : cases) {
        CAPTURE(row.first);
        CHECK(entry_text(page, row.first).value_or("none") == row.second);
    }
}

TEST_CASE("plain text in ASCII alone") {
    const std::pair<const char*, const char*> cases[] = {
        {"Café Zoë, Łódź", "Cafe Zoe, Lodz"},
        {"Straße, Ærø, Þór", "Strasse, AEro, THor"},
        {"20 °C", "20 deg C"},
        {"½ at ﬁve", "1/2 at five"},
        {"日本", "??"},
    };
    for (const auto& row : cases) {
        CAPTURE(row.first);
        CHECK(in_ascii(row.second) == row.second);
        CHECK(in_ascii(row.first) == row.second);
    }
}

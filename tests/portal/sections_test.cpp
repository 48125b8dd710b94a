#include "tests/portal/scan_pages.hpp"

#include <doctest/doctest.h>

namespace quoin::portal {

TEST_CASE("scan: usual titles of sections (common practice)") {
    for (const char* title :
         {"Education", "EXPERIENCE", "Relevant Experience", "Work & Research Experience:", "Skills",
          "Technical Skills", "Honors and Awards", "Leadership and Service",
          "Licenses / Certifications", "Areas of Expertise", "Additional Experience"})
        CHECK_MESSAGE(is_usual_title(title), title);
    for (const char* title : {"My Journey", "Ottoline Brandt", "Experience with eelgrass surveys",
                              "Relevant", "Education at Ellery State College", "", "and"})
        CHECK_MESSAGE(!is_usual_title(title), title);
}

TEST_CASE("scan: sections and their entries") {
    PageBuilder page;
    page.line(72, 50, "Ottoline Brandt", 20)
        .line(72, 100, "EDUCATION")
        .line(72, 115, "Ellery State College, Port Ellery, WA")
        .line(72, 130, "Bachelor of Science in Marine Biology, May 2027 (expected)")
        .line(72, 160, "Relevant Experience", 14)
        .line(72, 180, "Field Survey Intern, Salish Tidal Trust, Jun 2026 – Aug 2026")
        .line(72, 195, "• Counted 212 quadrats at 9 sites in 2026 and cut entry time with a")
        .line(90, 210, "barcoded datasheet")
        .line(72, 225, "• Trained 4 volunteers")
        .line(72, 250, "Lab Aide, Ellery State College, Sep 2025 – Present")
        .line(72, 265, "• Kept the tanks")
        .line(72, 290, "My Tidal Journey", 14)
        .line(72, 305, "Volunteer, Port Ellery Aquarium, 2024")
        .line(72, 330, "Skills", 14)
        .line(72, 345, "Laboratory: titration, microscopy since 2024");
    const Found found = find_all(page.reading);
    REQUIRE(found.sections.size() == 4);
    CHECK(found.sections[0].title == "EDUCATION");
    CHECK(found.sections[0].holds == trade::Holds::education);
    CHECK(found.sections[1].known);
    CHECK(found.sections[2].title == "My Tidal Journey");
    CHECK_FALSE(found.sections[2].known);
    REQUIRE(found.entries.size() == 4);
    CHECK(found.entries[0].title ==
          "Ellery State College, Port Ellery, WA, Bachelor of Science in Marine Biology");
    CHECK(found.entries[0].edtf == "2027-05");
    CHECK(found.entries[1].title == "Field Survey Intern, Salish Tidal Trust");
    CHECK(found.entries[1].dates == "Jun 2026 – Aug 2026");
    CHECK(found.entries[1].bullets == 2);
    CHECK(found.entries[2].edtf == "2025-09/..");
    CHECK(found.entries[3].section == 2);
}

// Of a page of our own making, whose titles are as large as its text.
TEST_CASE("scan: a title that no list has looks and stands as those that one has") {
    constexpr std::size_t heavy = 1, plain = 2;
    const struct {
        std::string_view what;
        std::size_t font;
        double white;
        bool found;
    } cases[] = {
        {"as the known ones", heavy, 16, true},
        {"as near as an entry is to the next", heavy, 9, false},
        {"as the text looks", plain, 16, false},
    };
    for (const auto& one : cases) {
        std::vector<StyledText> styles;
        double top = 100;
        PageBuilder page;
        const auto add = [&](double white, const std::string& text, std::size_t font) {
            top += 12 + white;
            page.line(72, top, text);
            styles.push_back({0, page.reading.lines.back().box, font, 10.5, font == heavy, false});
        };
        add(16, "Education", heavy);
        add(2, "Ellery State College, Port Ellery, WA, May 2027 (expected)", plain);
        add(16, "Experience", heavy);
        add(2, "Ward Aide, Port Ellery Clinic, Jun 2026 – Aug 2026", plain);
        add(2, "• Took 30 readings a day", plain);
        add(9, "Shelf Aide, Ellery State College, 2025", plain);
        add(2, "• Shelved 400 books a week", plain);
        add(one.white, "Clinical Rotations", one.font);
        add(2, "Night Ward, Port Ellery Clinic, 2026", plain);
        add(2, "• Kept 12 charts", plain);
        const Found found = find_all(page.reading, {}, styles);
        CHECK_MESSAGE((found.sections.size() == 3) == one.found, one.what);
        CHECK_MESSAGE((found.entries.back().title == "Night Ward, Port Ellery Clinic") == one.found,
                      one.what);
        CHECK(find_all(page.reading).sections.size() == 2); // by the words alone
    }
}

}

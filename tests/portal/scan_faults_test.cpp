// What a scan finds wrong, and where it says nothing.
#include "tests/portal/scan_pages.hpp"

#include <doctest/doctest.h>

#include <initializer_list>

namespace quoin::portal {

TEST_CASE("scan: a faultless document has no faults, and each fault has its name") {
    CHECK(checks_of(faultless()) == Words{});
    struct Case {
        const char* check;
        void (*spoil)(Evidence&);
    };
    for (const Case& c : std::initializer_list<Case>{
             {"no-title", [](Evidence& e) { e.facts.title.clear(); }},
             {"no-language", [](Evidence& e) { e.names.language = false; }},
             {"not-tagged", [](Evidence& e) { e.facts.tagged = false; }},
             {"encrypted", [](Evidence& e) { e.facts.encrypted = true; }},
             {"copying-forbidden",
              [](Evidence& e) { e.facts.encrypted = e.facts.copying_forbidden = true; }},
             {"pages", [](Evidence& e) { e.facts.pages = 3; }},
             {"attachments", [](Evidence& e) { e.names.attachments = true; }},
             {"script", [](Evidence& e) { e.facts.script = true; }},
             {"form", [](Evidence& e) { e.facts.form = true; }},
             {"font-without-unicode",
              [](Evidence& e) {
                  e.fonts = {{"A", "CID TrueType", "Identity-H", true, false}};
              }},
             {"tiny-text",
              [](Evidence& e) {
                  e.looks.texts.push_back({1, 0, 50});
              }},
             {"small-text",
              [](Evidence& e) {
                  e.looks = {{{7, 0, 80}, {10, 0, 20}}, {}, 100};
              }},
             {"no-text", [](Evidence& e) { e.by_place.lines.clear(); }},
             {"machine-read-scan",
              [](Evidence& e) {
                  e.images = 1;
                  e.looks.letters = 0;
              }},
             {"contact-in-page-header",
              [](Evidence& e) { e.tagged_text = "Ottoline Brandt\n(360) 555-0142"; }},
             {"no-email",
              [](Evidence& e) {
                  e.by_place.lines[1].words.erase(e.by_place.lines[1].words.begin());
              }},
             {"no-phone", [](Evidence& e) { e.by_place.lines[1].words.resize(1); }},
             {"no-sections",
              [](Evidence& e) { e.by_place.lines.erase(e.by_place.lines.begin() + 2); }},
             {"no-name",
              [](Evidence& e) {
                  e.by_place.lines.erase(e.by_place.lines.begin());
                  e.by_place.lines.pop_back();
              }},
         }) {
        Evidence evidence = faultless();
        c.spoil(evidence);
        CHECK_MESSAGE(checks_of(evidence) == Words{c.check}, c.check);
    }
}

TEST_CASE("scan: fonts that can be read without a map are no fault") {
    Evidence evidence = faultless();
    evidence.fonts = {{"Helvetica", "Type 1", "WinAnsi", false, false},
                      {"A", "TrueType", "MacRoman", true, false},
                      {"B", "Type 1C", "Custom", true, false},
                      {"C", "CID TrueType", "Identity-H", true, true}};
    CHECK(checks_of(evidence) == Words{});
}

TEST_CASE("scan: a language is missed only where every name could be read") {
    Evidence evidence = faultless();
    evidence.names = {.language = false, .all_could_be_read = false};
    CHECK(checks_of(evidence) == Words{});
}

TEST_CASE("scan: words in pieces and words run together") {
    struct Case {
        std::string line;
        double gap;
        const char* check; // null: none
    };
    for (const Case& c : std::initializer_list<Case>{
             {"S U M M A R Y", 3, "split-words"},
             {"É T U D E", 3, "split-words"},
             {"S K I L L S and tools", 3, "split-words"},
             {"A B C D", 3, nullptr},        // a list
             {"J R R", 3, nullptr},          // initials
             {"S U M M A R Y", 40, nullptr}, // columns of a table
             {"R, C, S, and Q", 3, nullptr},
             {"ManagedTheTeamOfVolunteersAndBooks", 3, "glued-words"},
             {"managedtheteamofvolunteersandthebooks", 3, "glued-words"},
             {"https://ellery.example/AVeryLongNameOfAPageInCapitals", 3, nullptr},
             {"Benthic-Ecology-And-Statistics-For-Field-Science", 3, nullptr},
             {"counterrevolutionaries", 3, nullptr},
             {"pneumonoultramicroscopicsilico", 3, nullptr}, // 30 letters
             {"at ELLERYSTATECOLLEGEMARINEBIOLOGY", 3, nullptr},
         }) {
        PageBuilder page{faultless().by_place};
        page.line(72, 200, c.line, 11, c.gap);
        CHECK_MESSAGE(checks_of(page.reading) == (c.check ? Words{c.check} : Words{}), c.line);
    }
}

TEST_CASE("scan: characters that are no letters") {
    struct Case {
        std::string line;
        const char* check;
    };
    for (const Case& c : std::initializer_list<Case>{
             {"of\uFB01ce", "ligatures"},
             {"\uFB00 \uFB06", "ligatures"},
             {"a\uFFFDb", "unreadable-characters"},
             {"wor\uE001d", "private-characters"},
             {"\uF0B7 Counted quadrats", "private-signs"},
             {"\U000F0001 icon", "private-signs"},
             {"naïve Łódź Ω – “quoted” •", nullptr},
         }) {
        PageBuilder page{faultless().by_place};
        page.line(72, 200, c.line);
        CHECK_MESSAGE(checks_of(page.reading) == (c.check ? Words{c.check} : Words{}), c.line);
    }
}

TEST_CASE("scan: two columns, read one after the other or across") {
    const std::string left = "Counted many quadrats at sites", right = "Kept the tanks and logs";
    PageBuilder by_column{faultless().by_place}, across{faultless().by_place};
    for (int i = 0; i < 10; ++i) {
        by_column.line(72, 200 + 14 * i, left);
        across.line(72, 200 + 14 * i, left).line(330, 200 + 14 * i, right);
    }
    for (int i = 0; i < 10; ++i)
        by_column.line(330, 200 + 14 * i, right);
    CHECK(checks_of(by_column.reading) == Words{"two-columns"});
    CHECK(checks_of(across.reading) == Words{"interleaved-columns"});

    Evidence evidence = faultless(); // well by place, across in the file
    evidence.by_place = by_column.reading;
    evidence.by_file = across.reading;
    evidence.tagged_text.clear();
    CHECK(checks_of(evidence) == Words{"interleaved-columns"});
}

TEST_CASE("scan: sections in a narrow column and a wide one, torn apart by the reading") {
    const Words side = {"Skills",  "Sewing", "Cutting", "Languages",
                        "Spanish", "Twi",    "Awards",  "Red Thread"};
    const Words main = {"Experience",
                        "Costume Shop Assistant",
                        "Sewed 40 costumes for a play",
                        "Stagehand",
                        "Education",
                        "Ellery State College",
                        "Volunteer",
                        "Food Bank"};
    PageBuilder in_turn{faultless().by_place}, torn{faultless().by_place};
    for (std::size_t i = 0; i < side.size(); ++i) {
        const double top = 200 + 14 * static_cast<double>(i);
        in_turn.line(72, top, side[i]);
        torn.line(72, top, side[i]).line(330, top, main[i]);
    }
    for (std::size_t i = 0; i < main.size(); ++i)
        in_turn.line(330, 200 + 14 * static_cast<double>(i), main[i]);
    CHECK(checks_of(in_turn.reading) == Words{});
    CHECK(checks_of(torn.reading) == Words{"interleaved-columns"});
}

TEST_CASE("scan: an address that its column breaks at a hyphen is whole") {
    PageBuilder page{faultless().by_place};
    page.line(72, 200, "brandt-").line(72, 214, "olin.example/work");
    CHECK(find_all(page.reading).links == Words{"brandt-olin.example/work"});
    PageBuilder apart{faultless().by_place};
    apart.line(72, 200, "part-time").line(72, 214, "olin.example/work");
    CHECK(find_all(apart.reading).links == Words{"olin.example/work"});
}

TEST_CASE("scan: dates at the right, labels at the left and lists are no columns") {
    PageBuilder dates{faultless().by_place}, labels{faultless().by_place};
    for (int i = 0; i < 12; ++i) {
        dates.line(72, 200 + 14 * i, "Intern, Salish Tidal Trust")
            .line(420, 200 + 14 * i, "Jun 2026 – Aug 2026");
        labels.line(72, 200 + 14 * i, "Laboratory")
            .line(330, 200 + 14 * i, "titration and other skills");
    }
    CHECK(checks_of(dates.reading) == Words{"dates-apart"});
    CHECK(checks_of(labels.reading) == Words{});
}

TEST_CASE("scan: words that cannot be seen") {
    Evidence evidence = faultless();
    PagePicture picture{612, 792, std::string(612 * 792, '\xFF')};
    const auto paint = [&](const ReadLine& line) { // stripes, as letters make them
        for (int y = static_cast<int>(line.box.top); y < line.box.bottom; ++y)
            for (int x = static_cast<int>(line.box.left); x < line.box.right; x += 3)
                picture.greys[static_cast<std::size_t>(y * 612 + x)] = '\0';
    };
    for (const ReadLine& line : evidence.by_place.lines)
        paint(line);
    evidence.pictures = {picture};
    CHECK(checks_of(evidence) == Words{});
    PageBuilder page{evidence.by_place};
    page.line(72, 200, "leadership teamwork python");
    evidence.by_place = page.reading;
    CHECK(checks_of(evidence) == Words{"hidden-text"});
}

TEST_CASE("scan: contact details that only a page header has") {
    PageBuilder page{faultless().by_place};
    page.reading.lines.erase(page.reading.lines.begin() + 1);
    for (int i = 0; i < 2; ++i) {
        if (i > 0) page.page();
        page.line(72, 20, "ob@ellery.example (360) 555-0142")
            .line(72, 300 + i, "Counted 212 quadrats");
    }
    CHECK(checks_of(page.reading) == Words{"contact-in-page-header"});
}

TEST_CASE("scan: an unusual title is only to be considered") {
    PageBuilder page{faultless().by_place};
    page.line(72, 200, "My Tidal Journey", 15);
    CHECK(checks_of(page.reading) == Words{"unusual-titles"});
}

TEST_CASE("scan: dates at the right edge, apart from what they date") {
    const struct {
        const char* what;
        double white; // pt, between a line's words and its date
        int dates;
        double drift; // pt, from one date's right edge to the next's
        Words checks;
    } cases[] = {
        {"three at one edge", 100, 3, 0, {"dates-apart"}},
        {"two may be chance", 100, 2, 0, {}},
        {"right after what they date", 3, 3, 0, {}},
        {"at no common edge", 100, 3, 20, {}},
    };
    for (const auto& one : cases) {
        PageBuilder page;
        page.line(72, 50, "Ottoline Brandt", 20)
            .line(72, 75, "ottoline.brandt@ellerystate.example (360) 555-0142")
            .line(72, 100, "Education")
            .line(72, 115, "Ellery State College");
        for (int i = 0; i < one.dates; ++i) {
            const double top = 140 + 15 * i, date = 172 + one.white + one.drift * i;
            page.line(72, top, "Harbour Assistant Pilot").line(date, top, "2019 – 2021");
        }
        CHECK_MESSAGE(checks_of(page.reading) == one.checks, one.what);
    }
}

}

// What scan finds on a page in another language than English: its dates as quoin prints them, its
// sections, and where one goes on.
#include "compiler/portal/languages.hpp"

#include "compiler/stages/model/dates.hpp"
#include "tests/fixtures/tries.hpp"
#include "tests/portal/scan_pages.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

namespace {

using namespace quoin;
using namespace quoin::portal;

const std::string words_folder = QUOIN_DATA_FOLDER "/themes/words";

const PageLanguages& installed() {
    static const PageLanguages languages = page_languages(words_folder);
    return languages;
}

page_words::DateWords date_words(const std::string& language) {
    Sources sources;
    Diagnostics diagnostics;
    return page_words::read_words(sources, words_folder, language, {}, diagnostics).dates;
}

std::string with_plain_spaces(std::string text) {
    for (auto at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0"))
        text.replace(at, 2, " ");
    return text;
}

std::vector<model::DateRange> ranges() {
    std::vector<model::DateRange> all;
    for (int month = 1; month <= 12; ++month) {
        const model::Date start{2024, month, {}, {}}, end{2026, 13 - month, {}, {}};
        all.push_back({start, end});
        all.push_back({start, std::nullopt});
        all.push_back({std::nullopt, end, true});
    }
    for (const auto season : {model::Season::spring, model::Season::summer, model::Season::autumn,
                              model::Season::winter})
        all.push_back({std::nullopt, model::Date{2025, {}, season, {}}});
    all.push_back({model::Date{2023, {}, {}, {}}, model::Date{2025, {}, {}, {}}});
    std::vector<model::DateRange> some;
    for (std::size_t i = 0; i < all.size(); i += part_tried)
        some.push_back(all[i]);
    return some;
}

std::string edtf_in(const std::string& line, const PageLanguages& languages) {
    const auto dates = find_dates(line, languages);
    return dates ? dates->edtf : "";
}

}

TEST_CASE("scan: every date that quoin prints is read in its language") {
    using enum trade::DateForm;
    for (const char* language : {"en", "en-GB", "fr", "de", "es"}) {
        const page_words::DateWords words = date_words(language);
        for (const auto form : {short_month, long_month, month_slash_year, year_month})
            for (const model::DateRange& range : ranges()) {
                const std::string printed = with_plain_spaces(print(range, form, words));
                CAPTURE(language);
                CAPTURE(printed);
                CHECK(edtf_in(printed, installed()) == edtf(range));
                CHECK(edtf_in("Fonds des Estrans, Anacortes · " + printed, installed()) ==
                      edtf(range));
            }
    }
}

TEST_CASE(
    "scan: what is no date in English is none, and what is one is the same, in all languages") {
    for (const char* line :
         {"Jun 2026 – Aug 2026", "Ellery State College May 2027 (expected)", "Since 2024",
          "Assistant (Summer 2025), Port Ellery, WA", "Treasurer, 2024", "13/2024",
          "Counted 212 quadrats at 9 sites", "Room 3124, call 360-555-0142", "A Note of 2024"}) {
        CAPTURE(line);
        CHECK(edtf_in(line, installed()) == edtf_in(line, {}));
    }
    CHECK(edtf_in("juin 2026 – août 2026", {}) == "2026");
}

TEST_CASE("scan: sections, entries and dates of pages in French, German and Spanish") {
    struct Case {
        const char *education, *experience, *dates, *edtf, *continued;
    };
    const Case cases[] = {
        {"Formation", "Expérience", "sept. 2025 – aujourd’hui", "2025-09/..", "(suite)"},
        {"Ausbildung", "Berufserfahrung", "März 2025 – Okt. 2025", "2025-03/2025-10",
         "(Fortsetzung)"},
        {"Formación académica", "Experiencia laboral", "ene 2025 – actualidad", "2025-01/..",
         "(continuación)"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.education);
        PageBuilder page;
        page.line(72, 50, "Maëlle Le Guirriec", 20)
            .line(72, 75, "maelle.leguirriec@ellerystate.example")
            .line(72, 100, one.education, 14)
            .line(72, 120, "Institut du littoral, Port-Ellery")
            .line(72, 150, one.experience, 14)
            .line(72, 170, "Fonds des Estrans, Anacortes")
            .line(72, 185, one.dates)
            .line(72, 200, "• 212 quadrats")
            .page()
            .line(72, 60, std::string(one.experience) + ' ' + one.continued, 14)
            .line(72, 80, "• 30 carottes");
        const Found found = find_all(page.reading, installed());
        REQUIRE(found.sections.size() == 2);
        CHECK(found.sections[0].holds == trade::Holds::education);
        CHECK(found.sections[1].holds == trade::Holds::experience);
        CHECK(found.sections[1].known);
        REQUIRE(found.entries.size() == 2);
        CHECK(found.entries[1].edtf == one.edtf);
        CHECK(found.entries[1].bullets == 2); // the second on the next page
    }
}

TEST_CASE("scan: a title that goes on is known by the word and the title") {
    const FoundSection section{"Legal Experience", 0, 0, true, {}};
    for (const char* line : {"Legal Experience (continued)", "Legal Experience, continued",
                             "Legal Experience (suite)"})
        CHECK_MESSAGE(is_continued(line, section, installed()), line);
    for (const char* line : {"Legal Experience", "Experience (continued)", "continued",
                             "Legal Experience continued to grow"})
        CHECK_MESSAGE(!is_continued(line, section, installed()), line);
}

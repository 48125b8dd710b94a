// Where a section goes on over pages: its heading again, with the word for it, as an artifact.
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "tests/composed.hpp"
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

namespace {

using quoin::composition::Composition;
using quoin::composition::Paragraph;
using quoin::pages::Page;
using quoin::pages::Pages;
using quoin::pages::PlacedRun;
using quoin::theme::GapName;

quoin::fit::Fit on_small_paper(const Composition& composition) {
    quoin::fit::Fit fit;
    fit.setting.paper_width = 612;
    fit.setting.paper_height = 300;
    fit.setting.size = 10;
    fit.setting.side_margin = fit.setting.top_margin = fit.setting.bottom_margin = 40;
    fit.setting.leading = 1.2;
    fit.setting.gaps[std::size_t(GapName::section)] = 1;
    fit.setting.gaps[std::size_t(GapName::heading)] = 0.7;
    const double measure = full_measure(fit.setting);
    for (const Paragraph& each : composition.paragraphs)
        fit.lines.push_back(quoin::lines::MeasuredParagraph(each, measure).lines(measure));
    return fit;
}

}

TEST_CASE("a page that begins within a section opens with its heading, continued") {
    // The sample of two pages, in every theme: whatever opens its second page.
    int again = 0, alone = 0;
    for (const std::string& theme : quoin::every_page::themes())
        for (const bool narrow : {false, true}) {
            CAPTURE(theme);
            auto set = quoin::every_page::typeset(
                QUOIN_SOURCE_FOLDER "/samples/law-applicant.resume", theme);
            Composition& composition = set.composition;
            const auto& fit = std::get<quoin::fit::Fit>(set.fit);
            REQUIRE(fit.pages() == 2);
            if (narrow) // too narrow for any heading but the word alone
                for (Paragraph& heading : composition.continued)
                    if (&heading != &composition.continued.front()) heading.span.share /= 5;
            const Pages pages = quoin::pages::make_pages(composition, fit);
            for (const Page& page : pages.pages)
                for (const PlacedRun& run : page.runs) {
                    if (!is_artifact(run) || run.paragraph == quoin::pages::running_head_index)
                        continue;
                    CHECK(&page == &pages.pages.back());
                    const Paragraph& heading = paragraph_of(composition, run);
                    const std::string text = quoin::composed::text_of(heading);
                    CHECK(text.ends_with("(continued)"));
                    ++(text == "(continued)" ? alone : again);
                    CHECK((text == "(continued)") == narrow);
                }
        }
    CHECK(again >= 5);
    CHECK(alone == again);
}

TEST_CASE("a section that goes on has room for its heading, and the word in the page's language") {
    struct Case {
        const char *language, *heading;
    };
    const Case cases[] = {{"en-US", "Work (continued)"},
                          {"fr", "Work (suite)"},
                          {"de", "Work (Fortsetzung)"},
                          {"es", "Work (continuación)"}};
    for (const Case& one : cases) {
        std::string text = "name: Ana Reyes\npages: 2\nlanguage: " + std::string(one.language) +
                           "\n\nsection: Work\nholds: experience\n";
        for (int i = 0; i < 26; ++i)
            text += "\nrole: Deckhand\nemployer: Harbor Ferries\n- Moored\n- Steered\n";
        const Composition composition = quoin::composed::compose(text, "");
        REQUIRE(composition.continued.size() == 2);
        CHECK(quoin::composed::text_of(composition.continued[1]) == one.heading);
        const quoin::fit::Fit fit = on_small_paper(composition);
        const Pages pages = quoin::pages::make_pages(composition, fit);
        REQUIRE(pages.pages.size() > 1);
        for (std::size_t page = 1; page < pages.pages.size(); ++page) {
            const auto& runs = pages.pages[page].runs;
            const auto opening =
                std::ranges::find(runs, quoin::pages::continued_index(1), &PlacedRun::paragraph);
            REQUIRE(opening != runs.end());
            const auto next =
                std::ranges::find_if(runs, [](const PlacedRun& run) { return !is_artifact(run); });
            REQUIRE(next != runs.end());
            CHECK(opening->y - next->y == doctest::Approx((1.2 + 0.7) * 10));
        }
    }
    CHECK(
        quoin::composed::compose("name: Ana Reyes\n\nsection: Work\nholds: prose\n\ntext: A\n", "")
            .continued.empty());
}

// A very short résumé: the text as large as the theme allows, every margin as wide, the lines as
// far apart; what is left stays at the foot, whole.
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/explain.hpp"
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

namespace {

using namespace quoin;

stages::Typeset typeset_text(const std::string& text, const std::string& theme) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("short.resume", text, diagnostics);
    REQUIRE(file);
    stages::Choices choices;
    choices.theme = theme;
    auto set =
        stages::typeset(sources, *file, choices, QUOIN_DATA_FOLDER, composed::fonts(), diagnostics);
    REQUIRE(set);
    return *std::move(set);
}

}

TEST_CASE("a very short résumé is set toward 12 pt, and its white space is one piece at the foot") {
    const std::string text = "name: Ana Reyes\nemail: ana.reyes@ellerystate.example\n\n"
                             "section: Education\n\nschool: Ellery State College\n"
                             "degree: Bachelor of Arts in History\ngraduation: May 2028\n\n"
                             "section: Experience\n\nrole: Barista\n"
                             "employer: Lantern Street Coffee\ndates: Jun 2025 - present\n"
                             "- Served 90 guests an hour at peak\n";
    for (const std::string& theme : every_page::themes()) {
        CAPTURE(theme);
        const stages::Typeset set = typeset_text(text, theme);
        const auto* fit = std::get_if<fit::Fit>(&set.fit);
        REQUIRE(fit);
        CHECK(fit->setting.size == doctest::Approx(set.theme.size.most));
        CHECK(fit->setting.size >= 11.6);
        CHECK(fit->setting.leading == doctest::Approx(set.theme.leading.most));
        CHECK(fit->setting.side_margin == doctest::Approx(set.theme.side_margin.most));
        CHECK(fit->setting.top_margin == doctest::Approx(set.theme.top_margin.most));
        for (std::size_t gap = 0; gap < theme::gap_count; ++gap)
            CHECK(fit->setting.gaps[gap] == doctest::Approx(set.theme.gaps[gap].most));
    }
}

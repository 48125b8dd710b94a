// From markup to a composition in one call, for tests.
#pragma once

#include "compiler/composition/composition.hpp"
#include "compiler/fonts/fonts.hpp"
#include "compiler/model/build.hpp"
#include "compiler/source/source.hpp"
#include "compiler/theme/theme.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace quoin::composed {

// The example of grammar/language.md's contract: every form of line once.
inline const std::string example = R"(# Fall draft, for the wetlands internship
name: Ottoline Brandt
headline: Marine biology student, field survey and data skills
address: Port Ellery, WA
phone: (360) 555-0142
email: ottoline.brandt@ellerystate.example
link: ottolinebrandt.example
stage: undergraduate
updated: 2026-11-03

section: Education

school: Ellery State College
place: Port Ellery, WA
degree: Bachelor of Science in Marine Biology
minor: Statistics
graduation: May 2027 (expected)
gpa: 3.62 / 4.00
honors: President's List (2 terms); Dean's List (4 terms)
courses: Benthic Ecology; GIS for Field Science; Applied Regression

section: Relevant Experience

role: Field Survey Intern
employer: Salish Tidal Trust
place: Anacortes, WA
dates: Jun 2026 - Aug 2026
- Counted 212 eelgrass quadrats at 9 sites and cut entry time *18%* with a
  barcoded datasheet {lab field}
- Trained 4 volunteers in GPS and quadrat placement {field}

section: Skills

Laboratory: pH meter, titration, analytical balance
Languages: Portuguese (professional), Hindi (conversational)
)";

struct Result {
    std::optional<Composition> composition;
    Diagnostics diagnostics;
};

inline Fonts& fonts() {
    static const std::unique_ptr<Fonts> all = [] {
        Sources sources;
        Diagnostics diagnostics;
        return Fonts::open(sources, std::filesystem::path(QUOIN_DATA_FOLDER) / "fonts",
                           diagnostics);
    }();
    REQUIRE(all);
    return *all;
}

// `theme` is lines on top of tests/fixtures/plain.theme, which stays when the house theme changes.
inline Result try_compose(const std::string& markup, const std::string& theme = "") {
    Sources sources;
    Result result;
    const auto file = sources.add("test.resume", markup, result.diagnostics);
    REQUIRE(file);
    const auto resume = build_resume(sources, *file, result.diagnostics);
    std::string faults;
    for (const Diagnostic& fault : result.diagnostics.all())
        faults += format(fault, sources) + '\n';
    CAPTURE(faults);
    REQUIRE(resume);
    const auto theme_file = sources.add(
        "test.theme", "based-on: " QUOIN_SOURCE_FOLDER "/tests/fixtures/plain.theme\n\n" + theme,
        result.diagnostics);
    REQUIRE(theme_file);
    const auto read =
        read_theme(sources, *theme_file, std::filesystem::path(QUOIN_DATA_FOLDER) / "themes",
                   result.diagnostics);
    REQUIRE(read);
    result.composition = compose(*resume, *read, fonts(), result.diagnostics);
    return result;
}

inline Composition compose(const std::string& markup, const std::string& theme = "") {
    Result result = try_compose(markup, theme);
    REQUIRE(result.composition);
    return *std::move(result.composition);
}

}

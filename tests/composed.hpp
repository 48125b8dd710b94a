// From markup to a composition in one call, for tests.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "tests/fixtures/worked_example.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace quoin::composed {

inline const std::string example = fixtures::worked_example;

inline std::string text_of(const composition::Paragraph& paragraph, bool with_label = false) {
    std::string text;
    for (std::size_t run = with_label ? 0 : paragraph.label_runs; run < paragraph.runs.size();
         ++run)
        text += paragraph.runs[run].text;
    return text;
}

// A résumé of one entry's lines, under a section that holds `kind`.
inline std::string entry(const std::string& kind, const std::string& lines) {
    return "name: Ana Reyes\n\nsection: Things\nholds: " + kind + "\n\n" + lines + "\n";
}

struct Result {
    std::optional<composition::Composition> composition;
    Diagnostics diagnostics;
};

inline fonts::Fonts& fonts() {
    static const std::unique_ptr<fonts::Fonts> all = [] {
        Sources sources;
        Diagnostics diagnostics;
        return fonts::Fonts::open(sources, std::filesystem::path(QUOIN_DATA_FOLDER) / "fonts",
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
    const auto resume =
        model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", result.diagnostics);
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
        theme::read_theme(sources, *theme_file, std::filesystem::path(QUOIN_DATA_FOLDER) / "themes",
                          result.diagnostics);
    REQUIRE(read);
    result.composition = quoin::composition::compose(*resume, *read, fonts(), result.diagnostics);
    return result;
}

inline composition::Composition compose(const std::string& markup, const std::string& theme = "") {
    Result result = try_compose(markup, theme);
    REQUIRE(result.composition);
    return *std::move(result.composition);
}

}

// Every sample in every theme on both papers, for tests of what holds on every page; and where the
// ink of a page's lines is, from HarfBuzz's glyph extents.
#pragma once

#include "compiler/stages/typeset.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <limits>
#include <string>
#include <vector>

#include <hb.h>

namespace quoin::every_page {

inline std::vector<std::filesystem::path> samples() {
    std::vector<std::filesystem::path> found;
    for (const auto& entry : std::filesystem::directory_iterator(QUOIN_SOURCE_FOLDER "/samples"))
        if (entry.path().extension() == ".resume") found.push_back(entry.path());
    std::ranges::sort(found);
    return found;
}

inline std::vector<std::string> themes() {
    return theme::theme_names(std::filesystem::path(QUOIN_DATA_FOLDER) / "themes");
}

inline stages::Typeset typeset(const std::filesystem::path& sample, const std::string& theme,
                               trade::Paper paper = trade::Paper::letter) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.read(sample, diagnostics);
    REQUIRE(file);
    stages::Choices choices;
    choices.theme = theme;
    choices.paper = paper;
    auto set =
        stages::typeset(sources, *file, choices, QUOIN_DATA_FOLDER, composed::fonts(), diagnostics);
    REQUIRE(set);
    return *std::move(set);
}

// visit(typeset, what it is)
template<typename Visit>
void each(Visit visit) {
    for (const std::string& theme : themes())
        for (const std::filesystem::path& sample : samples())
            for (const trade::Paper paper : {trade::Paper::letter, trade::Paper::a4}) {
                const std::string name = sample.stem().string() + " in " + theme +
                                         (paper == trade::Paper::a4 ? " on A4" : " on letter");
                CAPTURE(name);
                visit(typeset(sample, theme, paper), name);
            }
}

struct Ink { // pt on the page
    double top = -std::numeric_limits<double>::infinity();
    double bottom = std::numeric_limits<double>::infinity();
};

inline void add_ink(Ink& ink, const composition::Run& run, const pages::PlacedRun& placed) {
    const double scale = placed.size / run.face->units_per_em();
    for (std::uint32_t g = placed.begin; g < placed.end; ++g) {
        hb_glyph_extents_t extents{};
        hb_font_get_glyph_extents(run.face->hb_font(), run.glyphs[g].id, &extents);
        if (extents.height == 0) continue;
        ink.top = std::max(ink.top, placed.y + scale * extents.y_bearing);
        ink.bottom = std::min(ink.bottom, placed.y + scale * (extents.y_bearing + extents.height));
    }
}

}

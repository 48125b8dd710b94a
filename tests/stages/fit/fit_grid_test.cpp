// The page fit against fine grids, on every sample in every theme and on random documents. Set
// QUOIN_FULL to any value for the long run.
#include "compiler/stages/fit/fit.hpp"

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/stages/selection/select.hpp"
#include "tests/composed.hpp"
#include "tests/fixtures/tries.hpp"
#include "tests/stages/fit/fit_reference.hpp"
#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <random>
#include <string>
#include <variant>
#include <vector>

namespace {

namespace fs = std::filesystem;
using quoin::fit_reference::Steps;

bool is_full() {
    return std::getenv("QUOIN_FULL") != nullptr;
}

Steps steps_on_one_page() {
    return is_full() ? Steps{60, 40, 10, 24, 24} : Steps{24, 16, 8, 12, 12};
}

int places_on_two_pages() {
    return is_full() ? 4000 : 300;
}

std::vector<fs::path> files_in(const fs::path& folder, const std::string& extension) {
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == extension) files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

struct Counted {
    int one_page = 0, two_pages = 0, tight = 0, too_long = 0;
};

void check_fit(const quoin::composition::Composition& composition, const quoin::theme::Theme& theme,
               const quoin::model::Settings& settings, Counted& counted) {
    const quoin::fit::SettingChoices choices =
        quoin::fit::choices_of(theme, settings, quoin::fit::characters_in_em(composition));
    const auto result = quoin::fit::fit(composition, theme, settings);
    if (std::holds_alternative<quoin::fit::Overflow>(result)) {
        ++counted.too_long;
        if (*settings.pages == 1)
            CHECK(quoin::fit_reference::best_on_one_page(
                      composition, choices, steps_on_one_page()) == quoin::fit_reference::nowhere);
        return;
    }
    const auto& fit = std::get<quoin::fit::Fit>(result);
    const double cost = quoin::fit_reference::cost_of(composition, choices, fit);
    const bool one = fit.page_begins.size() == 1;
    ++(one ? counted.one_page : counted.two_pages);
    counted.tight += cost > 0;
    CHECK(fit.tightness == doctest::Approx(tightness_of(fit.setting, choices)));
    CHECK(cost <=
          (one ? quoin::fit_reference::best_on_one_page(composition, choices, steps_on_one_page())
               : quoin::fit_reference::best_on_two_pages(composition, choices,
                                                         places_on_two_pages())) +
              1e-9);
}

}

TEST_CASE("no setting of a grid is better: every sample in every theme") {
    Counted counted;
    int pair = 0;
    for (const fs::path& sample : files_in(fs::path(QUOIN_SOURCE_FOLDER) / "samples", ".resume")) {
        for (const fs::path& theme_file :
             files_in(fs::path(QUOIN_SOURCE_FOLDER) / "themes", ".theme")) {
            CAPTURE(sample.filename());
            CAPTURE(theme_file.filename());
            if (pair++ % quoin::part_tried != 0) continue;
            quoin::Sources sources;
            quoin::Diagnostics diagnostics;
            const auto file = sources.read(sample, diagnostics);
            REQUIRE(file);
            const auto resume = quoin::model::build_resume(
                sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
            REQUIRE(resume);
            const auto theme = quoin::theme::read_theme(
                sources, fs::path(QUOIN_DATA_FOLDER) / "themes", theme_file.stem().string(), "",
                {*file, 0, 0, 0}, diagnostics);
            REQUIRE(theme);
            const auto composition =
                quoin::composition::compose(*resume, *theme, quoin::composed::fonts(), diagnostics);
            REQUIRE(composition);
            if (!theme->two_columns) check_fit(*composition, *theme, resume->settings, counted);
        }
    }
    MESSAGE("one page " << counted.one_page << ", two " << counted.two_pages << ", tight "
                        << counted.tight << ", too long " << counted.too_long);
    CHECK(counted.tight > 0);
}

TEST_CASE("no setting of a grid is better: random documents") {
    Counted counted;
    const unsigned documents = is_full() ? 500 : quoin::tries(60);
    for (unsigned seed = 1000; seed < 1000 + documents; ++seed) {
        CAPTURE(seed);
        std::mt19937 random(seed);
        const bool two_pages = seed % 10 == 0;
        const std::size_t sections = (two_pages ? 6 : 3) + random() % 2;
        const quoin::composition::Composition composition =
            quoin::synthetic::resume(seed, sections, 4 + random() % 5);
        quoin::model::Settings settings;
        settings.pages.value = two_pages ? 2 : 1;
        if (seed % 7 == 0) settings.paper.value = quoin::trade::Paper::a4;
        if (seed % 5 == 1) settings.size.value = {10.5, 11};
        if (seed % 5 == 2) settings.margins.value = {0.6, 0.8};
        if (seed % 5 == 3) settings.size.value = {11, 11};
        check_fit(composition, quoin::synthetic::theme(), settings, counted);
    }
    MESSAGE("one page " << counted.one_page << ", two " << counted.two_pages << ", tight "
                        << counted.tight << ", too long " << counted.too_long);
    CHECK(counted.one_page >= quoin::tries(20));
    CHECK(counted.tight >= quoin::tries(20));
}

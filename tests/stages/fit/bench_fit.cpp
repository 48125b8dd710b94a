// How long the fit of pages takes, their paragraphs already shaped, and how it grows.
#include "compiler/base/source.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/fit/side_choice.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/stages/model/build.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "tests/synthetic.hpp"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <random>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace {

quoin::model::Settings settings_for(int pages) {
    quoin::model::Settings settings;
    settings.pages.value = pages;
    return settings;
}

void fit_pages(benchmark::State& state, std::size_t sections, std::size_t bullets, int pages) {
    const quoin::composition::Composition composition =
        quoin::synthetic::resume(5, sections, bullets);
    const quoin::theme::Theme theme = quoin::synthetic::theme();
    const quoin::model::Settings settings = settings_for(pages);
    for (auto _ : state) {
        const auto result = quoin::fit::fit(composition, theme, settings);
        if (!std::holds_alternative<quoin::fit::Fit>(result)) state.SkipWithError("does not fit");
        benchmark::DoNotOptimize(result);
    }
}

void fit_roomy_page(benchmark::State& state) {
    fit_pages(state, 2, 5, 1);
}

void fit_tight_page(benchmark::State& state) {
    fit_pages(state, 3, 7, 1);
}

void fit_two_pages(benchmark::State& state) {
    fit_pages(state, 8, 7, 2);
}

// Real text in the house theme, two entries of three bullets a section.
std::string markup(std::size_t sections, int pages) {
    std::string text =
        "name: Ottoline Brandt\nemail: ottoline.brandt@ellerystate.example\npages: " +
        std::to_string(pages) + "\n";
    for (std::size_t i = 0; i < sections; ++i) {
        text += "\nsection: Experience " + std::to_string(i) + "\nholds: experience\n";
        for (int entry = 0; entry < 2; ++entry)
            text += "\nrole: Field Survey Intern\nemployer: Salish Tidal Trust\n"
                    "dates: Jun 2026 - Aug 2026\n"
                    "- Counted 212 eelgrass quadrats at 9 sites and cut entry time 18% with a "
                    "barcoded datasheet\n"
                    "- Trained 4 volunteers in GPS and quadrat placement, raising agreement of "
                    "paired counts from 81% to 94% within the first month of the season\n"
                    "- Mapped 34 acres of eelgrass edge; county planners cited the maps\n";
    }
    return text;
}

struct Source {
    quoin::model::Resume resume;
    quoin::theme::Theme theme;
};

Source read(quoin::Sources& sources, std::uint32_t file, const std::string& theme_name) {
    quoin::Diagnostics diagnostics;
    auto resume =
        quoin::model::build_resume(sources, file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
    auto theme =
        quoin::theme::read_theme(sources, std::filesystem::path(QUOIN_DATA_FOLDER) / "themes",
                                 theme_name, "", {}, diagnostics);
    return {*std::move(resume), *std::move(theme)};
}

Source read(const std::string& text) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("bench.resume", text, diagnostics);
    return read(sources, *file, std::string(quoin::theme::house_theme));
}

quoin::fonts::Fonts& fonts() {
    static const auto all = [] {
        quoin::Sources sources;
        quoin::Diagnostics diagnostics;
        return quoin::fonts::Fonts::open(
            sources, std::filesystem::path(QUOIN_DATA_FOLDER) / "fonts", diagnostics);
    }();
    return *all;
}

std::int64_t words_in(const std::string& text) {
    return 1 + std::count(text.begin(), text.end(), ' ');
}

void fit_text(benchmark::State& state) {
    const auto sections = static_cast<std::size_t>(state.range(0));
    const std::string text = markup(sections, 20);
    const Source source = read(text);
    quoin::Diagnostics diagnostics;
    const auto composition =
        quoin::composition::compose(source.resume, source.theme, fonts(), diagnostics);
    for (auto _ : state) {
        const auto result = quoin::fit::fit(*composition, source.theme, source.resume.settings);
        const auto* fit = std::get_if<quoin::fit::Fit>(&result);
        if (fit == nullptr)
            state.SkipWithError("does not fit");
        else
            state.counters["pages"] = static_cast<double>(fit->page_begins.size());
    }
    state.SetComplexityN(words_in(text));
}

// All words shaped, each paragraph once.
void compose_text(benchmark::State& state) {
    const std::string text = markup(static_cast<std::size_t>(state.range(0)), 20);
    const Source source = read(text);
    fonts();
    for (auto _ : state) {
        quoin::Diagnostics diagnostics;
        benchmark::DoNotOptimize(
            quoin::composition::compose(source.resume, source.theme, fonts(), diagnostics));
    }
    state.SetComplexityN(words_in(text));
}

// What stands at the side, how wide it is, and the page of that: in the theme of two columns.
void fit_two_columns(benchmark::State& state, const char* sample) {
    using quoin::composition::SidePlan;
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto folder = std::filesystem::path(QUOIN_SOURCE_FOLDER) / "samples";
    const auto file = sources.read(folder / sample, diagnostics);
    const Source source = read(sources, file.value(), "oystercatcher");
    const auto composed = [&](const SidePlan& plan) {
        return quoin::composition::compose(source.resume, source.theme, fonts(), diagnostics,
                                           nullptr, 0, &plan)
            .value();
    };
    const SidePlan widest = quoin::composition::widest_plan(source.resume, source.theme);
    const std::vector<bool> none(widest.at_side.size());
    const auto main = composed({none, widest.width});
    const auto side = composed(widest);
    const quoin::fit::SideOffer offer{main, side, widest.at_side, none};
    const auto& settings = source.resume.settings;
    const auto chosen = quoin::fit::SideChoice(offer, source.theme, settings).next();
    const auto page = composed(chosen.value());
    for (auto _ : state) {
        benchmark::DoNotOptimize(quoin::fit::SideChoice(offer, source.theme, settings).next());
        benchmark::DoNotOptimize(quoin::fit::fit(page, source.theme, settings));
    }
}

void place_page(benchmark::State& state) {
    const quoin::composition::Composition composition = quoin::synthetic::resume(5, 3, 7);
    const auto result = quoin::fit::fit(composition, quoin::synthetic::theme(), settings_for(1));
    for (auto _ : state)
        benchmark::DoNotOptimize(
            quoin::pages::make_pages(composition, std::get<quoin::fit::Fit>(result)));
}

void break_long_paragraph(benchmark::State& state) {
    std::mt19937 random(1);
    const auto words = static_cast<std::size_t>(state.range(0));
    quoin::composition::Paragraph paragraph =
        quoin::synthetic::paragraph(quoin::synthetic::words(random, words));
    paragraph.align = quoin::theme::Align::justified;
    for (auto _ : state)
        benchmark::DoNotOptimize(quoin::lines::MeasuredParagraph(paragraph, 40).lines(40));
}

BENCHMARK(fit_roomy_page)->Unit(benchmark::kMicrosecond);
BENCHMARK(fit_tight_page)->Unit(benchmark::kMicrosecond);
BENCHMARK(fit_two_pages)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(fit_two_columns, nursing, "nursing.resume")->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(fit_two_columns, accounting, "accounting.resume")->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(fit_two_columns, theatre, "theatre-design.resume")->Unit(benchmark::kMicrosecond);
BENCHMARK(fit_text)->Arg(4)->Arg(8)->Arg(12)->Arg(20)->Arg(40)->Arg(80)->Complexity()->Unit(
    benchmark::kMicrosecond);
BENCHMARK(compose_text)
    ->RangeMultiplier(2)
    ->Range(2, 64)
    ->Complexity()
    ->Unit(benchmark::kMicrosecond);
BENCHMARK(place_page)->Unit(benchmark::kMicrosecond);
BENCHMARK(break_long_paragraph)->Range(64, 1024)->Unit(benchmark::kMicrosecond);

}

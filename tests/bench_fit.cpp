// How long the fit of a page takes, its paragraphs already shaped.
#include "compiler/fit/fit.hpp"
#include "compiler/pages/pages.hpp"
#include "compiler/paragraph/paragraph_lines.hpp"
#include "tests/synthetic.hpp"

#include <benchmark/benchmark.h>

#include <random>
#include <variant>

namespace {

quoin::Settings settings_for(int pages) {
    quoin::Settings settings;
    settings.pages.value = pages;
    return settings;
}

void fit_pages(benchmark::State& state, std::size_t sections, std::size_t bullets, int pages) {
    const quoin::Composition composition = quoin::synthetic::resume(5, sections, bullets);
    const quoin::Theme theme = quoin::synthetic::theme();
    const quoin::Settings settings = settings_for(pages);
    for (auto _ : state) {
        const auto result = quoin::fit(composition, theme, settings);
        if (!std::holds_alternative<quoin::Fit>(result)) state.SkipWithError("does not fit");
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

void place_page(benchmark::State& state) {
    const quoin::Composition composition = quoin::synthetic::resume(5, 3, 7);
    const auto result = quoin::fit(composition, quoin::synthetic::theme(), settings_for(1));
    for (auto _ : state)
        benchmark::DoNotOptimize(quoin::make_pages(composition, std::get<quoin::Fit>(result)));
}

void break_long_paragraph(benchmark::State& state) {
    std::mt19937 random(1);
    const auto words = static_cast<std::size_t>(state.range(0));
    quoin::Paragraph paragraph =
        quoin::synthetic::paragraph(quoin::synthetic::words(random, words));
    paragraph.align = quoin::Align::justified;
    for (auto _ : state)
        benchmark::DoNotOptimize(quoin::MeasuredParagraph(paragraph, 40).lines(40));
}

BENCHMARK(fit_roomy_page)->Unit(benchmark::kMicrosecond);
BENCHMARK(fit_tight_page)->Unit(benchmark::kMicrosecond);
BENCHMARK(fit_two_pages)->Unit(benchmark::kMicrosecond);
BENCHMARK(place_page)->Unit(benchmark::kMicrosecond);
BENCHMARK(break_long_paragraph)->Range(64, 1024)->Unit(benchmark::kMicrosecond);

}

// How long a choice takes: a page out of 60 entries and 300 bullets.
#include "compiler/tailoring/choose.hpp"
#include "tests/tailoring/problems.hpp"

#include <benchmark/benchmark.h>

namespace {

quoin::tailoring::Problem everything_written() {
    quoin::tailoring_tests::Maker maker(5);
    return maker.problem({.sections = 14, .entries = 9, .bullets = 12, .terms = 40, .part = 0.1});
}

void choose_a_page(benchmark::State& state) {
    const quoin::tailoring::Problem problem = everything_written();
    for (auto _ : state)
        benchmark::DoNotOptimize(quoin::tailoring::choose(problem));
    state.counters["pieces"] = static_cast<double>(problem.pieces.size());
}
BENCHMARK(choose_a_page)->Unit(benchmark::kMillisecond);

}

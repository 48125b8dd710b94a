// How long the proof of a full page takes: cold, with the dictionary read, and warm, as an editor
// asks again; the page itself is left out.
#include "compiler/advice/proof.hpp"
#include "compiler/stages/model/build.hpp"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <memory>
#include <string>

namespace {

struct Page {
    quoin::Sources sources;
    quoin::model::Resume resume;
};

const Page& page() {
    static const auto one = [] {
        auto made = std::make_unique<Page>();
        quoin::Diagnostics diagnostics;
        const auto file = made->sources.read(std::filesystem::path(QUOIN_SOURCE_FOLDER) /
                                                 "samples/career-change.resume",
                                             diagnostics);
        made->resume = quoin::model::build_resume(made->sources, *file,
                                                  QUOIN_DATA_FOLDER "/themes/words", diagnostics)
                           .value();
        return made;
    }();
    return *one;
}

void proof_with(const quoin::english::Language& language) {
    const auto& resume = page().resume;
    const auto texts = quoin::advice::read_texts(resume, language);
    const auto bullets = quoin::advice::read_bullets(resume, texts, language);
    const quoin::advice::ProofContext context{page().sources, resume, nullptr, {2026, 11, {}, {}},
                                              language,       texts,  bullets};
    benchmark::DoNotOptimize(quoin::advice::run_proof(context));
}

void proof_cold(benchmark::State& state) {
    for (auto _ : state) {
        const quoin::english::Language language{QUOIN_DATA_FOLDER};
        proof_with(language);
    }
}

void proof_warm(benchmark::State& state) {
    const quoin::english::Language language{QUOIN_DATA_FOLDER};
    proof_with(language);
    for (auto _ : state)
        proof_with(language);
}

void read_bullet(benchmark::State& state) {
    std::string bullet = "Counted 212 eelgrass quadrats at 9 sites and cut entry time 18%";
    for (auto _ : state) {
        const quoin::english::Language language{QUOIN_DATA_FOLDER};
        benchmark::DoNotOptimize(language.read_bullet(bullet));
    }
}

BENCHMARK(proof_cold)->Unit(benchmark::kMillisecond);
BENCHMARK(proof_warm)->Unit(benchmark::kMillisecond);
BENCHMARK(read_bullet)->Unit(benchmark::kMicrosecond);

}

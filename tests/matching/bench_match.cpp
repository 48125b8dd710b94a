// A posting read and a résumé held against it, the program's data in memory.
#include "compiler/base/source.hpp"
#include "compiler/matching/coverage.hpp"
#include "compiler/matching/rank.hpp"
#include "compiler/stages/model/build.hpp"

#include <benchmark/benchmark.h>

#include <string>

namespace {

void match_warm(benchmark::State& state) {
    using namespace quoin;
    const english::WordList words(std::string(QUOIN_DATA_FOLDER) + "/dictionaries/en_US.words");
    const std::string root = QUOIN_SOURCE_FOLDER;
    for (auto _ : state) {
        Sources sources;
        Diagnostics diagnostics;
        const auto resume_file = sources.read(root + "/samples/marine-biology.resume", diagnostics);
        const auto posting_file = sources.read(root + "/samples/postings/field-technician.txt",
                                               diagnostics, TextOf::elsewhere);
        const auto resume = model::build_resume(
            sources, *resume_file, std::string(QUOIN_DATA_FOLDER) + "/themes/words", diagnostics);
        const auto posting = postings::read_posting(
            postings::text_lines(sources.file(*posting_file).text), *posting_file, words);
        const auto coverage = matching::cover(*resume, posting, words);
        benchmark::DoNotOptimize(matching::rank(*resume, coverage));
    }
}
BENCHMARK(match_warm)->Unit(benchmark::kMillisecond);

}

// The whole way from bytes to what a build takes: no input may crash or hang it. What stands behind
// a form feed is a file that may be included, `part.resume`.
#include "compiler/stages/model/build.hpp"
#include "compiler/stages/selection/select.hpp"
#include "tests/held_files.hpp"

#include <cstdint>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace quoin;
    Sources sources;
    Diagnostics diagnostics;
    std::string text = test::hold_words_and_part(sources, std::string(data, data + size));
    const auto file = sources.add("fuzz.resume", std::move(text), diagnostics);
    if (!file) return 0;
    const auto resume =
        quoin::model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
    if (resume.has_value() == diagnostics.has_errors()) std::abort();
    diagnostics.sort();
    for (const Diagnostic& one : diagnostics.all())
        format(one, sources, true);
    if (!resume) return 0;
    const std::vector<std::string> tags = quoin::selection::tags_of(*resume);
    selection::select(*resume, tags);
    for (const std::string& tag : tags) {
        const quoin::model::Resume part = selection::select(*resume, std::vector<std::string>{tag});
        if (part.sections.size() > resume->sections.size()) std::abort();
    }
    return 0;
}

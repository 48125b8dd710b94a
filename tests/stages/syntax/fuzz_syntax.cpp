// Fuzz target: any bytes as a source file; a tree without faults prints as markup that gives the
// same tree.
#include "compiler/stages/syntax/parse.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

namespace {

void read_as(quoin::syntax::Braces braces, const std::string& bytes) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("fuzz.resume", bytes, diagnostics);
    if (file) {
        const quoin::syntax::Tree tree = quoin::syntax::parse(sources, *file, diagnostics, braces);
        if (!diagnostics.has_errors()) {
            const auto printed = sources.add("printed.resume", print(tree), diagnostics);
            if (!printed) std::abort();
            const quoin::syntax::Tree again =
                quoin::syntax::parse(sources, *printed, diagnostics, braces);
            if (dump(tree) != dump(again)) std::abort();
        }
    }
    diagnostics.sort();
    for (const auto& one : diagnostics.all())
        if (format(one, sources, true).empty()) std::abort();
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(data, data + size);
    read_as(quoin::syntax::Braces::tags, bytes);
    read_as(quoin::syntax::Braces::text, bytes);
    return 0;
}

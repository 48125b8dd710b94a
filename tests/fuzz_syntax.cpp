// Fuzz target: any bytes as a source file; a tree without faults prints as markup that gives the
// same tree.
#include "compiler/syntax/parse.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

namespace {

void read_as(quoin::Braces braces, const std::string& bytes) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("fuzz.resume", bytes, diagnostics);
    if (file) {
        const quoin::Tree tree = quoin::parse(sources, *file, diagnostics, braces);
        if (!diagnostics.has_errors()) {
            const auto printed = sources.add("printed.resume", print(tree), diagnostics);
            if (!printed) std::abort();
            const quoin::Tree again = quoin::parse(sources, *printed, diagnostics, braces);
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
    read_as(quoin::Braces::tags, bytes);
    read_as(quoin::Braces::text, bytes);
    return 0;
}

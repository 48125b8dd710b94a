// Fuzz target: any bytes as a source file; a tree without faults prints as markup that gives the
// same tree, and the edits of a mend stand in their lines, one after the other.
#include "compiler/stages/syntax/parse.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <utility>

namespace {

// Each edit in its line, and behind the one before.
bool stand_in_order(quoin::Edits mend, const quoin::SourceFile& source) {
    const auto start = [](const quoin::Edit& edit) {
        return std::pair(edit.place.line, edit.place.column);
    };
    std::ranges::sort(mend, {}, start);
    std::pair<std::uint32_t, std::uint32_t> end{0, 0};
    for (const quoin::Edit& edit : mend) {
        if (start(edit) < end) return false;
        end = {edit.place.line, edit.place.column + edit.place.length};
        if (end.second > source.line(edit.place.line).size() + 2) return false;
    }
    return true;
}

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
    for (const auto& one : diagnostics.all()) {
        if (format(one, sources, true).empty()) std::abort();
        if (!stand_in_order(one.mend, sources.file(one.place.file))) std::abort();
    }
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(data, data + size);
    read_as(quoin::syntax::Braces::tags, bytes);
    read_as(quoin::syntax::Braces::text, bytes);
    return 0;
}

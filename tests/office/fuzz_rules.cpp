// Fuzz target: any bytes as a file of rules. Rules that are given keep to their ranges.
#include "compiler/office/read.hpp"

#include <cstdint>
#include <cstdlib>
#include <string>

namespace {

void require(bool condition) {
    if (!condition) std::abort();
}

void check(const quoin::office::Office& office) {
    for (const quoin::office::Rules& rules : office.by_stage)
        for (const quoin::office::LimitRow& row : quoin::office::limit_rows) {
            const double least = rules.limits.*row.of;
            const double most = row.most ? rules.limits.*row.most : least;
            require(least <= most && most <= row.range.most);
            require(!rules.set_by(row.of) || least >= row.range.least);
            require(!value_text(row, rules.limits).empty());
        }
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("office.rules", std::string(data, data + size), diagnostics);
    if (!file) return 0;
    const quoin::office::Known known{{"gpa-show", "length", "two-lines"}, {"turnstone"}};
    const auto office = read_rules(sources, *file, known, diagnostics);
    require(office.has_value() != diagnostics.has_errors());
    diagnostics.sort();
    for (const quoin::Diagnostic& one : diagnostics.all())
        require(!format(one, sources, true).empty());
    if (office) check(*office);
    return 0;
}

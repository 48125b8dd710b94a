// An office's rules read from text, as tests want them.
#pragma once

#include "compiler/office/read.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <optional>
#include <string>
#include <vector>

namespace quoin::fixtures {

struct RulesRead {
    std::optional<office::Office> office;
    std::vector<std::string> faults; // "line:column: text"
};

inline const office::Known& known_to_rules() {
    static const office::Known known{
        {"gpa-unsaid", "gpa-low", "high-school", "length", "references-line"},
        {"sanderling", "turnstone"}};
    return known;
}

inline RulesRead rules_of(const std::string& text, const office::Known& known = known_to_rules()) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("office.rules", text, diagnostics);
    REQUIRE(file);
    RulesRead read{read_rules(sources, *file, known, diagnostics), {}};
    diagnostics.sort();
    for (const Diagnostic& fault : diagnostics.all())
        read.faults.push_back(
            fmt::format("{}:{}: {}", fault.place.line, fault.place.column, fault.text));
    return read;
}

}

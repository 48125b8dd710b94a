// Reads a file of rules. All that is wrong with it is reported in one run, at its place.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/office/office.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::office {

struct Known { // what a rule may name
    std::vector<std::string_view> checks;
    std::vector<std::string> themes;
};

// None after an error.
std::optional<Office> read_rules(const Sources& sources, std::uint32_t file, const Known& known,
                                 Diagnostics& diagnostics);

}

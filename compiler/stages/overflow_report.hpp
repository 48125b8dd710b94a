// What `set` says when a résumé is too long: by how many lines, and the cheapest cuts.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/fit/cuts.hpp"
#include "compiler/stages/typeset.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace quoin::stages {

constexpr std::size_t most_notes = 8; // on cuts

std::string saved_by(std::size_t characters, int lines); // "3 characters fewer save a line"

fit::Cuts cheapest_cuts_of(const Typeset& typeset);

// In the order to be read in: whole pieces, then the cheapest words first. For a `draft`, which is
// set all the same, the first is a warning, else an error.
Diagnostics overflow_report(int lines_too_many, const fit::Cuts& cuts, const Typeset& typeset,
                            std::uint32_t file, bool draft);

}

// A tailored résumé as a source of its own: the lines of the input, with what is left out turned
// into comments that say why.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/tailoring/demand.hpp"
#include "compiler/tailoring/tailor.hpp"

#include <cstdint>
#include <filesystem>
#include <string>

namespace quoin::tailoring {

struct SourceTools {
    const Sources& sources;
    std::uint32_t file = 0;              // the résumé's
    const std::filesystem::path& folder; // that the output goes to
    const std::filesystem::path& words;  // as build_resume has it
};

// Files that are taken in stay so where nothing of them is left out and they can be named from the
// output's folder; the text of others is taken in. Where what is left of a section no longer tells
// what it holds, a line says so.
std::string tailored_source(const model::Resume& resume, const Demand& demand,
                            const Tailored& tailored, const SourceTools& tools);

}

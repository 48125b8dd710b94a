// A fit in plain words: its proof, for `quoin set --explain`, and a last page that is too empty.
#pragma once

#include "compiler/commands/typeset.hpp"
#include "compiler/fit/explain.hpp"
#include "compiler/source/diagnostics.hpp"
#include "compiler/source/source.hpp"

#include <cstdint>
#include <string>

namespace quoin {

// A few lines of `typeset`, which `fit` holds; `file` is its source.
std::string explain_report(const Typeset& typeset, const Fit& fit, const Sources& sources,
                           std::uint32_t file);

// The same of what is measured already.
std::string explain_report(const Explanation& explanation, const Composition& composition,
                           const Sources& sources, std::uint32_t file);

// A last page less than a third full looks like a mistake (common practice).
void warn_of_thin_page(const Typeset& typeset, const Fit& fit, std::uint32_t file,
                       Diagnostics& diagnostics);

}

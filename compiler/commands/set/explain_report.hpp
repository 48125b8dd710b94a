// A fit in plain words: its proof, for `quoin set --explain`, and a last page that is too empty.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/fit/explain.hpp"
#include "compiler/stages/typeset.hpp"

#include <cstdint>
#include <string>

namespace quoin::commands {

// A few lines of `typeset`, which `fit` holds; `file` is its source.
std::string explain_report(const stages::Typeset& typeset, const fit::Fit& fit,
                           const Sources& sources, std::uint32_t file);

// The same of what is measured already.
std::string explain_report(const fit::Explanation& explanation,
                           const composition::Composition& composition, const Sources& sources,
                           std::uint32_t file);

// A last page less than a third full looks like a mistake (common practice).
void warn_of_thin_page(const stages::Typeset& typeset, const fit::Fit& fit, std::uint32_t file,
                       Diagnostics& diagnostics);

}

// The tagged PDF: PDF 1.7 (ISO 32000-1) as PDF/UA-1 (ISO 14289-1) and PDF/A-2a (ISO 19005-2).
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/notes.hpp"
#include "compiler/stages/pages/pages.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>

namespace quoin::pdf {

// The file's bytes; the same input gives the same bytes. `time`, seconds since 1970, is the date
// the document bears; none if it shall bear none. Throws std::runtime_error on a font that cannot
// be subset or embedded. The notes become annotations, each an element beside the words it is
// about.
std::string write_pdf(const composition::Composition& composition, const pages::Pages& pages,
                      std::optional<std::int64_t> time, std::span<const pages::Note> notes = {});

}

// A page that is a form filled in: `First Name: …`, `Job Title: …`, `School: …`.
#pragma once

#include "compiler/transcription/entry_fields.hpp"
#include "compiler/transcription/page_parts.hpp"

#include <optional>

namespace quoin::transcription {

// None where a page is no form. What it asks beside a résumé's facts is left for comments.
std::optional<Draft> draft_of_form(const PageParts& page, const PageFacts& facts);

}

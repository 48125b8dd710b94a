// A page without titles: its entries to sections by what they are.
#pragma once

#include "compiler/transcription/draft.hpp"
#include "compiler/transcription/entry_fields.hpp"
#include "compiler/transcription/page_parts.hpp"

#include <vector>

namespace quoin::transcription {

// Each section of it is guessed. Where all is of one kind it is one section, as if it had a title
// that does not tell.
std::vector<DraftSection> draft_untitled(const OldSection& old, const PageFacts& facts);

}

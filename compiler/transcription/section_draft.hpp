// A section of an old page to one of the draft.
#pragma once

#include "compiler/transcription/draft.hpp"
#include "compiler/transcription/entry_fields.hpp"
#include "compiler/transcription/page_parts.hpp"

namespace quoin::transcription {

DraftSection draft_section(OldSection old, const PageFacts& facts);

}

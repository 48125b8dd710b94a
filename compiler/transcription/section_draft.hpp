// A section of an old page to one of the draft.
#pragma once

#include "compiler/transcription/draft.hpp"
#include "compiler/transcription/entry_fields.hpp"
#include "compiler/transcription/page_parts.hpp"

#include <vector>

namespace quoin::transcription {

// What belongs to no entry is left for comments below the section.
void take_aside(std::vector<OldRow>& rows, DraftSection& section);
void add_entries(std::vector<RowsOfEntry> parts, const PageFacts& facts, DraftSection& section);

// Schools that stand among work are a section of their own, guessed, after it.
std::vector<DraftSection> draft_section(OldSection old, const PageFacts& facts);

}

// What is parted or joined among a section's rows before entries are looked for: dates that a
// narrow margin breaks over two rows, and what was done where it follows an entry's head at once.
#pragma once

#include "compiler/portal/languages.hpp"
#include "compiler/transcription/rows.hpp"

#include <vector>

namespace quoin::transcription {

std::vector<OldRow> mended_rows(std::vector<OldRow> rows, const portal::PageLanguages& languages);

}

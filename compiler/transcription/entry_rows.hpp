// The rows of a section to entries: what stands above each one's bullets, and the bullets.
#pragma once

#include "compiler/portal/languages.hpp"
#include "compiler/trade/kinds.hpp"
#include "compiler/transcription/rows.hpp"

#include <vector>

namespace quoin::transcription {

struct RowsOfEntry {
    std::vector<OldRow> heads, items;
    std::vector<OldRow> running; // heads and feet of pages that fall within it
    bool employs = false;        // names an employer alone, above its positions
    bool position = false;       // with others below an employer that has a row of its own
    bool dates_guessed = false;  // those of its neighbours would do as well
};

std::vector<RowsOfEntry> entries_in(const std::vector<OldRow>& rows, trade::Holds holds,
                                    const portal::PageLanguages& languages);

// A school and what it awards, and nothing that was done there.
bool names_schooling(const RowsOfEntry& entry);

// A sentence, or long enough for one: no name, no title.
bool is_running_text(const OldRow& row);

}

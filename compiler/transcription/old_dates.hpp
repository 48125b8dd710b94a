// Dates on a line of an old document, in the form that the markup reads.
#pragma once

#include "compiler/portal/languages.hpp"
#include "compiler/transcription/old_text.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quoin::transcription {

struct DatesOnLine {
    std::size_t begin = 0, end = 0; // words
    std::string value;              // as the markup takes it
    std::string written;            // as it stands, where that is not so
    bool range = false;             // or a single date
    bool expires = false;           // of a licence: `exp. 2/2025`
    bool in_parentheses = false;
    bool glued = false; // no more than a space parts it from the word before
    bool aside = false; // nor from the word after it: a sentence has it
};

// Each that stands on it, from the left; a long line is prose and has none.
std::vector<DatesOnLine> dates_on(const std::vector<OldWord>& words,
                                  const portal::PageLanguages& languages);

}

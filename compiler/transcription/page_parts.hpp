// The lines of a page to its parts: the heading, and sections by their titles.
#pragma once

#include "compiler/transcription/rows.hpp"
#include "compiler/transcription/titles.hpp"

#include <optional>
#include <string>
#include <vector>

namespace quoin::transcription {

struct OldSection {
    FoundTitle title;
    std::vector<OldRow> rows;
};

struct PageParts {
    std::vector<OldRow> heading;
    std::optional<std::size_t> name_row;
    std::vector<std::string> aside; // titles that no section of the draft bears
    std::vector<OldSection> sections;
    bool untitled = false; // no title was recognised
};

PageParts parts_of(const std::vector<OldLine>& lines, const portal::PageLanguages& languages,
                   const IsWord& is_word);

}

// Who a résumé is from and how to answer: what stands above its sections.
#pragma once

#include "compiler/transcription/draft.hpp"
#include "compiler/transcription/rows.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace quoin::transcription {

// The line with the name: the largest letters of the first page that could be one.
std::optional<std::size_t> find_name_line(const std::vector<OldLine>& lines);

struct HeadingRead {
    DraftEntry entry;
    std::vector<std::string> prose; // paragraphs that belong to a section of their own
};

// `name_row` is the row with the name.
HeadingRead read_heading(const std::vector<OldRow>& rows, std::optional<std::size_t> name_row);

}

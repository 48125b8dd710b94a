// The words of a page to lines: which stand beside each other, and which in columns of their own.
#pragma once

#include "compiler/transcription/old_text.hpp"

#include <functional>
#include <string_view>
#include <vector>

namespace quoin::transcription {

struct PlacedWord {
    OldWord word;
    double top = 0, bottom = 0;

    double middle() const { return (top + bottom) / 2; }
    double height() const { return bottom - top; }
};

using IsTitle = std::function<bool(std::string_view)>; // of a section

// Words that stand beside each other, from the top, each line from the left. What stands far apart
// on a line stays on it.
std::vector<OldLine> rows_of(std::vector<PlacedWord> words, std::size_t page);

// `E D U C A T I O N`: letters set apart to words, where one begins after a wider gap.
void close_up(std::vector<OldWord>& words);

// The lines of a page in the order they are read: of columns one after the other, but where the
// narrow one holds what belongs to the lines beside it (dates, titles in the margin).
std::vector<OldLine> lines_of_page(std::vector<PlacedWord> words, std::size_t page,
                                   const IsTitle& is_title);

}

// Where on a page which letters are used, from `pdftohtml -xml -i -zoom 3`.
#pragma once

#include "compiler/portal/reading.hpp"

#include <cstddef>
#include <map>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::portal {

struct StyledText { // a piece of a line in one font
    std::size_t page = 0;
    ReadBox box;
    std::size_t font = 0; // those of one family, size and colour have one number
    double size = 0;      // pt
    bool strong = false, slanted = false;
};

std::vector<StyledText> read_styles(std::string_view xml); // in the order they are written

// The pieces of text of each page by where they stand; they must outlive this.
class StylesOfPages {
public:
    explicit StylesOfPages(const std::vector<StyledText>& styles);

    // Null if there is none where the word begins.
    const StyledText* at(std::size_t page, const ReadBox& word) const;

private:
    std::map<std::pair<std::size_t, long>, std::vector<const StyledText*>> cells_;
};

}

// Where words stand on the pages.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace quoin::pages {

// Where the text of each run begins in the paragraph's, that of its label left out.
std::vector<std::size_t> text_begins(const composition::Paragraph& paragraph);

struct TextArea { // of words on one line, pt
    std::size_t page = 0;
    double left = 0, bottom = 0, right = 0, top = 0;
};

class TextAreas {
public:
    // Both outlive this. Each placed run is looked at once, however many words are asked for.
    TextAreas(const composition::Composition& composition, const Pages& pages);

    // Of bytes [begin, end) of a paragraph's text, its label's left out: an area for each line, in
    // order of reading, as high as the line's tall letters and as deep as its tails, without spaces
    // at its ends.
    std::vector<TextArea> of(std::uint32_t paragraph, std::size_t begin, std::size_t end) const;

private:
    struct Placed {
        std::size_t page = 0;
        const PlacedRun* run = nullptr;
        std::size_t begin = 0, end = 0; // bytes of the run's text
    };

    void add(std::size_t page, const PlacedRun& placed);

    const composition::Composition& composition_;
    std::vector<std::vector<std::size_t>> begins_; // of each paragraph's runs
    std::vector<std::vector<Placed>> placed_;      // by paragraph
};

}

// A PDF's words at their places, with their looks, to lines.
#include "compiler/transcription/read_old.hpp"

#include "compiler/base/strange_signs.hpp"
#include "compiler/transcription/messages.hpp"
#include "compiler/transcription/page_rows.hpp"
#include "compiler/transcription/running_lines.hpp"

#include <algorithm>
#include <string>

namespace quoin::transcription {

namespace {

// Faces with much room above and below their letters have boxes that reach into other lines.
void cut_to_letters(PlacedWord& placed) {
    constexpr double tall = 1.5, letters = 1.2; // of the size
    const double size = placed.word.size, middle = placed.middle();
    if (size <= 0 || placed.height() < tall * size) return;
    placed.top = middle - letters * size / 2;
    placed.bottom = middle + letters * size / 2;
}

PlacedWord placed(const portal::ReadWord& word, std::size_t page,
                  const portal::StylesOfPages& styles) {
    PlacedWord one{{word.text, word.box.left, word.box.right}, word.box.top, word.box.bottom};
    one.word.size = word.box.height();
    if (const portal::StyledText* style = styles.at(page, word.box)) {
        one.word.font = style->font;
        one.word.strong = style->strong;
        one.word.slanted = style->slanted;
        if (style->size > 0) one.word.size = style->size;
    }
    cut_to_letters(one);
    return one;
}

}

OldDocument lines_of_pdf(const portal::StyledReading& reading, const IsTitle& is_title) {
    const portal::StylesOfPages styles(reading.styles);
    std::vector<std::vector<PlacedWord>> pages(reading.by_place.pages.size());
    for (const portal::ReadLine& line : reading.by_place.lines)
        for (const portal::ReadWord& word : line.words) {
            PlacedWord one = placed(word, line.page, styles);
            one.word.text = plain_signs(one.word.text, kept_signs(one.word.text));
            if (!one.word.text.empty()) pages[line.page].push_back(std::move(one));
        }
    OldDocument document;
    for (std::size_t page = 0; page < pages.size(); ++page) {
        auto lines = lines_of_page(std::move(pages[page]), page, is_title);
        std::ranges::move(lines, std::back_inserter(document.lines));
    }
    mark_running_lines(document.lines);
    if (reading.images > 0)
        document.remarks.push_back(fill<messages::pictures>(
            reading.images == 1 ? "a picture" : std::to_string(reading.images) + " pictures"));
    if (reading.pages > portal::most_pages_read)
        document.remarks.push_back(fill<messages::pages_left>(portal::most_pages_read));
    return document;
}

}

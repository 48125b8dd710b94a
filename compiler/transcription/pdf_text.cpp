// A PDF's words at their places, with their looks, to lines.
#include "compiler/transcription/read_old.hpp"

#include "compiler/base/strange_signs.hpp"
#include "compiler/transcription/messages.hpp"
#include "compiler/transcription/page_rows.hpp"
#include "compiler/transcription/running_lines.hpp"

#include <algorithm>
#include <map>
#include <string>

namespace quoin::transcription {

namespace {

// The pieces of text of one page by where they stand.
class StylesOfPages {
public:
    explicit StylesOfPages(const std::vector<portal::StyledText>& styles) {
        for (const portal::StyledText& style : styles) {
            auto& cell = cells_[{style.page, cell_of(style.box.middle())}];
            if (cell.size() < most) cell.push_back(&style);
        }
    }

    const portal::StyledText* at(std::size_t page, const portal::ReadBox& word) const {
        const double x = word.left + std::min(2.0, word.width() / 4);
        const portal::StyledText* nearest = nullptr;
        for (long cell = cell_of(word.middle()) - 1; cell <= cell_of(word.middle()) + 1; ++cell) {
            const auto found = cells_.find({page, cell});
            if (found == cells_.end()) continue;
            for (const portal::StyledText* style : found->second)
                if (style->box.left - 1 <= x && x <= style->box.right &&
                    (!nearest || distance(*style, word) < distance(*nearest, word)))
                    nearest = style;
        }
        return nearest;
    }

private:
    static constexpr std::size_t most = 400; // in one cell; who has more is no résumé
    static long cell_of(double y) { return static_cast<long>(y / 8); }
    static double distance(const portal::StyledText& style, const portal::ReadBox& word) {
        return std::abs(style.box.middle() - word.middle());
    }

    std::map<std::pair<std::size_t, long>, std::vector<const portal::StyledText*>> cells_;
};

// Faces with much room above and below their letters have boxes that reach into other lines.
void cut_to_letters(PlacedWord& placed) {
    constexpr double tall = 1.5, letters = 1.2; // of the size
    const double size = placed.word.size, middle = placed.middle();
    if (size <= 0 || placed.height() < tall * size) return;
    placed.top = middle - letters * size / 2;
    placed.bottom = middle + letters * size / 2;
}

PlacedWord placed(const portal::ReadWord& word, std::size_t page, const StylesOfPages& styles) {
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
    const StylesOfPages styles(reading.styles);
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

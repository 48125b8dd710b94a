#include "compiler/stages/composition/printed_words.hpp"

#include <algorithm>
#include <optional>

namespace quoin::composition {

namespace {

struct LineBytes { // bytes of a source line
    std::size_t begin = 0, end = 0;
};

LineBytes columns_of(const Place& place) {
    if (place.column == 0) return {0, static_cast<std::size_t>(-1)}; // the whole line
    return {place.column, std::size_t{place.column} + std::max(place.length, 1U)};
}

// What of a piece of a paragraph was made from `place`.
std::optional<TextBytes> words_from(const Place& place, const Origin& origin,
                                    std::uint32_t paragraph) {
    if (origin.place.file != place.file || origin.place.line != place.line ||
        origin.place.line == 0)
        return std::nullopt;
    const LineBytes wanted = columns_of(place), piece = columns_of(origin.place);
    if (wanted.end <= piece.begin || piece.end <= wanted.begin) return std::nullopt;
    TextBytes words{paragraph, origin.begin, origin.end};
    if (origin.place.length == origin.end - origin.begin) {
        words.end = origin.begin + std::min(wanted.end, piece.end) - piece.begin;
        words.begin = origin.begin + std::max(wanted.begin, piece.begin) - piece.begin;
    }
    return words;
}

// A place ends with its line. What holds all of a bullet's first line is about the whole bullet.
void go_on_with_bullet(TextBytes& words, const Paragraph& paragraph) {
    if (paragraph.style != theme::StyleName::bullet || words.begin != 0) return;
    const std::uint32_t first_line = paragraph.origins.front().place.line;
    const bool holds_first_line =
        std::ranges::none_of(paragraph.origins, [&](const Origin& origin) {
            const bool is_fold = origin.end - origin.begin == 1; // the space it is set as
            return origin.end > words.end && origin.place.line == first_line && !is_fold;
        });
    if (holds_first_line) words.end = paragraph.origins.back().end;
}

}

std::vector<TextBytes> printed_words(const Place& place, const Composition& composition) {
    std::vector<TextBytes> found;
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p)
        for (const Origin& origin : composition.paragraphs[p].origins) {
            if (origin.part == TextPart::separator) continue;
            const auto words = words_from(place, origin, p);
            if (!words) continue;
            if (!found.empty() && found.back().paragraph == p && words->begin <= found.back().end)
                found.back().end = words->end;
            else
                found.push_back(*words);
        }
    for (TextBytes& words : found)
        go_on_with_bullet(words, composition.paragraphs[words.paragraph]);
    return found;
}

}

#include "compiler/stages/pages/text_areas.hpp"

#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <optional>

namespace quoin::pages {

namespace {

struct Stretch { // pt
    double left = 0, right = 0;
};

// From the first to the last of the placed glyphs that stand for a byte of [begin, end) of the
// run's text; none if there is none but spaces.
std::optional<Stretch> stretch_of(const composition::Run& run, const PlacedRun& placed,
                                  std::size_t begin, std::size_t end) {
    std::optional<Stretch> found;
    double x = placed.x;
    for (std::uint32_t g = placed.begin; g < placed.end && g < run.glyphs.size(); ++g) {
        const fonts::Glyph& glyph = run.glyphs[g];
        const bool space = lines::is_space(run, glyph);
        const double next = x + lines::advance(run, glyph) * placed.size / run.size +
                            (space ? placed.word_space : 0);
        const bool within = glyph.text_begin < end && glyph.text_begin + glyph.text_length > begin;
        if (within && !space) {
            if (!found) found = {x, next};
            found->right = next;
        }
        x = next;
    }
    return found;
}

bool on_one_line(const TextArea& a, const TextArea& b) {
    return a.page == b.page && a.bottom < b.top && b.bottom < a.top;
}

void add_area(std::vector<TextArea>& areas, const TextArea& area) {
    if (areas.empty() || !on_one_line(areas.back(), area) || area.left < areas.back().left) {
        areas.push_back(area);
        return;
    }
    TextArea& line = areas.back();
    line.right = std::max(line.right, area.right);
    line.bottom = std::min(line.bottom, area.bottom);
    line.top = std::max(line.top, area.top);
}

}

std::vector<std::size_t> text_begins(const composition::Paragraph& paragraph) {
    std::vector<std::size_t> begins(paragraph.runs.size(), 0);
    std::size_t at = 0;
    for (std::size_t r = paragraph.label_runs; r < paragraph.runs.size(); ++r) {
        begins[r] = at;
        at += paragraph.runs[r].text.size();
    }
    return begins;
}

std::vector<TextArea> text_areas(const composition::Composition& composition, const Pages& pages,
                                 std::uint32_t paragraph, std::size_t begin, std::size_t end) {
    const composition::Paragraph& text = composition.paragraphs.at(paragraph);
    const std::vector<std::size_t> begins = text_begins(text);
    std::vector<TextArea> areas;
    for (std::size_t page = 0; page < pages.pages.size(); ++page)
        for (const PlacedRun& placed : pages.pages[page].runs) {
            if (placed.paragraph != paragraph || placed.run < text.label_runs) continue;
            const std::size_t from = begins[placed.run];
            if (end <= from) continue;
            const composition::Run& run = text.runs[placed.run];
            const std::size_t within = begin > from ? begin - from : 0;
            const auto stretch = stretch_of(run, placed, within, end - from);
            if (!stretch) continue;
            const double em = placed.size / run.face->units_per_em();
            add_area(areas, {page, stretch->left, placed.y - em * run.face->descent(),
                             stretch->right, placed.y + em * run.face->ascent()});
        }
    return areas;
}

}

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

TextAreas::TextAreas(const composition::Composition& composition, const Pages& pages)
    : composition_(composition), placed_(composition.paragraphs.size()) {
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        begins_.push_back(text_begins(paragraph));
    for (std::size_t page = 0; page < pages.pages.size(); ++page)
        for (const PlacedRun& placed : pages.pages[page].runs)
            add(page, placed);
}

void TextAreas::add(std::size_t page, const PlacedRun& placed) {
    if (placed.paragraph >= placed_.size()) return; // a mark of the page's own
    const composition::Paragraph& text = composition_.paragraphs[placed.paragraph];
    if (placed.run < text.label_runs) return;
    const composition::Run& run = text.runs[placed.run];
    Placed known{page, &placed, run.text.size(), 0};
    for (std::uint32_t g = placed.begin; g < placed.end && g < run.glyphs.size(); ++g) {
        const std::size_t begin = run.glyphs[g].text_begin;
        known.begin = std::min(known.begin, begin);
        known.end = std::max(known.end, begin + run.glyphs[g].text_length);
    }
    placed_[placed.paragraph].push_back(known);
}

std::vector<TextArea> TextAreas::of(std::uint32_t paragraph, std::size_t begin,
                                    std::size_t end) const {
    const composition::Paragraph& text = composition_.paragraphs.at(paragraph);
    std::vector<TextArea> areas;
    for (const Placed& known : placed_[paragraph]) {
        const PlacedRun& placed = *known.run;
        const std::size_t from = begins_[paragraph][placed.run];
        if (end <= from + known.begin || from + known.end <= begin) continue;
        const composition::Run& run = text.runs[placed.run];
        const std::size_t within = begin > from ? begin - from : 0;
        const auto stretch = stretch_of(run, placed, within, end - from);
        if (!stretch) continue;
        const double em = placed.size / run.face->units_per_em();
        add_area(areas, {known.page, stretch->left, placed.y - em * run.face->descent(),
                         stretch->right, placed.y + em * run.face->ascent()});
    }
    return areas;
}

}

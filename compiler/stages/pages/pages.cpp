// Lines to baselines, runs to places on them. The vertical is that of
// compiler/stages/fit/column.hpp.
#include "compiler/stages/pages/pages.hpp"

#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

namespace quoin::pages {

namespace {

bool is_after(lines::Line::Position a, lines::Line::Position b) {
    return a.run != b.run ? a.run > b.run : a.glyph > b.glyph;
}

// Of the line's glyphs in one run, the first and the one past the last.
std::pair<std::uint32_t, std::uint32_t> glyphs_in(const composition::Paragraph& paragraph,
                                                  const lines::Line& line, std::uint32_t run) {
    const auto size = static_cast<std::uint32_t>(paragraph.runs[run].glyphs.size());
    return {run == line.begin.run ? line.begin.glyph : 0,
            run == line.end.run ? std::min(line.end.glyph, size) : size};
}

std::uint32_t runs_end(const composition::Paragraph& paragraph, const lines::Line& line) {
    return static_cast<std::uint32_t>(
        std::min<std::size_t>(paragraph.runs.size(), std::size_t{line.end.run} + 1));
}

// The line's end without its last spaces.
lines::Line::Position visible_end(const composition::Paragraph& paragraph,
                                  const lines::Line& line) {
    lines::Line::Position end = line.begin;
    for (std::uint32_t r = line.begin.run; r < runs_end(paragraph, line); ++r) {
        const auto [first, past] = glyphs_in(paragraph, line, r);
        for (std::uint32_t g = first; g < past; ++g)
            if (!lines::is_space(paragraph.runs[r], paragraph.runs[r].glyphs[g])) end = {r, g + 1};
    }
    return end;
}

constexpr std::string_view figures_shown = "0123456789";

lines::Line glyphs_of(std::uint32_t run, std::size_t begin, std::size_t end) {
    lines::Line line;
    line.begin = {run, static_cast<std::uint32_t>(begin)};
    line.end = {run, static_cast<std::uint32_t>(end)};
    return line;
}

// The running head run by run, the figures of the page's number in the place of the ten figures.
std::vector<lines::Line> running_head_pieces(const std::vector<composition::Run>& runs,
                                             std::size_t number) {
    std::vector<lines::Line> pieces;
    for (std::uint32_t r = 0; r < runs.size(); ++r) {
        if (r + 1 < runs.size() || runs[r].text != figures_shown ||
            runs[r].glyphs.size() != figures_shown.size()) {
            pieces.push_back(glyphs_of(r, 0, runs[r].glyphs.size()));
            continue;
        }
        for (const char figure : std::to_string(number)) {
            const auto glyph = static_cast<std::size_t>(figure - '0');
            pieces.push_back(glyphs_of(r, glyph, glyph + 1));
        }
    }
    return pieces;
}

lines::Line whole_line(const composition::Paragraph& paragraph) {
    lines::Line line;
    line.end = {static_cast<std::uint32_t>(paragraph.runs.size()), 0};
    return line;
}

double full_width(const composition::Paragraph& paragraph,
                  const lines::Line& line) { // em, end spaces too
    double width = 0;
    for (std::uint32_t r = line.begin.run; r < runs_end(paragraph, line); ++r) {
        const auto [first, past] = glyphs_in(paragraph, line, r);
        for (std::uint32_t g = first; g < past; ++g)
            width += lines::advance(paragraph.runs[r], paragraph.runs[r].glyphs[g]);
    }
    return width;
}

constexpr double least_margin = 36; // pt

// Em by which a line that opens with a quotation mark hangs out, so that its letters stand in line
// with those above (common practice: most of the mark, not all).
double hanging_share(const composition::Paragraph& paragraph, const lines::Line& line) {
    constexpr double share = 0.7;
    constexpr std::array<std::string_view, 6> signs = {"“", "‘", "\"", "'", "«", "‹"};
    if (line.begin.run >= paragraph.runs.size()) return 0;
    const composition::Run& run = paragraph.runs[line.begin.run];
    if (line.begin.glyph >= run.glyphs.size()) return 0;
    const fonts::Glyph& glyph = run.glyphs[line.begin.glyph];
    const std::string_view text = std::string_view(run.text).substr(glyph.text_begin);
    const bool hangs =
        std::ranges::any_of(signs, [&](std::string_view sign) { return text.starts_with(sign); });
    return hangs ? share * lines::advance(run, glyph) : 0;
}

class PageBuilder {
public:
    PageBuilder(const composition::Composition& composition, const fit::Fit& fit,
                std::size_t before)
        : composition_(composition), fit_(fit), setting_(fit.setting), before_(before) {}

    Pages run() {
        std::vector<int> counts;
        for (const std::vector<lines::Line>& lines : fit_.lines)
            counts.push_back(static_cast<int>(lines.size()));
        Pages pages{setting_.paper_width, setting_.paper_height, {}};
        pages.pages.resize(1);
        const std::vector<fit::Column> columns = fit::make_columns(composition_, counts);
        for (const fit::Column& column : columns)
            set_column(column, &column != &columns.front(), pages.pages);
        return pages;
    }

private:
    // The heading above a second column stands already.
    void set_column(const fit::Column& column, bool second, std::vector<Page>& pages) {
        std::vector<std::size_t> begins = second ? fit_.side_begins : fit_.page_begins;
        if (begins.empty()) begins = page_begins(column, setting_);
        for (std::size_t page = pages.size(); page < begins.size(); ++page) {
            pages.emplace_back();
            page_ = &pages.back();
            if (column.running_head != nullptr)
                set_running_head(*column.running_head, before_ + page + 1);
        }
        begins.push_back(column.lines.size());
        for (std::size_t page = 0; page + 1 < begins.size(); ++page) {
            page_ = &pages[page];
            set_lines(column, begins[page], begins[page + 1], page, second);
        }
    }

    double measure() const { // em
        return (setting_.paper_width - 2 * setting_.side_margin) / setting_.size;
    }
    double top() const { return setting_.paper_height - setting_.top_margin; }
    double left(const composition::Paragraph& paragraph, std::uint32_t block_column = 0) const {
        const double step = paragraph.span.width(measure()) + paragraph.block_gap;
        return setting_.side_margin +
               (paragraph.span.begin(measure()) + paragraph.indent + block_column * step) *
                   setting_.size;
    }
    // What may hang past the text and leave half an inch.
    double free_margin() const { return std::max(0.0, setting_.side_margin - least_margin); }
    double room(const composition::Paragraph& paragraph) const {
        return (paragraph.span.width(measure()) - paragraph.indent) * setting_.size;
    }

    // What the text is aligned in: of a heading in the margin, that.
    double text_room(const composition::Paragraph& paragraph) const {
        const double all = room(paragraph);
        return paragraph.in_margin ? std::min(all, paragraph.most_room * setting_.size) : all;
    }

    using LinePlaces = std::vector<std::pair<const fit::ColumnLine*, double>>; // with their y

    // A heading in the margin has the text's pitch, whatever gaps open beside it.
    void keep_pitch(LinePlaces& places) {
        auto& [line, y] = places.back();
        if (line->is_first()) heading_y_ = y;
        y = heading_y_ - line->line * setting_.leading * setting_.size;
    }

    // In reading order: of what stands side by side, one after the other.
    void set_lines(const fit::Column& column, std::size_t begin, std::size_t end, std::size_t page,
                   bool heading_stands) {
        double down = 0;
        if (page > 0 && column.lines[begin].continued != nullptr)
            set_continued(column.lines[begin].paragraph->section,
                          top() - to_opening_baseline(column, begin, page).at(setting_));
        LinePlaces places;
        for (std::size_t i = begin; i < end; ++i) {
            const fit::Height step =
                i == begin ? to_first_baseline(column, i, page) : to_baseline(column, i);
            down += step.at(setting_);
            const bool stands =
                heading_stands && column.lines[i].paragraph->region == composition::Region::whole;
            if (!stands) places.emplace_back(&column.lines[i], top() - down);
            if (column.lines[i].paragraph->in_margin) keep_pitch(places);
        }
        std::ranges::stable_sort(places, {},
                                 [](const auto& at) { return at.first->paragraph_index; });
        for (const auto& [line, y] : places)
            set_line(*line, y);
    }

    void set_line(const fit::ColumnLine& at, double y) {
        const composition::Paragraph& paragraph = *at.paragraph;
        const lines::Line& line = fit_.lines[at.paragraph_index][at.line];
        const double outset = at.is_first() ? paragraph.turn_over * setting_.size : 0;
        const double spare = text_room(paragraph) + outset - line.width * setting_.size;
        const double edge = left(paragraph, at.block_column) - outset;
        double x = edge;
        const bool labelled = at.is_first() && paragraph.label_runs > 0; // which stands in its way
        if (paragraph.hang_punctuation && !labelled && paragraph.align != theme::Align::centre &&
            paragraph.align != theme::Align::right)
            x -= std::min(hanging_share(paragraph, line) * setting_.size, free_margin());
        if (paragraph.align == theme::Align::centre) x += spare / 2;
        if (paragraph.align == theme::Align::right) x += spare;
        if (at.is_first()) set_label(paragraph, at.paragraph_index, x, y);
        set_text(paragraph, at.paragraph_index, line, x, y, spare);
        if (at.is_first() && paragraph.rule == theme::RuleAt::above)
            set_rule(paragraph, edge, y, 1);
        if (at.is_last() && paragraph.rule == theme::RuleAt::below)
            set_rule(paragraph, edge, y, -1);
    }

    void set_label(const composition::Paragraph& paragraph, std::uint32_t index, double x,
                   double y) {
        if (paragraph.label_runs == 0) return;
        lines::Line label;
        label.end = {paragraph.label_runs, 0};
        set_text(paragraph, index, label, x - paragraph.hang * setting_.size, y);
    }

    // What comes after a fill moves by `fill` to the right.
    void set_text(const composition::Paragraph& paragraph, std::uint32_t index,
                  const lines::Line& line, double x, double y, double fill = 0) {
        const lines::Line::Position visible = visible_end(paragraph, line);
        const std::size_t before = page_->runs.size();
        for (std::uint32_t r = line.begin.run; r < runs_end(paragraph, line); ++r) {
            if (paragraph.fill_run && r == std::max(line.begin.run, *paragraph.fill_run + 1))
                x += fill;
            PlacedRun placed;
            placed.paragraph = index;
            placed.run = r;
            std::tie(placed.begin, placed.end) = glyphs_in(paragraph, line, r);
            if (placed.begin >= placed.end) continue;
            placed.x = x;
            placed.y = y;
            placed.word_space = line.word_space * setting_.size;
            if (const auto icon = paragraph.runs[r].icon) set_icon(*icon, paragraph.runs[r], x, y);
            x += set_run(paragraph.runs[r], placed, visible);
        }
        if (line.hyphen && page_->runs.size() > before) page_->runs.back().hyphen = true;
    }

    // Gives the advance of all the run's glyphs on the line.
    double set_run(const composition::Run& run, PlacedRun placed, lines::Line::Position visible) {
        placed.size = run.size * setting_.size;
        double width = 0;
        for (std::uint32_t g = placed.begin; g < placed.end; ++g) {
            width += lines::advance(run, run.glyphs[g]) * setting_.size;
            if (lines::is_space(run, run.glyphs[g])) width += placed.word_space;
            const lines::Line::Position after{placed.run, g + 1};
            if (!is_after(after, visible)) placed.width = width;
            if (after.run == visible.run && after.glyph == visible.glyph)
                placed.width -= run.tracking * placed.size; // none after a line's last glyph
        }
        page_->runs.push_back(placed);
        return width;
    }

    // Its middle at the middle of the capitals beside it.
    void set_icon(std::uint32_t icon, const composition::Run& run, double x, double y) {
        const double capitals =
            run.size * setting_.size * run.face->cap_height() / run.face->units_per_em();
        const double side = composition::icon_side * capitals;
        page_->icons.push_back({icon, x, y + (capitals - side) / 2, side});
    }

    // From the left edge; `side` is 1 above the text and -1 below it.
    void set_rule(const composition::Paragraph& paragraph, double edge, double baseline, int side) {
        const double text = side > 0 ? paragraph.ascent : paragraph.descent;
        const double away =
            (text + paragraph.rule_gap) * setting_.size + paragraph.rule_thickness / 2;
        double length = room(paragraph) + paragraph.turn_over * setting_.size;
        if (paragraph.rule_length > 0)
            length = std::min(length, paragraph.rule_length * setting_.size);
        page_->rules.push_back({edge, baseline + side * away, length, paragraph.rule_thickness,
                                paragraph.rule_colour});
    }

    // The word alone where the whole is wider than the column.
    void set_continued(std::uint32_t section, double y) {
        const composition::Paragraph& whole = composition_.continued[section];
        const bool fits = width_of(whole) <= room(whole);
        const composition::Paragraph& heading = fits ? whole : composition_.continued.front();
        const double spare = room(whole) - width_of(heading);
        double x = left(whole);
        if (whole.align == theme::Align::centre) x += spare / 2;
        if (whole.align == theme::Align::right) x += spare;
        set_text(heading, continued_index(fits ? section : 0), whole_line(heading), x, y);
        const double edge = left(whole) - whole.turn_over * setting_.size;
        if (whole.rule == theme::RuleAt::above) set_rule(whole, edge, y, 1);
        if (whole.rule == theme::RuleAt::below) set_rule(whole, edge, y, -1);
    }

    double width_of(const composition::Paragraph& paragraph) const { // pt
        return full_width(paragraph, whole_line(paragraph)) * setting_.size;
    }

    void set_running_head(const composition::Paragraph& head, std::size_t number) {
        const std::vector<lines::Line> pieces = running_head_pieces(head.runs, number);
        double spare = room(head);
        for (const lines::Line& piece : pieces)
            spare -= full_width(head, piece) * setting_.size;
        double x = left(head);
        if (head.align == theme::Align::centre) x += spare / 2;
        if (head.align == theme::Align::right) x += spare;
        for (const lines::Line& piece : pieces) {
            set_text(head, running_head_index, piece, x, top() - head.ascent * setting_.size);
            x += full_width(head, piece) * setting_.size;
        }
    }

    const composition::Composition& composition_;
    const fit::Fit& fit_;
    const fit::PageSetting& setting_;
    std::size_t before_; // pages, in the document
    Page* page_ = nullptr;
    double heading_y_ = 0; // of the last in the margin, its first line's
};

}

bool is_artifact(const PlacedRun& placed) {
    return placed.paragraph > running_head_index / 2;
}

const composition::Paragraph& paragraph_of(const composition::Composition& composition,
                                           const PlacedRun& placed) {
    if (!is_artifact(placed)) return composition.paragraphs.at(placed.paragraph);
    if (placed.paragraph == running_head_index) return composition.running_head;
    return composition.continued.at(continued_index(0) - placed.paragraph);
}

Pages make_pages(const composition::Composition& composition, const fit::Fit& fit,
                 std::size_t before) {
    return PageBuilder(composition, fit, before).run();
}

void mark_end(Pages& pages, const fit::PageSetting& setting, std::size_t page) {
    constexpr double thickness = 1; // pt
    constexpr theme::Colour signal{0xb0, 0x30, 0x20};
    const double y = setting.bottom_margin - thickness;
    pages.pages.at(page - 1).rules.push_back({0, y, pages.width, thickness, signal});
}

}

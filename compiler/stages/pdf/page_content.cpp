// Runs of one element that follow each other make one piece of marked content.
#include "compiler/stages/pdf/page_content.hpp"

#include "compiler/stages/pdf/content_stream.hpp"
#include "compiler/stages/pdf/underlines.hpp"

#include <cmath>
#include <cstdlib>
#include <optional>

namespace quoin::pdf {

namespace {

constexpr std::uint32_t not_in_tree = static_cast<std::uint32_t>(-1); // an artifact

double em(const fonts::Face& face, int units) {
    return static_cast<double>(units) / face.units_per_em();
}

std::uint32_t element_of(const composition::Composition& composition,
                         const pages::PlacedRun& placed) {
    if (is_artifact(placed)) return not_in_tree;
    return paragraph_of(composition, placed).runs.at(placed.run).element;
}

class PageWriter {
public:
    PageWriter(const composition::Composition& composition, std::size_t number,
               const FontBook& fonts, StructureTree& structure)
        : composition_(composition), number_(number), fonts_(fonts), structure_(structure) {}

    std::string write(const pages::Page& page);

private:
    void begin_element(std::uint32_t element);
    void end_element();
    void show(const pages::PlacedRun& placed);
    void show(const ShownGlyph& glyph, const composition::Run& run, const pages::PlacedRun& placed);
    void decorate(const pages::Page& page);
    void underline(const pages::PlacedRun& placed);
    void strike_through(const composition::Run& run, const pages::PlacedRun& placed);
    void draw(const pages::PlacedIcon& placed);

    const composition::Composition& composition_;
    std::size_t number_;
    const FontBook& fonts_;
    StructureTree& structure_;
    ContentStream stream_;
    std::optional<std::uint32_t> element_; // whose content is open
    // Where the next glyph belongs and where a reader's pen is, in 1/1000 em from the run's start.
    double wanted_ = 0, pen_ = 0;
};

void PageWriter::begin_element(std::uint32_t element) {
    if (element == not_in_tree)
        stream_.begin_artifact("/Type/Pagination/Subtype/Header/Attached[/Top]");
    else
        stream_.begin_marked(structure_name(composition_.elements.at(element).type),
                             structure_.mark(element, number_));
    stream_.begin_text();
    element_ = element;
}

void PageWriter::end_element() {
    if (!element_) return;
    stream_.end_text();
    stream_.end_marked();
    element_.reset();
}

void PageWriter::show(const ShownGlyph& glyph, const composition::Run& run,
                      const pages::PlacedRun& placed) {
    const FontCode code = fonts_.code(*run.face, glyph);
    stream_.set_font(fonts_.name(code.font), placed.size);
    stream_.set_rise(glyph.y_offset * placed.size);
    const double tracking = stream_.set_tracking(run.tracking * placed.size);
    const auto gap = static_cast<int>(std::lround(wanted_ + glyph.x_offset * 1000 - pen_));
    stream_.gap(gap);
    stream_.show(code.code);
    pen_ += gap + code.width + tracking / placed.size * 1000;
    wanted_ += (glyph.advance + run.tracking) * 1000;
    if (glyph.space) wanted_ += placed.word_space / placed.size * 1000;
}

void PageWriter::show(const pages::PlacedRun& placed) {
    const composition::Paragraph& paragraph = paragraph_of(composition_, placed);
    const composition::Run& run = paragraph.runs.at(placed.run);
    stream_.set_colour(placed.pale ? pages::pale_colour : run.colour);
    stream_.move_to(placed.x, placed.y);
    wanted_ = pen_ = 0;
    std::uint32_t left_of_cluster = 0;
    for (const ShownGlyph& glyph : shown_glyphs(paragraph, placed)) {
        if (glyph.actual_length > 0) {
            stream_.begin_actual_text(glyph.actual_text);
            left_of_cluster = glyph.actual_length;
        }
        show(glyph, run, placed);
        if (left_of_cluster > 0 && --left_of_cluster == 0) stream_.end_marked();
    }
    stream_.set_rise(0);
}

void PageWriter::underline(const pages::PlacedRun& placed) {
    const composition::Run& run = paragraph_of(composition_, placed).runs.at(placed.run);
    if (run.revised == model::Revised::deleted) return strike_through(run, placed);
    if (!run.underline) return;
    const Underline line = underline_of(run, placed);
    const double height = line.thickness * placed.size;
    const double bottom = placed.y + line.middle * placed.size - height / 2;
    stream_.set_colour(placed.pale ? pages::pale_colour : run.colour);
    for (const Stretch& stretch : line.stretches)
        stream_.rectangle(placed.x + stretch.begin, bottom, stretch.end - stretch.begin, height);
}

// Through the middle of small letters, where it leaves them to be read.
void PageWriter::strike_through(const composition::Run& run, const pages::PlacedRun& placed) {
    const double height = 0.06 * placed.size;
    const double middle = em(*run.face, run.face->x_height()) / 2 * placed.size;
    stream_.set_colour(run.colour);
    stream_.rectangle(placed.x, placed.y + middle - height / 2, placed.width, height);
}

void PageWriter::draw(const pages::PlacedIcon& placed) {
    const composition::Icon& icon = composition_.icons.at(placed.icon);
    const double scale = placed.size / 100;
    const auto x = [&](double at) { return placed.x + scale * at; };
    const auto y = [&](double at) { return placed.y + placed.size - scale * at; };
    stream_.set_colour(placed.pale ? pages::pale_colour : icon.colour);
    for (const theme::PathStep& step : icon.path) {
        const auto& at = step.at;
        switch (step.kind) {
        case theme::PathStep::Kind::move:
            stream_.path_move(x(at[0]), y(at[1]));
            break;
        case theme::PathStep::Kind::line:
            stream_.path_line(x(at[0]), y(at[1]));
            break;
        case theme::PathStep::Kind::curve:
            stream_.path_curve(x(at[0]), y(at[1]), x(at[2]), y(at[3]), x(at[4]), y(at[5]));
            break;
        case theme::PathStep::Kind::close:
            stream_.path_close();
            break;
        }
    }
    stream_.path_fill();
}

void PageWriter::decorate(const pages::Page& page) {
    stream_.begin_artifact("/Type/Layout");
    for (const pages::PlacedRule& rule : page.rules) {
        stream_.set_colour(rule.colour);
        stream_.rectangle(rule.x, rule.y - rule.thickness / 2, rule.width, rule.thickness);
    }
    for (const pages::PlacedRun& placed : page.runs)
        underline(placed);
    for (const pages::PlacedIcon& placed : page.icons)
        draw(placed);
    stream_.end_marked();
}

std::string PageWriter::write(const pages::Page& page) {
    bool decorated = !page.rules.empty() || !page.icons.empty();
    for (const pages::PlacedRun& placed : page.runs) {
        const std::uint32_t element = element_of(composition_, placed);
        if (element_ != element) {
            end_element();
            begin_element(element);
        }
        show(placed);
        const composition::Run& run = paragraph_of(composition_, placed).runs[placed.run];
        decorated |= run.underline || run.revised == model::Revised::deleted;
    }
    end_element();
    if (decorated) decorate(page);
    return stream_.bytes();
}

// The link that an element is or is part of.
std::optional<std::uint32_t> link_of(const std::vector<composition::Element>& elements,
                                     std::uint32_t element) {
    while (element != 0 && elements.at(element).type != composition::StructureType::link)
        element = elements[element].parent;
    return element != 0 ? std::optional(element) : std::nullopt;
}

LinkArea area_of(std::uint32_t link, const composition::Composition& composition,
                 const pages::PlacedRun& placed) {
    const fonts::Face& face = *paragraph_of(composition, placed).runs.at(placed.run).face;
    return {link, placed.x, placed.y - em(face, face.descent()) * placed.size,
            placed.x + placed.width, placed.y + em(face, face.ascent()) * placed.size};
}

void extend(LinkArea& area, const LinkArea& further) {
    area.right = further.right;
    area.bottom = std::min(area.bottom, further.bottom);
    area.top = std::max(area.top, further.top);
}

}

std::vector<LinkArea> link_areas(const composition::Composition& composition,
                                 const pages::Page& page) {
    constexpr double same_line = 0.01; // pt
    std::vector<LinkArea> areas;
    const pages::PlacedRun* previous = nullptr;
    for (const pages::PlacedRun& placed : page.runs) {
        const std::uint32_t element = element_of(composition, placed);
        if (element == not_in_tree) continue;
        const auto link = link_of(composition.elements, element);
        if (link) {
            const LinkArea area = area_of(*link, composition, placed);
            const bool goes_on = previous != nullptr && areas.back().element == *link &&
                                 std::abs(previous->y - placed.y) < same_line;
            if (goes_on)
                extend(areas.back(), area);
            else
                areas.push_back(area);
        }
        previous = link ? &placed : nullptr;
    }
    return areas;
}

std::string page_content(const composition::Composition& composition, const pages::Page& page,
                         std::size_t number, const FontBook& fonts, StructureTree& structure) {
    return PageWriter(composition, number, fonts, structure).write(page);
}

}

#include "compiler/stages/composition/sheet.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/characters.hpp"
#include "compiler/stages/composition/composer.hpp"
#include "compiler/stages/composition/theme_faces.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <utility>

namespace quoin::composition {

namespace {

// Messages quote in straight single quotes; a page has typographic ones.
std::string with_typographic_quotes(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] != '\'')
            out += text[i];
        else if (i == 0 || std::string_view(" ([").find(text[i - 1]) != std::string_view::npos)
            out += "‘";
        else
            out += "’";
    }
    return out;
}

// What a remark quotes may be in the file and not on the page, in letters of any script.
class Legible {
public:
    Legible(const theme::Theme& theme, fonts::Fonts& fonts, Diagnostics& diagnostics)
        : faces_(theme, fonts, diagnostics) {}

    std::string operator()(std::string_view text) {
        std::string out;
        const std::string quoted = with_typographic_quotes(text);
        for (std::string_view rest = quoted; !rest.empty();) {
            const std::string_view cluster = rest.substr(0, first_cluster_length(rest));
            const bool reads_on = !is_right_to_left(first_character(cluster).code);
            out += reads_on && faces_.face_for(cluster, {}) != nullptr ? cluster : "?";
            rest.remove_prefix(cluster.size());
        }
        return out;
    }

private:
    ThemeFaces faces_;
};

void add_piece(LineText& line, std::string text, model::Marks marks) {
    if (text.empty()) return;
    TextPiece piece;
    piece.text = std::move(text);
    piece.marks = marks;
    line.pieces.push_back(std::move(piece));
}

LineText line_of(std::string text, model::Marks marks = {}) {
    LineText line;
    add_piece(line, std::move(text), marks);
    return line;
}

LineText line_of(const Remark& remark) {
    LineText line;
    add_piece(line, remark.lead, {.strong = true});
    add_piece(line, (remark.lead.empty() ? "" : " ") + remark.text, {});
    if (!remark.reason.empty()) add_piece(line, ' ' + remark.reason, {.emphasis = true});
    return line;
}

Sheet made_legible(Sheet sheet, Legible& legible) {
    sheet.title = legible(sheet.title);
    for (std::string& text : sheet.opening)
        text = legible(text);
    for (RemarkGroup& group : sheet.groups) {
        group.title = legible(group.title);
        for (Remark& remark : group.remarks)
            for (std::string* part : {&remark.lead, &remark.text, &remark.reason})
                *part = legible(*part);
    }
    for (SheetLine& line : sheet.closing)
        line = {legible(line.lead), legible(line.text)};
    return sheet;
}

// The labels' right edges in one line, the widest as far from the text as the others.
void align_labels(std::vector<Paragraph>& paragraphs) {
    constexpr double away = 0.25; // em, beside the label's own space
    double widest = 0;
    for (const Paragraph& paragraph : paragraphs)
        if (paragraph.label_runs > 0) widest = std::max(widest, paragraph.hang);
    for (Paragraph& paragraph : paragraphs) {
        if (paragraph.label_runs == 0) continue;
        paragraph.indent += widest - paragraph.hang + away;
        paragraph.hang += away;
    }
}

}

void Composer::add_remarks(const RemarkGroup& group, std::uint32_t section) {
    add_paragraph(line_of(group.title, {.strong = true}), theme::StyleName::title,
                  theme::GapName::entry, add_element(StructureType::h3, section))
        .keep_with_next = true;
    const std::uint32_t list = add_element(StructureType::l, section);
    for (const Remark& remark : group.remarks) {
        const std::uint32_t item = add_element(StructureType::li, list);
        const std::uint32_t label = add_element(StructureType::lbl, item);
        const std::uint32_t body = add_element(StructureType::lbody, item);
        Paragraph& paragraph =
            add_paragraph(line_of(remark), theme::StyleName::bullet, theme::GapName::bullet,
                          add_element(StructureType::p, body));
        add_label(paragraph, remark.number, 1, label);
    }
}

Composition Composer::run(const Sheet& sheet) {
    add_element(StructureType::document, 0);
    out_.character = character_width();
    const std::uint32_t section = add_element(StructureType::sect, 0);
    out_.outlines.push_back({sheet.title, 0});
    add_paragraph(line_of(sheet.title), theme::StyleName::section, theme::GapName::section,
                  add_element(StructureType::h2, section))
        .keep_with_next = true;
    theme::GapName gap = theme::GapName::heading;
    for (const std::string& text : sheet.opening) {
        add_paragraph(line_of(text), theme::StyleName::text, gap,
                      add_element(StructureType::p, section));
        gap = theme::GapName::line;
    }
    for (const RemarkGroup& group : sheet.groups)
        if (!group.remarks.empty()) add_remarks(group, section);
    for (const SheetLine& line : sheet.closing)
        add_paragraph(line_of(Remark{{}, line.lead, line.text, {}}), theme::StyleName::text,
                      theme::GapName::section, add_element(StructureType::p, section));
    align_labels(out_.paragraphs);
    return std::move(out_);
}

std::optional<Composition> compose_sheet(const Sheet& sheet, const model::Settings& settings,
                                         const theme::Theme& theme, fonts::Fonts& fonts) {
    Diagnostics faults; // the résumé has met them all before
    Legible legible(theme, fonts, faults);
    model::Resume none;
    none.settings = settings;
    Composition composition =
        Composer(none, theme, fonts, faults, nullptr).run(made_legible(sheet, legible));
    if (faults.has_errors()) return std::nullopt;
    return composition;
}

void append(Composition& composition, Composition more) {
    const auto paragraphs = static_cast<std::uint32_t>(composition.paragraphs.size());
    const auto icons = static_cast<std::uint32_t>(composition.icons.size());
    // one document holds both, the first's
    const auto elements = static_cast<std::uint32_t>(composition.elements.size()) - 1;
    const auto moved = [elements](std::uint32_t element) {
        return element == 0 ? 0 : element + elements;
    };
    for (std::size_t i = 1; i < more.elements.size(); ++i) {
        more.elements[i].parent = moved(more.elements[i].parent);
        composition.elements.push_back(std::move(more.elements[i]));
    }
    for (Paragraph& paragraph : more.paragraphs) {
        paragraph.element = moved(paragraph.element);
        for (Run& run : paragraph.runs) {
            run.element = moved(run.element);
            if (run.icon) *run.icon += icons;
        }
        composition.paragraphs.push_back(std::move(paragraph));
    }
    for (Outline& outline : more.outlines)
        composition.outlines.push_back({std::move(outline.title), outline.paragraph + paragraphs});
    std::ranges::move(more.icons, std::back_inserter(composition.icons));
}

}

// The name, the headline, the contact lines; the head of further pages.
#include "compiler/stages/composition/composer.hpp"

#include <utility>

namespace quoin::composition {

namespace {

std::vector<const theme::PatternLine*> heading_patterns(const theme::Form& form,
                                                        bool running_head) {
    std::vector<const theme::PatternLine*> lines;
    for (const theme::PatternLine& line : form.lines)
        if ((line.style == theme::StyleName::running_head) == running_head) lines.push_back(&line);
    return lines;
}

theme::GapName gap_above(theme::StyleName style, theme::StyleName before, bool first) {
    if (first) return theme::GapName::none;
    if (style == theme::StyleName::contact)
        return before == theme::StyleName::contact ? theme::GapName::line : theme::GapName::contact;
    return theme::GapName::header;
}

// Contact lines are one block: a rule stands above the first of them or below the last.
void rule_contact_block(std::vector<Paragraph>& heading) {
    Paragraph* before = nullptr;
    for (Paragraph& line : heading) {
        if (line.style != theme::StyleName::contact) continue;
        if (before && before->rule == theme::RuleAt::below) before->rule = theme::RuleAt::none;
        if (before && line.rule == theme::RuleAt::above) line.rule = theme::RuleAt::none;
        before = &line;
    }
}

}

void Composer::add_heading() {
    in_heading_ = true;
    auto before = theme::StyleName::name;
    bool has_name = false;
    const auto lines = expand(heading_patterns(theme_.heading, false), resume_.heading, dates_as());
    for (const ExpandedLine& line : lines) {
        const bool heading = line.style == theme::StyleName::name && !has_name;
        has_name = has_name || heading;
        const std::uint32_t element =
            add_element(heading ? StructureType::h1 : StructureType::p, 0);
        add_paragraph(line.text, line.style, gap_above(line.style, before, out_.paragraphs.empty()),
                      element);
        before = line.style;
    }
    in_heading_ = false;
    rule_contact_block(out_.paragraphs);
}

void Composer::add_running_head() {
    for (const theme::PatternLine* pattern : heading_patterns(theme_.heading, true)) {
        auto lines = expand({&pattern, 1}, resume_.heading, dates_as());
        if (lines.empty() || lines.front().style != theme::StyleName::running_head) return;
        LineText& text = lines.front().text; // the fields it leaves out come after it
        for (TextPiece& piece : text.pieces)
            piece.link.reset(); // an artifact holds no links
        out_.running_head = make_paragraph(text, theme::StyleName::running_head, 0);
        out_.running_head.breaks.clear();
    }
}

}

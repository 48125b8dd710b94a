// Sections, their entries, and bullets on two levels.
#include "compiler/stages/composition/composer.hpp"

#include "compiler/trade/schools.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>
#include <span>
#include <string>

namespace quoin::composition {

namespace {

std::string plain_value(const model::Entry& entry, trade::FieldName name) {
    const model::Field* field = entry.find(name);
    const model::Text* text = field ? std::get_if<model::Text>(&field->value) : nullptr;
    return text ? text->plain() : "";
}

bool is_before_college(const model::Entry& entry) {
    return trade::is_before_college(plain_value(entry, trade::FieldName::school),
                                    plain_value(entry, trade::FieldName::degree));
}

// Beside a college, a high school is the first to go when room is short (common practice).
bool has_college(const model::Section& section) {
    return !std::ranges::all_of(section.entries, is_before_college);
}

bool opens_lists(const theme::Theme& theme) {
    const theme::Preference& entry = theme.gap(theme::GapName::entry);
    const theme::Preference& line = theme.gap(theme::GapName::line);
    return entry.least >= line.least && entry.preferred >= line.preferred &&
           entry.most >= line.most;
}

// A form without lines of their own for further positions sets them as it sets the first.
std::vector<const theme::PatternLine*> entry_patterns(const theme::Form& form, bool further,
                                                      std::size_t way) {
    std::vector<const theme::PatternLine*> lines;
    for (const theme::PatternLine& line : form.lines)
        if (!line.way || line.way == way) lines.push_back(&line);
    const bool has_further =
        std::ranges::any_of(lines, [](const theme::PatternLine* line) { return line->further; });
    std::erase_if(lines, [&](const theme::PatternLine* line) {
        return line->further != (further && has_further);
    });
    return lines;
}

// Numbers end in one line, however many figures they have, and so their texts begin in one.
void align_numbers(std::vector<Paragraph>& paragraphs, std::size_t first) {
    const auto is_of_bullet = [](const Paragraph& paragraph) {
        return paragraph.style == theme::StyleName::bullet;
    };
    double widest = 0, hang = 0; // of the entry's number
    for (std::size_t i = first; i < paragraphs.size(); ++i)
        if (!is_of_bullet(paragraphs[i])) widest = std::max(widest, paragraphs[i].hang);
    for (std::size_t i = first; i < paragraphs.size(); ++i) {
        if (is_of_bullet(paragraphs[i])) continue;
        if (paragraphs[i].label_runs > 0) hang = paragraphs[i].hang;
        paragraphs[i].indent += widest - hang;
    }
}

}

bool prints_nothing(const model::Entry& entry) {
    return entry.bullets.empty() && std::ranges::none_of(entry.fields, has_value) &&
           std::ranges::all_of(entry.further, prints_nothing);
}

ColumnSpan span_of(const theme::Theme& theme, Region region, double side_width) {
    const double gap = theme.column_gap, side = side_width;
    switch (region) {
    case Region::main:
        return theme.side_left ? ColumnSpan{gap, 1 - side, side, gap}
                               : ColumnSpan{gap, 1 - side, 0, 0};
    case Region::side:
        return theme.side_left ? ColumnSpan{gap, side, 0, 0} : ColumnSpan{gap, side, 1 - side, gap};
    case Region::whole:
        break;
    }
    return {};
}

void Composer::add_section(const model::Section& section) {
    if (std::ranges::all_of(section.entries, prints_nothing)) return;
    const std::uint32_t element = add_element(StructureType::sect, 0);
    LineText title;
    title.append(section.title);
    const auto heading = static_cast<std::uint32_t>(out_.paragraphs.size());
    out_.outlines.push_back({section.title.plain(), heading});
    add_paragraph(title, theme::StyleName::section, theme::GapName::section,
                  add_element(StructureType::h2, element))
        .keep_with_next = true;

    const auto form = theme_.forms.find(section.holds);
    const theme::Form none;
    const bool numbered = is_numbered(section);
    const std::uint32_t list = numbered ? add_element(StructureType::l, element) : 0;
    int number = 0;
    auto gap = theme::GapName::heading;
    std::size_t paragraphs_before = 0; // of the entry above
    const bool beside_college = has_college(section);
    for (const model::Entry& entry : section.entries) {
        if (prints_nothing(entry)) continue;
        const std::size_t first = out_.paragraphs.size();
        const theme::Form& arranged = form == theme_.forms.end() ? none : form->second;
        if (numbered)
            add_numbered_entry(entry, arranged, list, ++number, gap);
        else
            add_entry(entry, arranged, false, element, gap);
        const std::size_t paragraphs = out_.paragraphs.size() - first;
        const bool is_spare = beside_college && is_before_college(entry);
        for (std::size_t i = first; i < out_.paragraphs.size(); ++i)
            out_.paragraphs[i].spare = is_spare;
        if (paragraphs == 1 && paragraphs_before == 1) join_list(first);
        paragraphs_before = paragraphs;
        gap = theme::GapName::entry;
    }
    if (numbered) align_numbers(out_.paragraphs, heading + 1);
    if (theme_.skill_columns > 1 && trade::has_groups(section.holds)) set_in_columns(heading + 1);
}

// Lines of groups; numbered ones stay one below the other.
void Composer::set_in_columns(std::size_t first) {
    const std::span<Paragraph> lines = std::span(out_.paragraphs).subspan(first);
    const bool numbered =
        std::ranges::any_of(lines, [](const Paragraph& line) { return line.label_runs > 0; });
    if (lines.size() < 2 || numbered) return;
    const auto columns = std::min(static_cast<std::uint32_t>(theme_.skill_columns),
                                  static_cast<std::uint32_t>(lines.size()));
    ++blocks_;
    for (Paragraph& line : lines) {
        line.list = 0;
        line.block = blocks_;
        line.block_columns = columns;
        line.block_gap = theme_.column_gap;
        line.indent -= body_indent_;
        line.span = {body_indent_ + theme_.column_gap * (columns - 1), 1.0 / columns, 0,
                     body_indent_};
    }
}

// An entry of one line below another such, closer than entries stand.
void Composer::join_list(std::size_t paragraph) {
    std::vector<Paragraph>& all = out_.paragraphs;
    all[paragraph].gap = theme::GapName::line;
    if (all[paragraph - 1].list == 0) all[paragraph - 1].list = ++lists_;
    if (opens_lists(theme_)) all[paragraph].list = lists_;
}

bool Composer::is_numbered(const model::Section& section) const {
    return std::ranges::find(theme_.numbered, section.holds) != theme_.numbered.end();
}

// An item of a list, its number before the first line and its other lines below the first's text.
void Composer::add_numbered_entry(const model::Entry& entry, const theme::Form& form,
                                  std::uint32_t list, int number, theme::GapName gap) {
    const std::uint32_t item = add_element(StructureType::li, list);
    const std::uint32_t label = add_element(StructureType::lbl, item);
    const std::size_t first = out_.paragraphs.size();
    add_entry(entry, form, false, add_element(StructureType::lbody, item), gap);
    if (out_.paragraphs.size() == first || out_.paragraphs[first].label_runs > 0) return;
    add_label(out_.paragraphs[first], std::to_string(number) + '.', 1, label);
    const double indent = out_.paragraphs[first].indent;
    for (std::size_t i = first + 1; i < out_.paragraphs.size(); ++i) {
        Paragraph& line = out_.paragraphs[i];
        if (line.label_runs > 0) continue;
        line.turn_over = 0;
        line.indent = indent;
    }
}

// In the looks of a section's heading; of no title, the word alone.
Paragraph Composer::continued_heading(const model::Text* title) {
    LineText text;
    if (title != nullptr) text.append(*title);
    for (TextPiece& piece : text.pieces)
        piece.link.reset(); // an artifact holds no links
    TextPiece word;
    word.kind = TextPiece::Kind::literal;
    word.text = (title != nullptr ? " " : "") + resume_.words.continued;
    word.place = theme_.family_place;
    text.pieces.push_back(std::move(word));
    Paragraph heading = make_paragraph(text, theme::StyleName::section, 0);
    heading.breaks.clear();
    return heading;
}

void Composer::add_continued_headings() {
    if (*resume_.settings.pages < 2 || resume_.sections.empty()) return;
    out_.continued.push_back(continued_heading(nullptr));
    for (const model::Section& section : resume_.sections)
        out_.continued.push_back(continued_heading(&section.title));
    for (const Paragraph& paragraph : out_.paragraphs) {
        if (paragraph.section == 0) continue;
        out_.continued[paragraph.section].region = paragraph.region;
        out_.continued[paragraph.section].span = paragraph.span;
    }
}

void Composer::add_entry(const model::Entry& entry, const theme::Form& form, bool further,
                         std::uint32_t section, theme::GapName gap) {
    auto lines = expand(entry_patterns(form, further, way_), entry.fields, dates_as());
    if (region_ == Region::side) // too narrow for a word and a date on one line
        for (ExpandedLine& line : lines)
            for (TextPiece& piece : line.text.pieces)
                piece.keeps = piece.own_word;
    const bool has_more = lines.size() > 1 || !entry.bullets.empty() || !entry.further.empty();
    const std::size_t first = out_.paragraphs.size();
    bool has_title = false;
    for (const ExpandedLine& line : lines) {
        const bool title = line.style == theme::StyleName::title && has_more && !has_title &&
                           out_.elements[section].type == StructureType::sect;
        has_title = has_title || title;
        const std::uint32_t element =
            add_element(title ? StructureType::h3 : StructureType::p, section);
        const bool heads_more = line.style == theme::StyleName::title && &line != &lines.back();
        add_paragraph(line.text, line.style, gap, element).keep_with_next =
            heads_more || !entry.bullets.empty();
        gap = theme::GapName::line;
    }
    add_bullets(entry.bullets, section, lines.empty() ? gap : theme::GapName::bullet);
    ++entries_;
    for (std::size_t i = first; i < out_.paragraphs.size(); ++i)
        out_.paragraphs[i].entry = entries_;
    for (const model::Entry& position : entry.further)
        add_entry(position, form, true, section, theme::GapName::entry);
}

void Composer::add_bullets(std::span<const model::Bullet> bullets, std::uint32_t section,
                           theme::GapName gap) {
    if (bullets.empty()) return;
    const std::uint32_t list = add_element(StructureType::l, section);
    std::uint32_t body = 0;  // of the item above on the first level; 0, the document, for none
    std::uint32_t inner = 0; // the list in it
    std::uint32_t number = 0;
    for (const model::Bullet& bullet : bullets) {
        if (bullet.level > 1 && body != 0) {
            if (inner == 0) inner = add_element(StructureType::l, body);
            add_bullet(bullet, inner, 2, gap);
        } else {
            body = add_bullet(bullet, list, 1, gap);
            inner = 0;
            ++number;
        }
        out_.paragraphs.back().bullet = number;
        gap = theme::GapName::bullet;
    }
}

std::uint32_t Composer::add_bullet(const model::Bullet& bullet, std::uint32_t list, int level,
                                   theme::GapName gap) {
    const std::uint32_t item = add_element(StructureType::li, list);
    const std::uint32_t label = add_element(StructureType::lbl, item);
    const std::uint32_t body = add_element(StructureType::lbody, item);
    LineText text;
    text.append(bullet.text, TextPart::words);
    Paragraph& paragraph =
        add_paragraph(text, theme::StyleName::bullet, gap, add_element(StructureType::p, body));
    add_label(paragraph, level == 1 ? theme_.bullet : theme_.inner_bullet, level, label);
    return body;
}

}

// A text in its style becomes a paragraph with its links and, for bullets, its sign.
#include "compiler/stages/composition/composer.hpp"
#include "compiler/stages/theme/icons.hpp"
#include "compiler/trade/paper.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

namespace quoin::composition {

namespace {

double em(int font_units, const Run& run) {
    return run.size * font_units / run.face->units_per_em();
}

void measure_height(Paragraph& paragraph) {
    for (const Run& run : paragraph.runs) {
        paragraph.ascent = std::max(paragraph.ascent, em(run.face->ascent(), run));
        paragraph.descent = std::max(paragraph.descent, em(run.face->descent(), run));
    }
}

double natural_width(const std::vector<Run>& runs) {
    double width = 0;
    for (const Run& run : runs)
        for (const fonts::Glyph& glyph : run.glyphs)
            width += em(glyph.advance, run) + run.tracking * run.size;
    return width;
}

// Between two places where its lines may end.
double widest_word(const ShapedText& shaped) {
    double widest = 0, width = 0;
    auto next = shaped.breaks.begin();
    for (std::uint32_t r = 0; r < shaped.runs.size(); ++r) {
        const Run& run = shaped.runs[r];
        for (std::uint32_t g = 0; g < run.glyphs.size(); ++g) {
            for (;
                 next != shaped.breaks.end() && std::tie(next->run, next->glyph) <= std::tie(r, g);
                 ++next)
                width = 0;
            width += em(run.glyphs[g].advance, run) + run.tracking * run.size;
            widest = std::max(widest, width);
        }
    }
    return widest;
}

Place first_place(const LineText& text) {
    for (const TextPiece& piece : text.pieces)
        if (piece.kind == TextPiece::Kind::value && piece.place.line != 0) return piece.place;
    return {};
}

// Em of the text size, at the largest text and the widest margins that are allowed.
double narrowest_measure(const model::Settings& settings, const theme::Theme& theme) {
    const double most =
        std::min(theme.side_margin.most, settings.margins->most * trade::points_per_inch);
    const double least = std::max(most, settings.margins->least * trade::points_per_inch);
    const double size = std::clamp(theme.size.most, settings.size->least, settings.size->most);
    return (size_of(*settings.paper).width - 2 * least) / size;
}

// The words of a link's runs, which marks may have parted.
std::string link_words(const ShapedText& shaped, std::size_t first) {
    std::string words;
    for (std::size_t run = first; run < shaped.runs.size(); ++run) {
        if (shaped.links[run] != shaped.links[first]) break;
        words += shaped.runs[run].text;
    }
    return words;
}

// An address as people write it: without its scheme.
std::string_view bare_address(std::string_view uri) {
    for (const std::string_view scheme : {"https://", "http://", "mailto:", "tel:"})
        if (uri.starts_with(scheme)) return uri.substr(scheme.size());
    return uri;
}

}

std::uint32_t Composer::add_element(StructureType type, std::uint32_t parent) {
    out_.elements.push_back({type, parent, {}, {}, {}, {}});
    return static_cast<std::uint32_t>(out_.elements.size() - 1);
}

// Bounds that the résumé sets may be lower than those that the theme was checked against.
double Composer::size_of(theme::StyleName style) const {
    const double ratio = theme_.style(style).size;
    const auto& asked = resume_.settings.size;
    return asked.stated() ? std::max(ratio, theme::least_text / asked->least) : ratio;
}

std::string Composer::link_contents(const std::string& uri, const std::string& words) const {
    const std::string whose = in_heading_ && !name_.empty() ? ' ' + name_ : std::string();
    const page_words::Words& said = resume_.words;
    if (uri.starts_with("mailto:")) return said.email + whose + ": " + words;
    if (uri.starts_with("tel:")) return said.phone + whose + ": " + words;
    const std::string_view address = bare_address(uri);
    if (words == address || words == uri) return said.web_page + ": " + words;
    return said.web_page + ' ' + words + ": " + std::string(address);
}

std::uint32_t Composer::add_span(const model::Gloss& gloss, std::uint32_t parent) {
    const std::uint32_t element = add_element(StructureType::span, parent);
    out_.elements[element].language = gloss.language;
    out_.elements[element].expansion = gloss.expansion;
    return element;
}

std::uint32_t Composer::add_revision(model::Revised revised, std::uint32_t parent) {
    const bool inserted = revised == model::Revised::inserted;
    const std::uint32_t element =
        add_element(inserted ? StructureType::inserted : StructureType::deleted, parent);
    out_.elements[element].contents = inserted ? "inserted: " : "deleted: ";
    return element;
}

void Composer::place_runs(Paragraph& paragraph, const ShapedText& shaped, const LineText& text) {
    std::uint32_t link = 0, span = 0, revision = 0; // elements, of the run before
    for (std::size_t run = 0; run < shaped.runs.size(); ++run) {
        std::uint32_t element = paragraph.element;
        if (const auto& number = shaped.links[run]) {
            const bool goes_on = run > 0 && shaped.links[run - 1] == number;
            if (!goes_on) {
                link = add_element(StructureType::link, paragraph.element);
                out_.elements[link].uri = text.links[*number];
                out_.elements[link].contents =
                    link_contents(text.links[*number], link_words(shaped, run));
            }
            element = link;
        }
        if (const auto& number = shaped.spans[run]) {
            const bool goes_on = run > 0 && shaped.spans[run - 1] == number &&
                                 shaped.links[run - 1] == shaped.links[run];
            if (!goes_on)
                span = add_span(resume_.settings.glosses[shaped.glossed[*number].gloss], element);
            element = span;
        }
        if (shaped.runs[run].revised != model::Revised::not_at_all) {
            if (run == 0 || paragraph.runs.back().revised != shaped.runs[run].revised ||
                out_.elements[revision].parent != element)
                revision = add_revision(shaped.runs[run].revised, element);
            out_.elements[revision].contents += shaped.runs[run].text;
            element = revision;
        }
        paragraph.runs.push_back(shaped.runs[run]);
        paragraph.runs.back().element = element;
        if (!shaped.icons[run].name.empty())
            paragraph.runs.back().icon = add_icon(shaped.icons[run], theme_.style(paragraph.style));
    }
}

// Of words as they are, letters about as frequent as in English.
double Composer::character_width() {
    constexpr std::string_view words =
        "counted the eelgrass at nine sites and cut the time of entry by half with a form that the "
        "county has used in its plans for the shore ever since";
    TextPiece piece;
    piece.kind = TextPiece::Kind::literal;
    piece.text = words;
    piece.place = theme_.family_place;
    LineText text;
    text.pieces.push_back(std::move(piece));
    return natural_width(shaper_.shape(text, theme::StyleName::bullet, 1).runs) /
           static_cast<double>(words.size());
}

// All that stands under headings is set in far enough for the longest word of theirs.
void Composer::make_room_for_headings() {
    constexpr double most = 12; // em; a word that is longer yet is broken
    for (const model::Section& section : resume_.sections) {
        LineText title;
        title.append(section.title);
        const ShapedText shaped =
            shaper_.shape(title, theme::StyleName::section, size_of(theme::StyleName::section));
        body_indent_ =
            std::max(body_indent_, std::min(most, widest_word(shaped) + theme_.column_gap));
    }
}

std::uint32_t Composer::add_icon(const RunIcon& of, const theme::Style& style) {
    Icon icon{theme_.icons.at(of.name), style.icon_colour.value_or(style.colour)};
    // where a line of text would begin
    const double left = of.in_slot ? 0 : theme::width_of(icon.path).left;
    for (theme::PathStep& step : icon.path)
        for (const std::size_t x : {0U, 2U, 4U})
            step.at[x] -= left;
    out_.icons.push_back(std::move(icon));
    return static_cast<std::uint32_t>(out_.icons.size() - 1);
}

Paragraph Composer::make_paragraph(const LineText& text, theme::StyleName style_name,
                                   std::uint32_t element) {
    const theme::Style& style = theme_.style(style_name);
    Paragraph paragraph;
    paragraph.element = element;
    paragraph.style = style_name;
    paragraph.align = style.align;
    paragraph.size = size_of(style_name);
    paragraph.rule = style.rule;
    paragraph.rule_thickness = style.rule_thickness;
    paragraph.rule_gap = style.rule_gap;
    paragraph.rule_length = style.rule_length;
    paragraph.rule_colour = style.rule_colour;
    paragraph.turn_over = style.turn_over;
    paragraph.indent = style.indent + style.turn_over;
    if (style.most_measure > 0) paragraph.most_room = style.most_measure * out_.character;
    paragraph.hang_punctuation = theme_.hang_punctuation;
    paragraph.place = first_place(text);
    ShapedText shaped = shaper_.shape(text, style_name, paragraph.size);
    place_runs(paragraph, shaped, text);
    paragraph.fill_run = shaped.fill;
    paragraph.breaks = std::move(shaped.breaks);
    paragraph.hyphen_glyphs = std::move(shaped.hyphen_glyphs);
    paragraph.origins = std::move(shaped.origins);
    shrink(paragraph, style);
    measure_height(paragraph);
    return paragraph;
}

// To one line at the narrowest measure that the page may have, if the style lets it shrink so far.
void Composer::shrink(Paragraph& paragraph, const theme::Style& style) const {
    if (style.least_size == 0) return;
    const double room = std::min(narrowest_measure(resume_.settings, theme_), paragraph.most_room);
    const double width = natural_width(paragraph.runs);
    const double size = paragraph.size * room / width;
    if (width <= room || size < style.least_size) return;
    paragraph.size = size;
    for (Run& run : paragraph.runs)
        run.size = paragraph.size;
}

Paragraph& Composer::add_paragraph(const LineText& text, theme::StyleName style, theme::GapName gap,
                                   std::uint32_t element) {
    Paragraph paragraph = make_paragraph(text, style, element);
    paragraph.gap = gap;
    paragraph.region = region_;
    paragraph.span = span_of(theme_, region_, plan_.width);
    paragraph.section = section_;
    if (style != theme::StyleName::section && !in_heading_) paragraph.indent += body_indent_;
    if (style == theme::StyleName::section && theme_.margin_headings) {
        paragraph.in_margin = true;
        paragraph.most_room = body_indent_ - theme_.column_gap;
    }
    return out_.paragraphs.emplace_back(std::move(paragraph));
}

// The sign and a real space, wide enough together for the text to line up.
void Composer::add_label(Paragraph& paragraph, std::string_view sign, int level,
                         std::uint32_t element) {
    LineText text;
    TextPiece piece;
    piece.kind = TextPiece::Kind::literal;
    piece.text = std::string(sign) + ' ';
    piece.place = theme_.family_place;
    text.pieces.push_back(std::move(piece));
    ShapedText shaped = shaper_.shape(text, paragraph.style, paragraph.size);
    for (Run& run : shaped.runs)
        run.element = element;

    const auto added = static_cast<std::uint32_t>(shaped.runs.size());
    paragraph.hang = std::max(theme_.bullet_hang, natural_width(shaped.runs));
    paragraph.turn_over = 0;
    paragraph.indent = body_indent_ + theme_.style(paragraph.style).indent + theme_.bullet_indent +
                       theme_.bullet_hang * (level - 1) + paragraph.hang;
    paragraph.label_runs = added;
    for (BreakPoint& point : paragraph.breaks)
        point.run += added;
    if (!paragraph.hyphen_glyphs.empty())
        paragraph.hyphen_glyphs.insert(paragraph.hyphen_glyphs.begin(), added, 0);
    std::move(paragraph.runs.begin(), paragraph.runs.end(), std::back_inserter(shaped.runs));
    paragraph.runs = std::move(shaped.runs);
    measure_height(paragraph);
}

}

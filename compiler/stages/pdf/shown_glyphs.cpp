// Clusters to glyphs with a text each.
#include "compiler/stages/pdf/shown_glyphs.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/pdf/right_to_left.hpp"
#include "compiler/stages/pdf/unicode.hpp"

#include <hb.h>

#include <algorithm>
#include <stdexcept>

namespace quoin::pdf {

namespace {

constexpr std::string_view true_hyphen = "\u2010";
constexpr std::string_view no_break_hyphen = "\u2011";
constexpr std::string_view word_joiner = "\u2060"; // of no width and no meaning at a word's inside

std::string_view as_typed(std::string_view text) {
    if (text == no_break_space) return " ";
    if (text == true_hyphen || text == no_break_hyphen) return "-";
    return lowered_figure(text).value_or(text);
}

void share_out(std::string_view text, ShownGlyph* first, ShownGlyph* last) {
    const std::string_view whole = text;
    const auto count = static_cast<std::uint32_t>(last - first);
    for (ShownGlyph* glyph = first; glyph != last; ++glyph) {
        if (text.empty()) {
            glyph->text = word_joiner;
            first->actual_text = whole;
            first->actual_length = count;
        } else if (glyph + 1 == last) {
            glyph->text = as_typed(text);
        } else {
            glyph->text = as_typed(take_character(text).bytes);
        }
    }
}

ShownGlyph show(const fonts::Glyph& glyph, double units_per_em) {
    if (glyph.id == 0) throw std::runtime_error("a character is in no font and cannot be shown");
    ShownGlyph shown;
    shown.id = glyph.id;
    shown.advance = glyph.advance / units_per_em;
    shown.x_offset = glyph.x_offset / units_per_em;
    shown.y_offset = glyph.y_offset / units_per_em;
    return shown;
}

ShownGlyph show_hyphen(std::uint32_t id, const fonts::Face& face) {
    ShownGlyph hyphen;
    hyphen.id = id;
    hyphen.advance =
        static_cast<double>(hb_font_get_glyph_h_advance(face.hb_font(), id)) / face.units_per_em();
    hyphen.text = soft_hyphen;
    return hyphen;
}

std::size_t end_of_cluster(const composition::Run& run, std::size_t at, std::size_t end) {
    do
        ++at;
    while (at < end && run.glyphs[at].text_length == 0);
    return at;
}

}

std::vector<ShownGlyph> shown_glyphs(const composition::Paragraph& paragraph,
                                     const pages::PlacedRun& placed) {
    const composition::Run& run = paragraph.runs.at(placed.run);
    const auto end = std::min<std::size_t>(placed.end, run.glyphs.size());
    std::vector<ShownGlyph> shown;
    shown.reserve(end - std::min<std::size_t>(placed.begin, end) + 1);
    for (std::size_t i = placed.begin; i < end; ++i)
        shown.push_back(show(run.glyphs[i], run.face->units_per_em()));
    for (std::size_t i = placed.begin; i < end;) {
        const std::size_t next = end_of_cluster(run, i, end);
        const std::string_view text =
            std::string_view(run.text).substr(run.glyphs[i].text_begin, run.glyphs[i].text_length);
        ShownGlyph* const first = shown.data() + (i - placed.begin);
        share_out(text, first, first + (next - i));
        first->space = next == i + 1 && first->text == " ";
        i = next;
    }
    set_right_to_left(shown);
    if (placed.hyphen)
        shown.push_back(show_hyphen(paragraph.hyphen_glyphs.at(placed.run), *run.face));
    return shown;
}

}

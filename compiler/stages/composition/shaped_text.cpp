// Pieces of like looks are shaped as one text, so that kerning and ligatures cross their seams.
#include "compiler/stages/composition/shaped_text.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/characters.hpp"
#include "compiler/stages/composition/line_ends.hpp"
#include "compiler/stages/composition/messages.hpp"
#include "compiler/stages/fonts/shape.hpp"
#include "compiler/stages/theme/icons.hpp"

#include <hb.h>
#include <utf8proc.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <string_view>
#include <utility>

namespace quoin::composition {

namespace {

// Names, titles and contacts are never divided.
bool is_running_text(theme::StyleName style) {
    return style == theme::StyleName::text || style == theme::StyleName::line ||
           style == theme::StyleName::bullet;
}

// Letters at display size, or set apart, are drawn one by one (common practice).
constexpr double display_size = 1.6; // of the text's

fonts::ShapingFeatures features_of(const theme::Style& style, const theme::Letters& letters,
                                   const std::string& language) {
    return {letters.caps == theme::Caps::small, letters.figures == theme::Figures::oldstyle,
            letters.ligatures && style.size < display_size && style.tracking == 0, language};
}

bool is_space_glyph(const Run& run, const fonts::Glyph& glyph) {
    const std::string_view text = std::string_view(run.text).substr(glyph.text_begin);
    return text.starts_with(' ') || text.starts_with(no_break_space);
}

// By how much the ink of two glyphs that a space parts is nearer than their advances say.
double overhang(const Run& run, std::size_t space) {
    if (space == 0 || space + 1 >= run.glyphs.size()) return 0;
    hb_glyph_extents_t left{}, right{};
    hb_font_t* const font = run.face->hb_font();
    const fonts::Glyph& before = run.glyphs[space - 1];
    if (!hb_font_get_glyph_extents(font, before.id, &left) ||
        !hb_font_get_glyph_extents(font, run.glyphs[space + 1].id, &right))
        return 0;
    return left.x_bearing + left.width - before.advance - right.x_bearing;
}

constexpr double least_white = 0.18; // em, between the ink of two words

// A space that the letters beside it lean into (`of Philosophy` in italics) is opened by as much.
void set_word_space(Run& run, double em) {
    const double units = run.face->units_per_em();
    for (std::size_t i = 0; i < run.glyphs.size(); ++i) {
        if (!is_space_glyph(run, run.glyphs[i])) continue;
        const double width = std::max(em * units, least_white * units + overhang(run, i));
        run.glyphs[i].advance = static_cast<std::int32_t>(std::lround(width));
    }
}

// The space that an icon is drawn over is as wide as the drawing, or its square, and its gap.
double icon_space(const Run& run, const theme::Path& path, bool in_slot, double gap) {
    const theme::IconWidth width = in_slot ? theme::IconWidth{0, 100} : theme::width_of(path);
    const double side = icon_side * run.face->cap_height() / 100;
    return side * (width.right - width.left) + gap * run.face->units_per_em();
}

std::vector<std::uint32_t> hyphens_of(const std::vector<Run>& runs,
                                      const fonts::ShapingFeatures& features) {
    std::vector<std::uint32_t> glyphs;
    for (const Run& run : runs)
        glyphs.push_back(quoin::fonts::shape(*run.face, "\u2011", features).front().id);
    return glyphs;
}

// Beside the line under or through the words, which tells of itself; both on white at 7 to 1 and
// more (WCAG 2.1, 1.4.6).
constexpr theme::Colour inserted_colour{0x00, 0x4f, 0x36}, deleted_colour{0x8c, 0x1a, 0x2e};

void widen(Run& run, double units) {
    if (!run.glyphs.empty())
        run.glyphs.front().advance = static_cast<std::int32_t>(std::lround(units));
}

}

struct TextShaper::Segment {
    const fonts::Face* face = nullptr;
    bool underline = false;
    std::optional<std::uint32_t> link;
    bool page = false;
    RunIcon icon = {};
    std::size_t begin = 0; // bytes of the paragraph's text
    std::size_t end = 0;
    bool fill = false;
    theme::Letters letters = {};
    std::optional<std::uint32_t> span = {}; // index into ShapedText::glossed
    model::Revised revised = {};

    static Segment of(const TextPiece& piece, const fonts::Face* face,
                      const theme::Letters& letters, std::size_t begin) {
        Segment segment{face, piece.marks.underline, piece.link};
        segment.page = piece.kind == TextPiece::Kind::page;
        segment.icon = {piece.icon, piece.icon_slot};
        segment.begin = begin;
        segment.fill = piece.kind == TextPiece::Kind::fill;
        segment.letters = letters;
        segment.revised = piece.marks.revised;
        return segment;
    }
    bool looks_like(const Segment& other) const {
        return face == other.face && underline == other.underline && link == other.link &&
               page == other.page && icon.name.empty() && other.icon.name.empty() && !fill &&
               !other.fill && letters == other.letters && revised == other.revised;
    }
};

struct TextShaper::Segmented {
    std::string text; // without soft hyphens
    std::vector<Segment> segments;
    std::vector<std::size_t> soft_hyphens;
    std::vector<std::size_t> literal_bytes, kept_bytes;
    std::vector<Origin> origins;
    std::optional<std::size_t> right_to_left; // the segment of the last letter, if it was such
    bool parted = false;                      // and what keeps another order came after it
};

namespace {

bool is_comma_list(std::string_view text, const std::vector<Origin>& origins) {
    return std::ranges::any_of(origins, [&](const Origin& origin) {
        return origin.part == TextPart::separator && text.substr(origin.begin).starts_with(',');
    });
}

// Parted where a glossed range begins or ends, so that it has runs of its own.
template<typename Segments>
Segments parted(const Segments& segments, const std::vector<GlossedRange>& ranges) {
    Segments parts;
    std::uint32_t next = 0;
    for (auto rest : segments) {
        while (next < ranges.size() && ranges[next].begin < rest.end) {
            const GlossedRange& range = ranges[next];
            auto part = rest;
            part.end = std::max(rest.begin, range.begin);
            if (part.end > part.begin) parts.push_back(part);
            part.begin = part.end;
            part.end = std::min(rest.end, range.end);
            part.span = next;
            parts.push_back(part);
            rest.begin = part.end;
            if (range.end > rest.end) break; // it goes on in the next segment
            ++next;
        }
        if (rest.end > rest.begin) parts.push_back(rest);
    }
    return parts;
}

// The break before byte `offset` of a run, as the index of the glyph that begins there; none if
// it lies within a glyph. `glyph` goes on from the break before.
std::optional<std::uint32_t> glyph_at(const Run& run, std::size_t offset, std::uint32_t& glyph) {
    if (offset == run.text.size()) return static_cast<std::uint32_t>(run.glyphs.size());
    while (glyph < run.glyphs.size() && run.glyphs[glyph].text_begin < offset)
        ++glyph;
    if (glyph < run.glyphs.size() && run.glyphs[glyph].text_begin == offset) return glyph;
    return std::nullopt;
}

// How many glyphs before `glyph` stand for the `length` bytes before it; 0 if the run begins within
// them.
std::uint32_t glyphs_before(const Run& run, std::uint32_t glyph, std::size_t length) {
    const std::size_t end =
        glyph < run.glyphs.size() ? run.glyphs[glyph].text_begin : run.text.size();
    if (length == 0 || length > end) return 0;
    std::uint32_t count = 0;
    while (count < glyph && run.glyphs[glyph - count - 1].text_begin >= end - length)
        ++count;
    return count;
}

// `begins` holds where each run begins in the paragraph's text.
std::vector<BreakPoint> break_points(const std::vector<LineEnd>& ends, const std::vector<Run>& runs,
                                     const std::vector<std::size_t>& begins) {
    std::vector<BreakPoint> points;
    std::uint32_t run = 0, glyph = 0;
    for (const LineEnd& end : ends) {
        while (run < runs.size() && begins[run] + runs[run].text.size() < end.offset) {
            ++run;
            glyph = 0;
        }
        if (run == runs.size()) break;
        const auto at = glyph_at(runs[run], end.offset - begins[run], glyph);
        if (at && *at > 0)
            points.push_back(
                {run, *at, end.penalty, end.hyphen, glyphs_before(runs[run], *at, end.left_out)});
    }
    return points;
}

}

// A run of text that no face has: one error, however long it is.
struct TextShaper::Missing {
    std::string text;
    Place place;

    void add(std::string_view cluster, Place at) {
        if (text.empty()) place = at;
        text += cluster;
        const bool same_line = at.file == place.file && at.line == place.line;
        if (cluster != " " && same_line && at.column >= place.column)
            place.length = at.column + at.length - place.column;
    }
};

void TextShaper::report(Missing& missing) {
    if (missing.text.empty()) return;
    while (missing.text.ends_with(' '))
        missing.text.pop_back();
    if (!missing.text.empty() && missing_.insert(missing.text).second) {
        const std::string scripts = scripts_of(missing.text);
        const auto code = static_cast<std::uint32_t>(first_character(missing.text).code);
        diagnostics_.error(
            missing.place,
            scripts.empty()
                ? fill<messages::no_glyph>(theme_.name, in_quotes(missing.text), code)
                : fill<messages::no_letters>(theme_.name, scripts, in_quotes(missing.text)));
    }
    missing = {};
}

// Lines run from left to right, and in each segment words that are read the other way are turned
// round (pdf/right_to_left.hpp). About figures and brackets, and from one segment to the next, they
// would stand in the wrong order.
void TextShaper::check_direction(std::string_view cluster, Place place, Segmented& out) {
    const char32_t code = first_character(cluster).code;
    if (std::ranges::any_of(cluster, is_ascii_letter) || is_left_to_right(code)) {
        out.right_to_left.reset();
    } else if (is_right_to_left(code)) {
        const std::size_t segment = out.segments.size() - 1;
        if (out.right_to_left && (out.parted || *out.right_to_left != segment))
            diagnostics_.error(
                place, fill<messages::right_to_left>(cluster, static_cast<std::uint32_t>(code)));
        out.right_to_left = segment;
        out.parted = false;
    } else if (has_digit(cluster) || parts_right_to_left(code)) {
        out.parted = true;
    }
}

// Of a word; of several, with the white between them, where they are read from right to left.
std::size_t TextShaper::end_of_words(std::string_view text, std::size_t at) {
    std::size_t end = std::min(text.find(' ', at), text.size());
    const auto reads_left = [&](std::size_t begin) {
        return begin < text.size() && is_right_to_left(first_character(text.substr(begin)).code);
    };
    while (reads_left(at) && reads_left(end + 1))
        end = std::min(text.find(' ', end + 1), text.size());
    return end;
}

theme::Letters TextShaper::letters_of(const TextPiece& piece, const theme::Style& style) const {
    const auto own = piece.field ? theme_.fields.find(*piece.field) : theme_.fields.end();
    return own == theme_.fields.end() ? style.letters : own->second.on(style.letters);
}

namespace {

// Of `size` bytes from `at` on, where the text maps byte for byte to the source; else of all.
Place place_within(Place place, std::size_t text_size, std::size_t at, std::size_t size) {
    if (place.length != text_size) return place;
    place.column += static_cast<std::uint32_t>(at);
    place.length = static_cast<std::uint32_t>(size);
    return place;
}

}

void TextShaper::add_piece(const TextPiece& piece, const theme::Style& style, Segmented& out) {
    const theme::Letters letters = letters_of(piece, style);
    const std::string text =
        letters.caps == theme::Caps::all ? upper_case(piece.text, language_) : piece.text;
    const fonts::FaceStyle face_style{
        (style.bold != piece.pattern_marks.strong) || piece.marks.strong,
        (style.italic != piece.pattern_marks.emphasis) != piece.marks.emphasis};
    const fonts::Face* word_face = nullptr;
    Missing missing;
    for (std::size_t at = 0, word_end = 0; at < text.size();) {
        const std::string_view rest = std::string_view(text).substr(at);
        std::string_view cluster = rest.substr(0, first_cluster_length(rest));
        if (at >= word_end) {
            word_end = cluster == " " ? at + 1 : end_of_words(text, at);
            const std::string_view word = rest.substr(0, word_end - at);
            word_face = faces_.face_for(word, face_style, style.family);
            if (word_face && all_ascii(word)) cluster = word; // nothing in it stands apart
        }
        const Place place = place_within(piece.place, text.size(), at, cluster.size());
        const fonts::Face* const face =
            word_face ? word_face : faces_.face_for(cluster, face_style, style.family);
        if (!face || (cluster == " " && !missing.text.empty()))
            missing.add(cluster, place);
        else
            report(missing);
        if (at == 0 || face != out.segments.back().face) {
            const Segment segment = Segment::of(piece, face, letters, out.text.size());
            if (out.segments.empty() || !out.segments.back().looks_like(segment))
                out.segments.push_back(segment);
        }
        out.text += cluster;
        out.segments.back().end = out.text.size();
        if (face) check_direction(cluster, place, out);
        at += cluster.size();
    }
    report(missing);
}

TextShaper::Segmented TextShaper::segment(const LineText& text, const theme::Style& style) {
    Segmented out;
    for (const TextPiece& piece : text.pieces) {
        const std::size_t begin = out.text.size();
        add_piece(piece, style, out);
        out.origins.push_back({begin, out.text.size(), piece.part,
                               piece.link.has_value() || piece.marks != model::Marks{},
                               piece.place});
        if (piece.keeps) out.kept_bytes.insert(out.kept_bytes.end(), {begin, out.text.size()});
        if (piece.kind != TextPiece::Kind::literal) continue;
        out.literal_bytes.push_back(begin);
        out.literal_bytes.push_back(out.text.size());
    }
    return out;
}

bool TextShaper::is_english() const {
    return language_ == "en" || language_.starts_with("en-");
}

Run TextShaper::shaped_run(const Segment& part, const Segmented& parts,
                           const theme::Style& style) const {
    Run run;
    run.face = part.face;
    run.colour = style.colour;
    run.tracking = style.tracking;
    run.underline = part.underline || part.revised == model::Revised::inserted;
    run.revised = part.revised;
    if (part.revised == model::Revised::inserted) run.colour = inserted_colour;
    if (part.revised == model::Revised::deleted) run.colour = deleted_colour;
    run.text = parts.text.substr(part.begin, part.end - part.begin);
    run.glyphs =
        quoin::fonts::shape(*part.face, run.text, features_of(style, part.letters, language_));
    if (theme_.word_space > 0) set_word_space(run, theme_.word_space);
    if (part.fill) widen(run, theme_.fill_gap * run.face->units_per_em());
    if (!part.icon.name.empty())
        widen(run,
              icon_space(run, theme_.icons.at(part.icon.name), part.icon.in_slot, theme_.icon_gap));
    return run;
}

std::size_t AskedTextHash::operator()(const AskedText& asked) const {
    std::size_t hash = static_cast<std::size_t>(asked.style);
    for (const TextPiece& piece : asked.text.pieces)
        hash = hash * 31 + std::hash<std::string>()(piece.text);
    return hash;
}

ShapedText TextShaper::shape(const LineText& text, theme::StyleName style, double size) {
    if (!known_) return shaped_anew(text, style, size);
    const auto [found, is_new] = known_->try_emplace({text, style, size});
    if (is_new) found->second = shaped_anew(text, style, size);
    return found->second;
}

ShapedText TextShaper::shaped_anew(const LineText& text, theme::StyleName style_name, double size) {
    const theme::Style& style = theme_.style(style_name);
    Segmented parts = segment(text, style);
    if (hyphenation_ && is_english() && is_running_text(style_name))
        parts.soft_hyphens = hyphenation_->points(parts.text);
    ShapedText shaped;
    shaped.glossed = glosses_.tree(style.letters.caps == theme::Caps::all).ranges_in(parts.text);
    parts.segments = parted(parts.segments, shaped.glossed);
    std::vector<std::size_t> begins;
    for (const Segment& part : parts.segments) {
        if (!part.face) continue; // reported: nothing will be set
        if (part.fill) shaped.fill = static_cast<std::uint32_t>(shaped.runs.size());
        shaped.runs.push_back(shaped_run(part, parts, style));
        shaped.runs.back().size = size;
        shaped.links.push_back(part.link);
        shaped.icons.push_back(part.icon);
        shaped.spans.push_back(part.span);
        begins.push_back(part.begin);
    }
    shaped.origins = parts.origins;
    LineEndText ends{parts.text,
                     parts.soft_hyphens,
                     parts.literal_bytes,
                     style_name,
                     is_english(),
                     parts.kept_bytes,
                     is_comma_list(parts.text, parts.origins)};
    shaped.breaks = break_points(line_ends(ends), shaped.runs, begins);
    if (std::ranges::any_of(shaped.breaks, &BreakPoint::hyphen))
        shaped.hyphen_glyphs =
            hyphens_of(shaped.runs, features_of(style, style.letters, language_));
    return shaped;
}

}

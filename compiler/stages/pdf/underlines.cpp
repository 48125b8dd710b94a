// The outline of each letter is followed through the band that the line takes.
#include "compiler/stages/pdf/underlines.hpp"

#include "compiler/stages/lines/paragraph_lines.hpp"
#include "compiler/stages/pdf/glyph_outline.hpp"

#include <hb-ot.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::pdf {

namespace {

constexpr double nearest = 0.08, farthest = 0.14; // em, below the baseline
constexpr double thickest = 0.06;
constexpr double air = 0.08; // em, on either side of a letter, and above and under the line

struct BandInk { // of one glyph's outline, in font units
    double bottom = 0, top = 0;
    double x = 0, y = 0; // where the outline is drawn on from
    double left = std::numeric_limits<double>::max();
    double right = std::numeric_limits<double>::lowest();

    void take(double at) {
        left = std::min(left, at);
        right = std::max(right, at);
    }
    void move_to(double to_x, double to_y) {
        x = to_x;
        y = to_y;
    }
    void line_to(double to_x, double to_y);
    void curve_to(double x1, double y1, double x2, double y2, double x3, double y3);
    void close_path() {}
    bool any() const { return left <= right; }
};

// What of a straight line lies in the band.
void BandInk::line_to(double to_x, double to_y) {
    const double low = std::max(std::min(y, to_y), bottom);
    const double high = std::min(std::max(y, to_y), top);
    if (low <= high) {
        const auto at = [&](double height) {
            return y == to_y ? x : x + (to_x - x) * (height - y) / (to_y - y);
        };
        take(at(low));
        take(at(high));
        if (y == to_y) take(to_x);
    }
    move_to(to_x, to_y);
}

void BandInk::curve_to(double x1, double y1, double x2, double y2, double x3, double y3) {
    constexpr int steps = 12;
    const double x0 = x, y0 = y;
    for (int step = 1; step <= steps; ++step) {
        const double t = static_cast<double>(step) / steps, u = 1 - t;
        const auto at = [&](double a, double b, double c, double d) {
            return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
        };
        line_to(at(x0, x1, x2, x3), at(y0, y1, y2, y3));
    }
}

double units_in(const composition::Run& run, hb_ot_metrics_tag_t tag) {
    hb_position_t units = 0;
    hb_ot_metrics_get_position_with_fallback(run.face->hb_font(), tag, &units);
    return static_cast<double>(units) / run.face->units_per_em();
}

// Leaves `from` to `to` out of the last stretch, which goes on to the run's end.
void part_last(std::vector<Stretch>& stretches, double from, double to) {
    const Stretch last = stretches.back();
    stretches.back().end = std::clamp(from, last.begin, last.end);
    stretches.push_back({std::clamp(to, last.begin, last.end), last.end});
}

BandInk band_of(const Underline& line, double units) {
    BandInk ink;
    ink.bottom = (line.middle - line.thickness / 2 - air / 2) * units;
    ink.top = (line.middle + line.thickness / 2) * units;
    return ink;
}

// As the font has it, but neither far off nor thick.
Underline unbroken(const composition::Run& run, double width) {
    Underline line;
    line.thickness = std::min(units_in(run, HB_OT_METRICS_TAG_UNDERLINE_SIZE), thickest);
    line.middle = std::clamp(units_in(run, HB_OT_METRICS_TAG_UNDERLINE_OFFSET),
                             line.thickness / 2 - farthest, -nearest - line.thickness / 2);
    line.stretches.push_back({0, width});
    return line;
}

}

Underline underline_of(const composition::Run& run, const pages::PlacedRun& placed) {
    Underline line = unbroken(run, placed.width);
    const GlyphOutline<BandInk> outline;
    const double units = run.face->units_per_em();
    double x = 0; // pt
    for (std::uint32_t g = placed.begin; g < placed.end; ++g) {
        const fonts::Glyph& glyph = run.glyphs[g];
        BandInk ink = band_of(line, units);
        outline.draw(run.face->hb_font(), glyph.id, ink);
        const double scale = placed.size / units, start = x + scale * glyph.x_offset;
        if (ink.any())
            part_last(line.stretches, start + scale * ink.left - air * placed.size,
                      start + scale * ink.right + air * placed.size);
        x += lines::advance(run, glyph) / run.size * placed.size;
        if (lines::is_space(run, glyph)) x += placed.word_space;
    }
    std::erase_if(line.stretches, [&](const Stretch& stretch) {
        return stretch.end - stretch.begin < air * placed.size;
    });
    return line;
}

}

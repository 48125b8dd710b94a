// A glyph's outline, drawn by a pen in font units: move_to, line_to, curve_to of the third degree,
// as which those of the second come too, and close_path.
#pragma once

#include <hb.h>

#include <memory>

namespace quoin::pdf {

template<typename Pen>
class GlyphOutline {
public:
    GlyphOutline() {
        hb_draw_funcs_set_move_to_func(functions_.get(), move_to, nullptr, nullptr);
        hb_draw_funcs_set_line_to_func(functions_.get(), line_to, nullptr, nullptr);
        hb_draw_funcs_set_cubic_to_func(functions_.get(), curve_to, nullptr, nullptr);
        hb_draw_funcs_set_close_path_func(functions_.get(), close_path, nullptr, nullptr);
    }

    void draw(hb_font_t* font, hb_codepoint_t glyph, Pen& pen) const {
        hb_font_get_glyph_shape(font, glyph, functions_.get(), &pen);
    }

private:
    static Pen& pen(void* data) { return *static_cast<Pen*>(data); }

    static void move_to(hb_draw_funcs_t*, void* data, hb_draw_state_t*, float x, float y, void*) {
        pen(data).move_to(double{x}, double{y});
    }
    static void line_to(hb_draw_funcs_t*, void* data, hb_draw_state_t*, float x, float y, void*) {
        pen(data).line_to(double{x}, double{y});
    }
    static void curve_to(hb_draw_funcs_t*, void* data, hb_draw_state_t*, float x1, float y1,
                         float x2, float y2, float x3, float y3, void*) {
        pen(data).curve_to(double{x1}, double{y1}, double{x2}, double{y2}, double{x3}, double{y3});
    }
    static void close_path(hb_draw_funcs_t*, void* data, hb_draw_state_t*, void*) {
        pen(data).close_path();
    }

    std::unique_ptr<hb_draw_funcs_t, decltype(&hb_draw_funcs_destroy)> functions_{
        hb_draw_funcs_create(), hb_draw_funcs_destroy};
};

}

// A page's content stream (ISO 32000-1, section 7.8.2): operators, with the text state known, so
// that nothing is said twice.
#pragma once

#include "compiler/stages/theme/theme.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace quoin::pdf {

class ContentStream {
public:
    void begin_marked(std::string_view tag, int mcid);
    void begin_artifact(std::string_view properties); // `/Type/Layout`
    void begin_actual_text(std::string_view utf8);
    void end_marked();

    void begin_text();
    void end_text();
    void move_to(double x, double y); // where the next glyph goes
    void set_font(std::string_view name, double size);
    void set_colour(theme::Colour colour);
    double set_tracking(double points); // gives it as written
    void set_rise(double points);

    // Shows come in between moves; a gap is in 1/1000 em of the font, to the right.
    void show(std::uint32_t code);
    void gap(int thousandths);

    void set_graphics_state(std::string_view name);
    void rectangle(double x, double y, double width, double height); // filled

    // A path of outlines, filled by the even-odd rule.
    void path_move(double x, double y);
    void path_line(double x, double y);
    void path_curve(double x1, double y1, double x2, double y2, double x3, double y3);
    void path_close();
    void path_fill();

    const std::string& bytes() const { return bytes_; }

private:
    void close_string();
    void close_shown();
    void number(double value, int decimals);
    void operation(std::string_view name);

    std::string bytes_;
    std::string shown_; // the array of a TJ not yet written
    bool in_string_ = false;
    double line_x_ = 0, line_y_ = 0; // start of the current line in the text object
    std::string font_;
    double size_ = 0, tracking_ = 0, rise_ = 0;
    theme::Colour colour_; // the initial colour is black
};

}

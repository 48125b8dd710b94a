// Operators are written when something changes. Positions are rounded where they stand, not from
// one to the next, so that nothing adds up.
#include "compiler/stages/pdf/content_stream.hpp"

#include "compiler/stages/pdf/objects.hpp"
#include "compiler/stages/pdf/unicode.hpp"

namespace quoin::pdf {

namespace {

constexpr int position_decimals = 2; // 0.005 pt at most off
constexpr int size_decimals = 4;     // a line is a hundred ems and less
constexpr int tracking_decimals = 3;
constexpr int colour_decimals = 3;

// Within a string's parentheses (ISO 32000-1, 7.3.4.2): a bare carriage return reads as a line
// feed.
void append_literal(std::string& text, char byte) {
    if (byte == '(' || byte == ')' || byte == '\\') text += '\\';
    if (byte == '\r')
        text += "\\r";
    else
        text += byte;
}

}

void ContentStream::number(double value, int decimals) {
    append_number(bytes_, value, decimals);
    bytes_ += ' ';
}

void ContentStream::operation(std::string_view name) {
    bytes_ += name;
    bytes_ += '\n';
}

void ContentStream::begin_marked(std::string_view tag, int mcid) {
    close_shown();
    bytes_ += '/';
    bytes_ += tag;
    bytes_ += "<</MCID ";
    bytes_ += std::to_string(mcid);
    operation(">>BDC");
}

void ContentStream::begin_artifact(std::string_view properties) {
    close_shown();
    bytes_ += "/Artifact<<";
    bytes_ += properties;
    operation(">>BDC");
}

void ContentStream::begin_actual_text(std::string_view utf8) {
    close_shown();
    bytes_ += "/Span<</ActualText<FEFF";
    append_hex(bytes_, utf16be(utf8));
    operation(">>>BDC");
}

void ContentStream::end_marked() {
    close_shown();
    operation("EMC");
}

void ContentStream::begin_text() {
    line_x_ = line_y_ = 0;
    operation("BT");
}

void ContentStream::end_text() {
    close_shown();
    operation("ET");
}

void ContentStream::move_to(double x, double y) {
    close_shown();
    x = as_written(x, position_decimals);
    y = as_written(y, position_decimals);
    number(x - line_x_, position_decimals);
    number(y - line_y_, position_decimals);
    operation("Td");
    line_x_ = x;
    line_y_ = y;
}

void ContentStream::set_font(std::string_view name, double size) {
    if (name == font_ && size == size_) return;
    close_shown();
    font_ = name;
    size_ = size;
    bytes_ += '/';
    bytes_ += name;
    bytes_ += ' ';
    number(size, size_decimals);
    operation("Tf");
}

void ContentStream::set_colour(theme::Colour colour) {
    if (colour == colour_) return;
    close_shown();
    colour_ = colour;
    number(colour.red / 255.0, colour_decimals);
    if (colour.red == colour.green && colour.green == colour.blue) {
        operation("g");
        return;
    }
    number(colour.green / 255.0, colour_decimals);
    number(colour.blue / 255.0, colour_decimals);
    operation("rg");
}

double ContentStream::set_tracking(double points) {
    points = as_written(points, tracking_decimals);
    if (points == tracking_) return points;
    close_shown();
    tracking_ = points;
    number(points, tracking_decimals);
    operation("Tc");
    return points;
}

void ContentStream::set_rise(double points) {
    points = as_written(points, position_decimals);
    if (points == rise_) return;
    close_shown();
    rise_ = points;
    number(points, position_decimals);
    operation("Ts");
}

// Bytes as they are take half the room of digits, and still less once compressed.
void ContentStream::show(std::uint32_t code) {
    if (!in_string_) shown_ += '(';
    in_string_ = true;
    append_literal(shown_, static_cast<char>(code >> 8 & 0xFF));
    append_literal(shown_, static_cast<char>(code & 0xFF));
}

// In the array of TJ a number moves to the left.
void ContentStream::gap(int thousandths) {
    if (thousandths == 0) return;
    close_string();
    shown_ += std::to_string(-thousandths);
}

void ContentStream::close_string() {
    if (in_string_) shown_ += ')';
    in_string_ = false;
}

void ContentStream::close_shown() {
    if (shown_.empty()) return;
    close_string();
    bytes_ += '[';
    bytes_ += shown_;
    operation("]TJ");
    shown_.clear();
}

void ContentStream::set_graphics_state(std::string_view name) {
    bytes_ += '/';
    bytes_ += name;
    operation(" gs");
}

void ContentStream::rectangle(double x, double y, double width, double height) {
    number(x, position_decimals);
    number(y, position_decimals + 1);
    number(width, position_decimals);
    number(height, position_decimals + 1);
    operation("re f");
}

void ContentStream::path_move(double x, double y) {
    number(x, position_decimals);
    number(y, position_decimals);
    operation("m");
}

void ContentStream::path_line(double x, double y) {
    number(x, position_decimals);
    number(y, position_decimals);
    operation("l");
}

void ContentStream::path_curve(double x1, double y1, double x2, double y2, double x3, double y3) {
    for (const double place : {x1, y1, x2, y2, x3, y3})
        number(place, position_decimals);
    operation("c");
}

void ContentStream::path_close() {
    operation("h");
}

void ContentStream::path_fill() {
    operation("f*");
}

}

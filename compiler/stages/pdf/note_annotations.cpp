#include "compiler/stages/pdf/note_annotations.hpp"

#include "compiler/stages/fonts/shape.hpp"
#include "compiler/stages/pdf/content_stream.hpp"
#include "compiler/stages/pdf/glyph_outline.hpp"

#include <hb.h>

#include <algorithm>
#include <string>
#include <vector>

namespace quoin::pdf {

namespace {

constexpr theme::Colour figure_colour{255, 255, 255};
constexpr const char* author = "quoin proof";

PdfArray numbers(std::initializer_list<double> values) {
    PdfArray array;
    for (const double value : values)
        array.push_back(PdfReal{value});
    return array;
}

PdfArray colour_array(theme::Colour colour) {
    return {PdfReal{colour.red / 255.0, 3}, PdfReal{colour.green / 255.0, 3},
            PdfReal{colour.blue / 255.0, 3}};
}

PdfArray box_of(const pages::Flag& flag) {
    return numbers({flag.left, flag.bottom, flag.left + flag.width, flag.bottom + flag.height});
}

PdfArray box_of(const std::vector<pages::TextArea>& areas) {
    pages::TextArea box = areas.front();
    for (const pages::TextArea& area : areas) {
        box.left = std::min(box.left, area.left);
        box.bottom = std::min(box.bottom, area.bottom);
        box.right = std::max(box.right, area.right);
        box.top = std::max(box.top, area.top);
    }
    return numbers({box.left, box.bottom, box.right, box.top});
}

// Upper left, upper right, lower left, lower right: the standard's text has them go round, viewers
// take them so.
PdfArray quad_points(const std::vector<pages::TextArea>& areas) {
    PdfArray points;
    for (const pages::TextArea& area : areas)
        for (const double value : {area.left, area.top, area.right, area.top, area.left,
                                   area.bottom, area.right, area.bottom})
            points.push_back(PdfReal{value});
    return points;
}

// --- figures

struct Pen { // where a glyph's outline is drawn
    ContentStream& stream;
    double x = 0, y = 0; // pt, of the glyph's origin
    double scale = 0;    // pt a font unit

    void move_to(double to_x, double to_y) { stream.path_move(at_x(to_x), at_y(to_y)); }
    void line_to(double to_x, double to_y) { stream.path_line(at_x(to_x), at_y(to_y)); }
    void curve_to(double x1, double y1, double x2, double y2, double x3, double y3) {
        stream.path_curve(at_x(x1), at_y(y1), at_x(x2), at_y(y2), at_x(x3), at_y(y3));
    }
    void close_path() { stream.path_close(); }

private:
    double at_x(double units) const { return x + scale * units; }
    double at_y(double units) const { return y + scale * units; }
};

double width_of(const std::vector<fonts::Glyph>& glyphs, double scale) {
    double width = 0;
    for (const fonts::Glyph& glyph : glyphs)
        width += scale * glyph.advance;
    return width;
}

// Centred on a point, the lining figures of `face`.
void draw_figures(ContentStream& stream, const fonts::Face& face, const std::string& figures,
                  double middle_x, double middle_y) {
    constexpr double size = pages::flag_figures;
    const double scale = size / face.units_per_em();
    const std::vector<fonts::Glyph> glyphs = shape(face, figures, {});
    hb_glyph_extents_t extents{};
    hb_font_get_glyph_extents(face.hb_font(), glyphs.front().id, &extents);
    const double height = scale * extents.y_bearing; // lining figures are of one height

    const GlyphOutline<Pen> outline;
    Pen to{stream, middle_x - width_of(glyphs, scale) / 2, middle_y - height / 2, scale};
    for (const fonts::Glyph& glyph : glyphs) {
        outline.draw(face.hb_font(), glyph.id, to);
        to.x += scale * glyph.advance;
    }
    stream.path_fill();
}

// --- flags

constexpr double point_length = 3; // pt

void draw_flag(ContentStream& stream, const pages::Flag& flag) {
    const double top = flag.bottom + flag.height, middle = flag.bottom + flag.height / 2;
    const double back = flag.points_right ? flag.left : flag.left + flag.width;
    const double tip = flag.points_right ? flag.left + flag.width : flag.left;
    const double shoulder = flag.points_right ? tip - point_length : tip + point_length;
    stream.path_move(back, flag.bottom);
    stream.path_line(shoulder, flag.bottom);
    stream.path_line(tip, middle);
    stream.path_line(shoulder, top);
    stream.path_line(back, top);
    stream.path_close();
    stream.path_fill();
}

double middle_of_body(const pages::Flag& flag) {
    return flag.left + (flag.width + (flag.points_right ? -point_length : point_length)) / 2;
}

PdfDictionary annotation(const char* type, const PdfArray& box, PdfReference page, int key,
                         PdfReference appearance) {
    return {{"Type", PdfName{"Annot"}},
            {"Subtype", PdfName{type}},
            {"Rect", box},
            {"P", page},
            {"F", print_flag},
            {"StructParent", key},
            {"T", PdfText{author}},
            {"AP", PdfDictionary{{"N", appearance}}}};
}

}

PdfReference NoteWriter::multiply() {
    if (!multiply_)
        multiply_ = file_.add({{"Type", PdfName{"ExtGState"}}, {"BM", PdfName{"Multiply"}}});
    return *multiply_;
}

PdfReference NoteWriter::flag_appearance(const pages::Note& note, const fonts::Face& face) {
    ContentStream stream;
    stream.set_colour(note.flag_colour);
    draw_flag(stream, note.flag);
    stream.set_colour(figure_colour);
    draw_figures(stream, face, note.number, middle_of_body(note.flag),
                 note.flag.bottom + note.flag.height / 2);
    return file_.add_stream({{"Type", PdfName{"XObject"}},
                             {"Subtype", PdfName{"Form"}},
                             {"BBox", box_of(note.flag)},
                             {"Resources", PdfDictionary{}}},
                            stream.bytes());
}

PdfReference NoteWriter::words_appearance(const pages::Note& note, const PdfArray& box) {
    ContentStream stream;
    stream.set_graphics_state("M");
    stream.set_colour(note.words_colour);
    for (const pages::TextArea& area : note.words)
        stream.rectangle(area.left, area.bottom, area.right - area.left, area.top - area.bottom);
    const PdfDictionary states{{"M", multiply()}};
    return file_.add_stream({{"Type", PdfName{"XObject"}},
                             {"Subtype", PdfName{"Form"}},
                             {"BBox", box},
                             {"Resources", PdfDictionary{{"ExtGState", states}}}},
                            stream.bytes());
}

void NoteWriter::write_flag(const pages::Note& note, const NoteObjects& objects, PdfReference page,
                            const fonts::Face& face) {
    PdfDictionary flag =
        annotation("Text", box_of(note.flag), page, objects.flag_key, flag_appearance(note, face));
    flag.push_back({"Name", PdfName{"Note"}});
    flag.push_back({"Subj", PdfText{note.subject}});
    flag.push_back({"Contents", PdfText{note.full}});
    flag.push_back({"C", colour_array(note.flag_colour)});
    file_.set(objects.flag, flag);
}

void NoteWriter::write_words(const pages::Note& note, const NoteObjects& objects,
                             PdfReference page) {
    const PdfArray box = box_of(note.words);
    PdfDictionary words =
        annotation("Highlight", box, page, objects.words_key, words_appearance(note, box));
    words.push_back({"QuadPoints", quad_points(note.words)});
    words.push_back({"Subj", PdfText{note.subject}});
    words.push_back({"Contents", PdfText{note.brief}});
    words.push_back({"C", colour_array(note.words_colour)});
    words.push_back({"IRT", objects.flag});
    words.push_back({"RT", PdfName{"Group"}});
    file_.set(objects.words, words);
}

}

// Metrics and flags from the face's own tables.
#include "compiler/stages/pdf/font_descriptor.hpp"

#include "compiler/base/ascii.hpp"

#include <hb-ot.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

namespace quoin::pdf {

namespace {

enum FontFlag : int { fixed_pitch = 1, serif = 2, symbolic = 4, italic = 64 }; // table 123

class FontTable { // of an sfnt; what lies past its end reads as 0
public:
    FontTable(const fonts::Face& face, hb_tag_t tag)
        : blob_(hb_face_reference_table(face.hb_face(), tag)) {
        bytes_ = hb_blob_get_data(blob_, &length_);
    }
    ~FontTable() { hb_blob_destroy(blob_); }
    FontTable(const FontTable&) = delete;
    FontTable& operator=(const FontTable&) = delete;

    int byte(unsigned offset) const {
        return offset < length_ ? static_cast<unsigned char>(bytes_[offset]) : 0;
    }
    int int16(unsigned offset) const {
        return static_cast<std::int16_t>(byte(offset) << 8 | byte(offset + 1));
    }

private:
    hb_blob_t* blob_;
    const char* bytes_ = nullptr;
    unsigned length_ = 0;
};

// As far as the face says (OpenType, OS/2 table): PANOSE styles 2 to 10 of a Latin text face,
// family classes 1 to 5 and 7.
bool has_serifs(const FontTable& os2) {
    constexpr unsigned family_class = 30, panose = 32;
    const int kind = os2.byte(family_class);
    if (os2.byte(panose) == 2 && os2.byte(panose + 1) >= 2 && os2.byte(panose + 1) <= 10)
        return true;
    return (kind >= 1 && kind <= 5) || kind == 7;
}

int flags(const fonts::Face& face) {
    const FontTable os2(face, HB_TAG('O', 'S', '/', '2')), post(face, HB_TAG('p', 'o', 's', 't'));
    int value = symbolic; // the subset's own encoding
    if (has_serifs(os2)) value |= serif;
    if (post.int16(12) != 0 || post.int16(14) != 0) value |= fixed_pitch;
    if (hb_style_get_value(face.hb_font(), HB_STYLE_TAG_SLANT_ANGLE) != 0) value |= italic;
    return value;
}

int thousandths(const fonts::Face& face, int units) {
    return static_cast<int>(std::lround(units * 1000.0 / face.units_per_em()));
}

PdfArray bounding_box(const fonts::Face& face) {
    const FontTable head(face, HB_TAG('h', 'e', 'a', 'd'));
    PdfArray box;
    for (const unsigned offset : {36U, 38U, 40U, 42U})
        box.push_back(thousandths(face, head.int16(offset)));
    return box;
}

// No table has the stems' width, which matters only to a substitute for a font that is not
// embedded. A fifth of the weight is near it: 80 for 400, 140 for 700.
int stem_width(const fonts::Face& face) {
    return static_cast<int>(
        std::lround(hb_style_get_value(face.hb_font(), HB_STYLE_TAG_WEIGHT) / 5));
}

}

// PostScript names are ASCII without delimiters; any other character is left out.
std::string postscript_name(const fonts::Face& face) {
    std::array<char, 64> name{};
    unsigned length = name.size();
    hb_ot_name_get_utf8(face.hb_face(), HB_OT_NAME_ID_POSTSCRIPT_NAME, HB_LANGUAGE_INVALID, &length,
                        name.data());
    std::string text(name.data(), std::min<std::size_t>(length, name.size() - 1));
    std::erase_if(text, [](char c) { return !is_letter_or_figure(c) && c != '-'; });
    return text.empty() ? "Font" : text;
}

PdfDictionary font_descriptor(const fonts::Face& face) {
    hb_font_extents_t line{};
    hb_font_get_h_extents(face.hb_font(), &line);
    const double slant = hb_style_get_value(face.hb_font(), HB_STYLE_TAG_SLANT_ANGLE);
    return {{"Type", PdfName{"FontDescriptor"}},
            {"Flags", flags(face)},
            {"FontBBox", bounding_box(face)},
            {"ItalicAngle", PdfReal{slant, 1}},
            {"Ascent", thousandths(face, line.ascender)},
            {"Descent", thousandths(face, line.descender)},
            {"CapHeight", thousandths(face, face.cap_height())},
            {"StemV", stem_width(face)}};
}

}

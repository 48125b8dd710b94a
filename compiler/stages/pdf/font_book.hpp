// The fonts of a document: every face shown, cut down to what is shown of it.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/pdf/objects.hpp"
#include "compiler/stages/pdf/shown_glyphs.hpp"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::pdf {

// How a glyph is shown: its code in one of the fonts, and the width that a reader takes it to have.
struct FontCode {
    std::uint32_t font = 0; // index into the book's fonts
    std::uint32_t code = 0;
    double width = 0; // 1/1000 em
};

constexpr int width_decimals = 2; // of the widths written, at 1/1000 em

// A glyph that stands for different texts in different places, as a hyphen does, has a font for
// each: the fonts of one face share its program and differ in their ToUnicode maps.
class FontBook {
public:
    FontBook(const composition::Composition& composition, const pages::Pages& pages, PdfFile& file);

    FontCode code(const fonts::Face& face, const ShownGlyph& glyph) const;
    const std::string& name(std::uint32_t font) const { return names_[font]; } // `F1`
    PdfDictionary resources() const;

private:
    struct Entry { // of one glyph of a face
        std::vector<std::string_view> texts;
        std::uint32_t code = 0;
        double width = 0;
    };
    struct Shown { // of one face
        const fonts::Face* face = nullptr;
        std::map<std::uint32_t, Entry> glyphs;
        std::uint32_t first_font = 0;
    };

    Shown& shown(const fonts::Face& face);
    void note(const composition::Paragraph& paragraph, const pages::PlacedRun& placed);
    void embed(Shown& shown, PdfFile& file);

    std::vector<Shown> faces_; // in order of first use
    std::vector<std::string> names_;
    std::vector<PdfReference> fonts_;
};

}

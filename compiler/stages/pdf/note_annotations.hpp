// Notes as annotations: a highlight over the words (ISO 32000-1, section 12.5.6.10) and a text
// annotation in the margin (12.5.6.4), each with an appearance of its own, for PDF/A-2 (6.3.3) lets
// no viewer make one up. The two are a group (12.5.6.2), the margin's note its head.
#pragma once

#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/pages/notes.hpp"
#include "compiler/stages/pdf/objects.hpp"

#include <optional>

namespace quoin::pdf {

// Of an annotation, table 165: PDF/A-2, 6.3.2 asks for Print. It recommends NoZoom too, which would
// leave the figures of a note small for those who enlarge a page to read it.
constexpr int print_flag = 4;

struct NoteObjects { // reserved, with the keys the structure tree gave them
    PdfReference flag, words;
    int flag_key = 0, words_key = 0;
};

class NoteWriter {
public:
    explicit NoteWriter(PdfFile& file) : file_(file) {}

    // The figures are drawn as outlines of `face`, so that no reader takes them for text.
    void write_flag(const pages::Note& note, const NoteObjects& objects, PdfReference page,
                    const fonts::Face& face);
    void write_words(const pages::Note& note, const NoteObjects& objects, PdfReference page);

private:
    PdfReference flag_appearance(const pages::Note& note, const fonts::Face& face);
    PdfReference words_appearance(const pages::Note& note, const PdfArray& box);
    PdfReference multiply(); // the graphics state that lets text show through

    PdfFile& file_;
    std::optional<PdfReference> multiply_;
};

}

// What a reader gets of a PDF: words at their places, in lines, in the order they are read.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct ReadBox { // pt, from the page's upper left corner
    double left = 0, top = 0, right = 0, bottom = 0;

    double width() const { return right - left; }
    double height() const { return bottom - top; }
    double middle() const { return (top + bottom) / 2; }
};

struct ReadWord {
    std::string text; // never empty
    ReadBox box;
};

struct ReadLine {
    std::size_t page = 0;  // from 0
    std::size_t block = 0; // lines of one paragraph or column part share it
    ReadBox box;
    std::vector<ReadWord> words; // never empty

    std::string text() const;
};

struct ReadPage {
    double width = 0, height = 0;
};

struct Reading {
    std::vector<ReadPage> pages;
    std::vector<ReadLine> lines;

    std::size_t word_count() const;
    std::string text() const; // lines, an empty one between blocks, a form feed between pages
};

// From `pdftotext -bbox-layout` (lines and blocks as poppler sees them) or `pdftotext -raw -bbox`
// (the order of the file; a line ends where the next word stands elsewhere).
Reading read_boxes(std::string_view xml);

// The height of most of the letters, in pt.
double usual_height(const Reading& reading);

}

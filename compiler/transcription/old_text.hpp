// An old document as lines, with what is known of each: whatever it was written with, what comes
// after reads these.
#pragma once

#include <cstddef>
#include <limits>
#include <string>
#include <vector>

namespace quoin::transcription {

struct OldWord {
    std::string text; // never empty, without spaces
    double left = 0, right = 0;
    std::size_t font = 0; // those that look alike have one number
    double size = 0;
    bool strong = false, slanted = false;
    bool apart = false; // white before it that is wider than a space: a tab, a cell, a column
};

constexpr double no_edge = std::numeric_limits<double>::max();

struct OldLine {
    std::vector<OldWord> words; // never empty
    std::size_t page = 0;
    double top = 0, bottom = 0;
    double column_right = no_edge; // as far as lines reach here; none where paragraphs are whole
    double gap = 0;                // white above, in heights of its letters
    bool listed = false;           // the document calls it an item of a list
    int depth = 1;                 // of the list
    bool heading = false;          // the document calls it a heading
    bool running = false;          // a page's own head or foot, such as its number

    double left() const { return words.front().left; }
    double right() const { return words.back().right; }
    double size() const { return words.front().size; }
    double height() const { return bottom - top; }
    std::string text() const;
};

struct OldDocument {
    std::vector<OldLine> lines;       // in the order they are read
    std::vector<std::string> remarks; // what is in it and is no text: pictures, drawings
    bool boxes = true;                // the places of its words are known, as on a page
};

std::string joined_words(const std::vector<OldWord>& words, std::size_t begin, std::size_t end);

}

// Paragraphs that flow, as word processors have them, to lines: their places on a page are not
// known, so that words are set one after the other from where the paragraph is indented to.
#pragma once

#include "compiler/transcription/old_text.hpp"

#include <string_view>
#include <vector>

namespace quoin::transcription {

struct ParagraphLook {
    double left = 0;  // pt, its indentation
    double above = 0; // pt, white
    bool listed = false;
    int depth = 1;
    bool heading = false;
};

struct LetterLook {
    std::size_t font = 0;
    double size = 11;
    bool strong = false, slanted = false;
};

class Flow {
public:
    void begin_paragraph(const ParagraphLook& look);
    void add_text(std::string_view text, const LetterLook& look);
    void add_tab();
    void break_line(); // within the paragraph
    void end_paragraph();

    void begin_table();
    void begin_row();
    void begin_cell();
    void end_cell();
    void end_row();
    void end_table();

    bool in_paragraph() const { return open_; }
    std::vector<OldLine> result();

private:
    struct Row {
        std::vector<std::vector<OldLine>> cells;
    };
    std::vector<OldLine>& lines();
    void go_on();
    void close_word();
    void close_line();
    void add_lines_of(Row row);

    std::vector<OldLine> lines_;
    std::vector<Row> rows_; // of tables within each other that are open
    ParagraphLook paragraph_;
    bool open_ = false;
    OldLine line_;
    OldWord word_;
    double at_ = 0; // across the line
    double white_ = 0;
    bool apart_ = false;
};

}

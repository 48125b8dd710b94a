#include "compiler/transcription/flow.hpp"

#include "compiler/transcription/page_rows.hpp"

#include "compiler/base/strange_signs.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace quoin::transcription {

namespace {

constexpr double letter = 0.5;                 // of the size: as wide as letters are, more or less
constexpr double cell_width = 150;             // pt, one table column
constexpr std::size_t most_lines_of_label = 6; // of a cell that says what stands beside it

void move_right(OldLine& line, double by) {
    for (OldWord& word : line.words) {
        word.left += by;
        word.right += by;
    }
}

}

std::vector<OldLine>& Flow::lines() {
    if (rows_.empty()) return lines_;
    if (rows_.back().cells.empty()) rows_.back().cells.emplace_back();
    return rows_.back().cells.back();
}

void Flow::begin_paragraph(const ParagraphLook& look) {
    if (open_) end_paragraph();
    paragraph_ = look;
    open_ = true;
    white_ = std::max(white_, look.above / 12);
    at_ = look.left;
}

void Flow::add_text(std::string_view text, const LetterLook& look) {
    if (!open_) go_on();
    const std::string plain = plain_signs(text, kept_signs(text));
    for (std::string_view left = plain; !left.empty();) {
        const Character character = take_character(left);
        const bool blank = character.code <= U' ' || character.code == U'\u00A0' ||
                           (character.code >= U'\u2000' && character.code <= U'\u200A');
        if (blank) {
            close_word();
            at_ += letter * look.size;
            continue;
        }
        if (word_.text.empty())
            word_ = {"", at_, at_, look.font, look.size, look.strong, look.slanted, apart_};
        word_.text += character.bytes;
        at_ += letter * look.size;
        word_.right = at_;
    }
}

// After a box of text within a paragraph, its rest.
void Flow::go_on() {
    paragraph_.listed = false;
    begin_paragraph(paragraph_);
}

void Flow::add_tab() {
    if (!open_) return;
    close_word();
    constexpr double stop = 36; // pt
    at_ = (std::floor(at_ / stop) + 1) * stop;
    apart_ = true;
}

void Flow::close_word() {
    if (word_.text.empty()) return;
    if (line_.words.empty()) word_.apart = false;
    line_.words.push_back(std::exchange(word_, {}));
    apart_ = false;
}

void Flow::close_line() {
    close_word();
    apart_ = false;
    at_ = paragraph_.left;
    if (line_.words.empty()) {
        white_ = std::max(white_, 1.0);
        return;
    }
    close_up(line_.words);
    line_.bottom = line_.size();
    line_.gap = std::exchange(white_, 0);
    line_.listed = paragraph_.listed;
    line_.depth = paragraph_.depth;
    line_.heading = paragraph_.heading;
    lines().push_back(std::exchange(line_, {}));
}

void Flow::break_line() {
    if (!open_ || (line_.words.empty() && word_.text.empty())) return;
    close_line();
    paragraph_.listed = false; // it goes on
}

void Flow::end_paragraph() {
    if (!open_) return;
    close_line();
    open_ = false;
}

void Flow::begin_table() {
    end_paragraph();
}

void Flow::begin_row() {
    rows_.emplace_back();
}

void Flow::begin_cell() {
    if (!rows_.empty()) rows_.back().cells.emplace_back();
}

void Flow::end_cell() {
    end_paragraph();
    white_ = 0;
}

void Flow::end_row() {
    end_paragraph();
    if (rows_.empty()) return;
    Row row = std::move(rows_.back());
    rows_.pop_back();
    add_lines_of(std::move(row));
}

void Flow::end_table() {
    end_paragraph();
    white_ = std::max(white_, 0.5);
}

// Cells with much in them are columns, read one after the other; else a row's lines stand level.
void Flow::add_lines_of(Row row) {
    std::erase_if(row.cells, [](const auto& cell) { return cell.empty(); });
    std::size_t most = 0, second = 0;
    for (const auto& cell : row.cells) {
        second = std::max(second, std::min(most, cell.size()));
        most = std::max(most, cell.size());
    }
    std::vector<OldLine>& to = lines();
    if (second > most_lines_of_label) {
        for (auto& cell : row.cells) {
            cell.front().gap = 1;
            std::ranges::move(cell, std::back_inserter(to));
        }
        return;
    }
    for (std::size_t i = 0; i < most; ++i) {
        OldLine level;
        double left = 0;
        for (auto& cell : row.cells) {
            if (i < cell.size()) {
                move_right(cell[i], left);
                if (level.words.empty()) {
                    level = std::move(cell[i]);
                } else {
                    cell[i].words.front().apart = true;
                    std::ranges::move(cell[i].words, std::back_inserter(level.words));
                }
            }
            left += cell_width;
        }
        to.push_back(std::move(level));
    }
}

std::vector<OldLine> Flow::result() {
    end_paragraph();
    while (!rows_.empty())
        end_row();
    return std::move(lines_);
}

}

#include "compiler/stages/pages/notes.hpp"

#include <algorithm>
#include <tuple>

namespace quoin::pages {

namespace {

constexpr double flag_height = flag_figures + 3; // pt: air above and below
constexpr double figure_width = 4.6;             // pt
constexpr double flag_ends = 7;                  // pt: air on either side, and the point
constexpr double away_from_text = 4;             // pt, from the text
constexpr double apart = 1.5;                    // pt, of two flags
constexpr double paper_edge = 9;                 // pt, that printers leave blank

struct Row { // of flags, on one side of one page
    std::size_t page = 0;
    bool left = true;
    double bottom = 0;
    double width = 0;
    std::vector<Note*> notes; // in the order of their numbers

    bool shares_side_with(const Row& other) const {
        return page == other.page && left == other.left;
    }
};

double width_of(const Note& note) {
    return flag_ends + figure_width * static_cast<double>(note.number.size());
}

// Level with what the note is beside.
Row row_of(Note& note, const Pages& pages) {
    return {note.page,
            note.beside.left < pages.width / 2,
            (note.beside.bottom + note.beside.top - flag_height) / 2,
            width_of(note),
            {&note}};
}

// The notes of one line share a row, and those that the margin does not hold have one more.
std::vector<Row> rows_of(std::vector<Note>& notes, const Pages& pages, double room) {
    std::vector<Row> lines;
    for (Note& note : notes)
        lines.push_back(row_of(note, pages));
    std::ranges::stable_sort(
        lines, {}, [](const Row& row) { return std::tuple(row.page, row.left, -row.bottom); });
    std::vector<Row> rows;
    for (Row& next : lines) {
        const bool joins = !rows.empty() && rows.back().shares_side_with(next) &&
                           rows.back().bottom - next.bottom < flag_height / 2 &&
                           rows.back().width + apart + next.width <= room;
        if (!joins) {
            rows.push_back(std::move(next));
            continue;
        }
        rows.back().width += apart + next.width;
        rows.back().notes.push_back(next.notes.front());
    }
    return rows;
}

// Each row under the one above it, and up again from the paper's edge.
void part(std::vector<Row>& rows) {
    constexpr double step = flag_height + apart;
    for (std::size_t i = 1; i < rows.size(); ++i)
        if (rows[i].shares_side_with(rows[i - 1]))
            rows[i].bottom = std::min(rows[i].bottom, rows[i - 1].bottom - step);
    for (std::size_t i = rows.size(); i-- > 0;) {
        const bool last = i + 1 == rows.size() || !rows[i].shares_side_with(rows[i + 1]);
        rows[i].bottom = std::max(rows[i].bottom, last ? paper_edge : rows[i + 1].bottom + step);
    }
}

}

void place_flags(std::vector<Note>& notes, const Pages& pages, double margin) {
    std::vector<Row> rows = rows_of(notes, pages, margin - away_from_text - paper_edge);
    part(rows);
    for (const Row& row : rows) {
        double left =
            row.left ? margin - away_from_text - row.width : pages.width - margin + away_from_text;
        for (Note* note : row.notes) {
            note->flag = {left, row.bottom, width_of(*note), flag_height, row.left};
            left += note->flag.width + apart;
        }
    }
}

}

// Tables whose columns are parts of a posting, side by side: `Minimum | Preferred`. Their lines are
// told column by column. The rows of one with a column more, `| Required | Preferred`, begin with
// what they are about.
#pragma once

#include "compiler/postings/lines.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace quoin::postings {

// Told of each beginning and end when the lines before it are whole.
class TableColumns {
public:
    explicit TableColumns(std::vector<Line>& lines) : lines_(lines) {}

    void start_table() { tables_.emplace_back(); }
    void start_row();
    void start_cell();
    void end_row();
    void end_table();
    void end_tables() { // at the end of a page that closes none
        while (!tables_.empty())
            end_table();
    }

    // Of the table being read: each of its cells is lines of its own.
    bool parted() const { return !tables_.empty() && !tables_.back().columns.empty(); }

private:
    struct Table {
        std::size_t begin = 0; // of its lines, or of those that no column has yet
        std::size_t rows = 0, cell = 0;
        std::vector<std::vector<Line>> columns;
        bool labelled = false; // the first cell of each row says what the others are about
        Line label;            // of the row being read
    };

    void keep_cell();
    void keep_in(std::vector<Line>& column, const Line& label, std::span<Line> cell) const;
    void part_by_heads(Table& table);

    std::vector<Line>& lines_;
    std::vector<Table> tables_; // each within the one before
};

}

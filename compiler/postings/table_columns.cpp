#include "compiler/postings/table_columns.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/postings/headings.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace quoin::postings {

void TableColumns::start_row() {
    if (tables_.empty()) return;
    if (tables_.back().rows++ == 0) tables_.back().begin = lines_.size();
    tables_.back().cell = 0;
}

void TableColumns::start_cell() {
    if (tables_.empty()) return;
    keep_cell();
    ++tables_.back().cell;
}

void TableColumns::end_row() {
    if (tables_.empty()) return;
    keep_cell();
    if (tables_.back().rows == 1) part_by_heads(tables_.back());
}

void TableColumns::end_table() {
    if (tables_.empty()) return;
    for (std::vector<Line>& column : tables_.back().columns)
        std::ranges::move(column, std::back_inserter(lines_));
    tables_.pop_back();
}

void TableColumns::keep_cell() {
    Table& table = tables_.back();
    if (table.columns.empty() || table.cell == 0) return;
    const auto from = lines_.begin() + static_cast<std::ptrdiff_t>(table.begin);
    std::move(from, lines_.end(),
              std::back_inserter(table.columns[std::min(table.cell, table.columns.size()) - 1]));
    lines_.erase(from, lines_.end());
}

// If each cell of the first row is the heading of a part, and not all of one.
void TableColumns::part_by_heads(Table& table) {
    std::vector<Line> heads;
    std::vector<Part> parts;
    for (std::size_t i = table.begin; i < lines_.size(); ++i)
        for (const std::string_view head : pieces_of(lines_[i].text, " - ")) {
            heads.push_back({std::string(head), true, false, false, true, lines_[i].number});
            parts.push_back(part_headed(head));
        }
    if (heads.size() < 2 || heads.size() != table.cell) return;
    if (!std::ranges::all_of(parts, &Part::known)) return;
    if (std::ranges::all_of(
            parts, [&](const Part& part) { return part.standing == parts.front().standing; }))
        return;
    lines_.resize(table.begin);
    for (Line& head : heads)
        table.columns.push_back({std::move(head)});
}

}

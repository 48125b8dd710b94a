#include "compiler/postings/table_columns.hpp"

#include "compiler/base/lists.hpp"
#include "compiler/postings/headings.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace quoin::postings {

namespace {

// `Criterion | Essential | Desirable`, `Skills | Required | Preferred`: the first column says what
// its rows are about.
bool names_rows(const std::vector<Part>& parts) {
    if (parts.size() < 3) return false;
    const auto is_like_first = [&](const Part& part) {
        return part.known && part.standing == parts.front().standing;
    };
    return !parts.front().known || std::any_of(parts.begin() + 1, parts.end(), is_like_first);
}

}

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
    const std::span<Line> cell = std::span(lines_).subspan(table.begin);
    const std::size_t before = table.labelled ? 1 : 0;
    if (table.cell == before)
        table.label = cell.empty() ? Line{} : cell.front();
    else
        keep_in(table.columns[std::min(table.cell - before, table.columns.size()) - 1], table.label,
                cell);
    lines_.resize(table.begin);
}

// A row is about what a part is called (`Education`) or about a thing (`Spanish`), of which a cell
// says how well it is to be known or, by a tick, that it is.
void TableColumns::keep_in(std::vector<Line>& column, const Line& label,
                           std::span<Line> cell) const {
    if (label.text.empty() || part_headed(label.text).known) {
        std::ranges::move(cell, std::back_inserter(column));
        return;
    }
    constexpr std::string_view ticks[] = {"x", "X", "\u2713", "\u2714", "\u2022", "yes", "Yes"};
    for (Line& line : cell) {
        const bool tick = std::ranges::find(ticks, line.text) != std::end(ticks);
        line.text = tick ? label.text : label.text + " - " + line.text;
        line.item = true;
        column.push_back(std::move(line));
    }
}

// If each cell of the first row, or each but the first, is the heading of a part, and not all of
// one.
void TableColumns::part_by_heads(Table& table) {
    std::vector<Line> heads;
    std::vector<Part> parts;
    for (std::size_t i = table.begin; i < lines_.size(); ++i)
        for (const std::string_view head : pieces_of(lines_[i].text, " - ")) {
            heads.push_back({std::string(head), true, false, false, true, lines_[i].number});
            parts.push_back(part_headed(head));
        }
    const bool titled = heads.size() == table.cell; // the first column too
    table.labelled = heads.size() + 1 == table.cell || (titled && names_rows(parts));
    if (table.labelled && titled) {
        heads.erase(heads.begin());
        parts.erase(parts.begin());
    }
    if (heads.size() < 2 || (!titled && !table.labelled)) return;
    if (!std::ranges::all_of(parts, &Part::known)) return;
    if (std::ranges::all_of(
            parts, [&](const Part& part) { return part.standing == parts.front().standing; }))
        return;
    lines_.resize(table.begin);
    for (Line& head : heads)
        table.columns.push_back({std::move(head)});
}

}

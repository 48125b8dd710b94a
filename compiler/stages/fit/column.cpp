// One account of the vertical for the fit and the pages, so that they cannot disagree.
#include "compiler/stages/fit/column.hpp"

#include <algorithm>
#include <numeric>
#include <optional>

namespace quoin::fit {

namespace {

void add_rule(Height& height, const composition::Paragraph& paragraph) {
    height.fixed += paragraph.rule_gap;
    height.points += paragraph.rule_thickness;
}

// The least of each part.
Height least_of(const Height& a, const Height& b) {
    Height least{
        std::min(a.fixed, b.fixed), std::min(a.lines, b.lines), {}, std::min(a.points, b.points)};
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        least.gaps[i] = std::min(a.gaps[i], b.gaps[i]);
    return least;
}

bool is_of_heading(const ColumnLine& line) {
    const theme::GapName gap = line.gap;
    return line.is_first() && (gap == theme::GapName::header || gap == theme::GapName::contact);
}

// That a page opens with which begins with this line.
const composition::Paragraph* continued_above(const ColumnLine& line, std::size_t page) {
    return page > 0 ? line.continued : nullptr;
}

bool has_rule(const ColumnLine& line, theme::RuleAt where) {
    return line.paragraph->rule == where &&
           (where == theme::RuleAt::above ? line.is_first() : line.is_last());
}

}

double Height::at(const PageSetting& setting) const {
    double em = fixed + lines * setting.leading;
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        em += gaps[i] * setting.gaps[i];
    return em * setting.size + points;
}

Height& Height::add(const Height& more, double times) {
    fixed += times * more.fixed;
    lines += times * more.lines;
    points += times * more.points;
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        gaps[i] += times * more.gaps[i];
    return *this;
}

namespace {

// For each list of entries of one line, whether one of them takes two.
std::vector<bool> open_lists(const composition::Composition& composition,
                             std::span<const int> line_counts) {
    std::vector<bool> open(1, false);
    for (std::size_t p = 0; p < composition.paragraphs.size(); ++p) {
        const std::uint32_t list = composition.paragraphs[p].list;
        if (list >= open.size()) open.resize(list + std::size_t{1}, false);
        if (list > 0 && line_counts[p] > 1) open[list] = true;
    }
    return open;
}

// A heading itself needs none above it.
const composition::Paragraph* continued_of(const composition::Composition& composition,
                                           const composition::Paragraph& paragraph) {
    const bool none = paragraph.section == 0 || paragraph.style == theme::StyleName::section ||
                      paragraph.section >= composition.continued.size();
    return none ? nullptr : &composition.continued[paragraph.section];
}

// The column of each of a block's paragraphs: in order, the highest as low as can be, none empty.
std::vector<std::uint32_t> shared_out(std::span<const int> counts, std::uint32_t columns) {
    std::vector<std::uint32_t> shared;
    const int all = std::accumulate(counts.begin(), counts.end(), 0);
    const int evenly = (all + static_cast<int>(columns) - 1) / static_cast<int>(columns);
    for (int most = std::max(std::ranges::max(counts), evenly);; ++most) {
        shared.clear();
        std::uint32_t column = 0;
        int height = 0;
        for (const int count : counts) {
            const std::size_t left = counts.size() - shared.size();
            if (height + count > most || (height > 0 && left < columns - column)) {
                ++column;
                height = 0;
            }
            height += count;
            shared.push_back(column);
        }
        if (shared.back() < columns) return shared;
    }
}

// One line of each column a row; the first of a row carries its height.
void add_rows(std::span<const ColumnLine> block, std::span<const std::uint32_t> columns,
              std::vector<ColumnLine>& lines) {
    std::vector<std::vector<ColumnLine>> by_column(columns.back() + std::size_t{1});
    for (ColumnLine line : block) {
        line.block_column = columns[line.paragraph_index - block.front().paragraph_index];
        by_column[line.block_column].push_back(line);
    }
    bool any = true;
    for (std::size_t row = 0; any; ++row) {
        any = false;
        for (const std::vector<ColumnLine>& column : by_column) {
            if (row >= column.size()) continue;
            ColumnLine line = column[row];
            if (any || row > 0) line.gap = theme::GapName::none;
            line.held = any || row > 0;
            line.beside = any;
            any = true;
            lines.push_back(line);
        }
    }
}

// The lines of each block row by row; those of other paragraphs as they are.
std::vector<ColumnLine> in_rows(const std::vector<ColumnLine>& lines,
                                std::span<const int> line_counts) {
    std::vector<ColumnLine> rows;
    for (std::size_t begin = 0, end = 0; begin < lines.size(); begin = end) {
        const composition::Paragraph& paragraph = *lines[begin].paragraph;
        for (end = begin + 1; paragraph.block > 0 && end < lines.size() &&
                              lines[end].paragraph->block == paragraph.block;)
            ++end;
        if (paragraph.block == 0) {
            rows.push_back(lines[begin]);
            continue;
        }
        const std::span block(lines.begin() + static_cast<std::ptrdiff_t>(begin), end - begin);
        const std::size_t first = block.front().paragraph_index;
        const std::size_t count = block.back().paragraph_index - first + 1;
        add_rows(block, shared_out(line_counts.subspan(first, count), paragraph.block_columns),
                 rows);
    }
    return rows;
}

// A heading in the margin: each line of it on the baseline of one of its section's.
std::vector<ColumnLine> beside_headings(const std::vector<ColumnLine>& lines) {
    std::vector<ColumnLine> rows;
    for (std::size_t at = 0; at < lines.size();) {
        if (!lines[at].paragraph->in_margin) {
            rows.push_back(lines[at++]);
            continue;
        }
        const std::span heading(lines.begin() + static_cast<std::ptrdiff_t>(at), lines[at].lines);
        at += heading.size();
        for (ColumnLine line : heading) {
            const std::size_t row = rows.size();
            const auto goes_on = [&] {
                return at < lines.size() && !lines[at].paragraph->in_margin;
            };
            if (line.is_first()) rows.push_back(line);
            if (goes_on()) rows.push_back(lines[at++]);
            while (goes_on() && lines[at].beside)
                rows.push_back(lines[at++]);
            if (!line.is_first()) rows.push_back(line);
            for (std::size_t i = row; i < rows.size(); ++i) {
                rows[i].held = rows[i].held || !(line.is_first() && i == row);
                rows[i].beside = i > row;
            }
        }
    }
    return rows;
}

Column column_without(const composition::Composition& composition, std::span<const int> line_counts,
                      std::optional<composition::Region> other) {
    Column column;
    const std::vector<bool> open = open_lists(composition, line_counts);
    column.lines.reserve(
        static_cast<std::size_t>(std::accumulate(line_counts.begin(), line_counts.end(), 0)));
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p) {
        if (composition.paragraphs[p].region == other) continue;
        const composition::Paragraph& paragraph = composition.paragraphs[p];
        const bool opens = open[paragraph.list] && paragraph.gap == theme::GapName::line;
        const theme::GapName gap = opens ? theme::GapName::entry : paragraph.gap;
        const composition::Paragraph* continued = continued_of(composition, paragraph);
        const auto lines = static_cast<std::uint32_t>(line_counts[p]);
        for (std::uint32_t line = 0; line < lines; ++line)
            column.lines.push_back({&paragraph, p, line, lines, gap, continued});
    }
    const auto any = [&](auto is_so) { return std::ranges::any_of(composition.paragraphs, is_so); };
    if (any([](const composition::Paragraph& at) { return at.block > 0; }))
        column.lines = in_rows(column.lines, line_counts);
    if (any(&composition::Paragraph::in_margin)) column.lines = beside_headings(column.lines);
    if (!composition.running_head.runs.empty()) column.running_head = &composition.running_head;
    return column;
}

}

Column make_column(const composition::Composition& composition, std::span<const int> line_counts) {
    return column_without(composition, line_counts, std::nullopt);
}

std::vector<Column> make_columns(const composition::Composition& composition,
                                 std::span<const int> line_counts) {
    const bool two =
        std::ranges::find(composition.paragraphs, composition::Region::side,
                          &composition::Paragraph::region) != composition.paragraphs.end();
    if (!two) return {make_column(composition, line_counts)};
    return {column_without(composition, line_counts, composition::Region::side),
            column_without(composition, line_counts, composition::Region::main)};
}

Height to_opening_baseline(const Column& column, std::size_t line, std::size_t page) {
    const ColumnLine& at = column.lines[line];
    const composition::Paragraph* continued = continued_above(at, page);
    const composition::Paragraph& opening = continued ? *continued : *at.paragraph;
    Height height;
    if (page > 0 && column.running_head != nullptr) {
        height.fixed = column.running_head->ascent;
        height.lines = opening.size;
        height.gaps[static_cast<std::size_t>(theme::GapName::section)] = 1;
    } else {
        height.fixed = opening.ascent;
    }
    const bool ruled =
        continued ? continued->rule == theme::RuleAt::above : has_rule(at, theme::RuleAt::above);
    if (ruled) add_rule(height, opening);
    return height;
}

Height to_first_baseline(const Column& column, std::size_t line, std::size_t page) {
    Height height = to_opening_baseline(column, line, page);
    const ColumnLine& at = column.lines[line];
    const composition::Paragraph* continued = continued_above(at, page);
    if (continued == nullptr) return height;
    height.lines += at.paragraph->size;
    height.gaps[static_cast<std::size_t>(theme::GapName::heading)] += 1;
    if (continued->rule == theme::RuleAt::below) add_rule(height, *continued);
    if (has_rule(at, theme::RuleAt::above)) add_rule(height, *at.paragraph);
    return height;
}

Height to_baseline(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    const ColumnLine& above = column.lines[line - 1];
    Height height;
    if (at.beside) return height;
    if (is_of_heading(at))
        height.fixed = above.paragraph->descent + heading_air + at.paragraph->ascent;
    else
        height.lines = at.paragraph->size;
    if (at.is_first() && at.gap != theme::GapName::none)
        height.gaps[static_cast<std::size_t>(at.gap)] = 1;
    if (has_rule(at, theme::RuleAt::above)) add_rule(height, *at.paragraph);
    if (has_rule(above, theme::RuleAt::below)) add_rule(height, *above.paragraph);
    return height;
}

Height below_baseline(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    Height height;
    height.fixed = at.paragraph->descent;
    if (has_rule(at, theme::RuleAt::below)) add_rule(height, *at.paragraph);
    return height;
}

Height page_height(const Column& column, std::size_t begin, std::size_t end, std::size_t page) {
    Height height;
    if (begin == end) return height;
    height = to_first_baseline(column, begin, page);
    for (std::size_t i = begin + 1; i < end; ++i)
        height.add(to_baseline(column, i));
    return height.add(below_baseline(column, end - 1));
}

ColumnHeights::ColumnHeights(const Column& column) : column_(column) {
    down_.reserve(column.lines.size());
    Height down;
    for (std::size_t i = 0; i < column.lines.size(); ++i) {
        if (i > 0) down.add(to_baseline(column, i));
        down_.push_back(down);
    }
}

Height ColumnHeights::page(std::size_t begin, std::size_t end) const {
    if (begin == end) return {};
    return to_first_baseline(column_, begin, begin > 0 ? 1 : 0)
        .add(down_[end - 1])
        .add(down_[begin], -1)
        .add(below_baseline(column_, end - 1));
}

Height ColumnHeights::least_of_a_break() const {
    Height least;
    for (std::size_t i = 1; i < column_.lines.size(); ++i) {
        const Height added = to_first_baseline(column_, i, 1)
                                 .add(below_baseline(column_, i - 1))
                                 .add(to_baseline(column_, i), -1);
        least = i == 1 ? added : least_of(least, added);
    }
    return least;
}

bool goes_on(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    const theme::GapName gap = at.gap;
    return !at.is_first() || gap == theme::GapName::bullet || gap == theme::GapName::line;
}

bool may_break_before(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    const auto heads_more = [&](std::size_t i) {
        return column.lines[i].paragraph->keep_with_next && column.lines[i].is_last();
    };
    if (at.held || (at.is_first() && line > 0 && heads_more(line - 1))) return false;
    if (!at.is_first() && (at.line < 2 || at.lines - at.line < 2)) return false;
    if (!goes_on(column, line)) return true;
    const bool two_before = line >= 2 && goes_on(column, line - 1) && !heads_more(line - 2);
    const bool two_after = line + 1 < column.lines.size() && goes_on(column, line + 1);
    return two_before && two_after;
}

}

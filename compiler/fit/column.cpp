// One account of the vertical for the fit and the pages, so that they cannot disagree.
#include "compiler/fit/column.hpp"

#include <algorithm>

namespace quoin {

namespace {

constexpr double slack = 1e-6; // pt, for rounding; a hundredth of a point is visible at no size

void add_rule(Height& height, const Paragraph& paragraph) {
    height.fixed += paragraph.rule_gap;
    height.points += paragraph.rule_thickness;
}

void add(Height& height, const Height& more) {
    height.fixed += more.fixed;
    height.lines += more.lines;
    height.points += more.points;
    for (std::size_t i = 0; i < gap_count; ++i)
        height.gaps[i] += more.gaps[i];
}

bool has_rule(const ColumnLine& line, RuleAt where) {
    return line.paragraph->rule == where &&
           (where == RuleAt::above ? line.is_first() : line.is_last());
}

double text_height(const PageSetting& setting) {
    return setting.paper_height - setting.top_margin - setting.bottom_margin + slack;
}

// Whether a line belongs to the same entry as the one above it.
bool goes_on(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    const GapName gap = at.paragraph->gap;
    return !at.is_first() || gap == GapName::bullet || gap == GapName::line;
}

// The line after the last that fits on a page from `begin`.
std::size_t lines_that_fit(const Column& column, const PageSetting& setting, std::size_t begin,
                           std::size_t page) {
    double height = 0;
    for (std::size_t i = begin; i < column.lines.size(); ++i) {
        height +=
            (i == begin ? to_first_baseline(column, i, page) : to_baseline(column, i)).at(setting);
        if (height + below_baseline(column, i).at(setting) > text_height(setting)) return i;
    }
    return column.lines.size();
}

std::size_t page_end(const Column& column, const PageSetting& setting, std::size_t begin,
                     std::size_t page) {
    const std::size_t fit = lines_that_fit(column, setting, begin, page);
    std::size_t end = fit;
    while (end > begin && end < column.lines.size() && !may_break_before(column, end))
        --end;
    if (end > begin) return end;
    return std::max(fit, begin + 1); // what must stay together fills more than a page
}

}

double Height::at(const PageSetting& setting) const {
    double em = fixed + lines * setting.leading;
    for (std::size_t i = 0; i < gap_count; ++i)
        em += gaps[i] * setting.gaps[i];
    return em * setting.size + points;
}

Column make_column(const Composition& composition, std::span<const int> line_counts) {
    Column column;
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p) {
        const auto lines = static_cast<std::uint32_t>(line_counts[p]);
        for (std::uint32_t line = 0; line < lines; ++line)
            column.lines.push_back({&composition.paragraphs[p], p, line, lines});
    }
    if (!composition.running_head.runs.empty()) column.running_head = &composition.running_head;
    return column;
}

Height to_first_baseline(const Column& column, std::size_t line, std::size_t page) {
    const ColumnLine& at = column.lines[line];
    Height height;
    if (page > 0 && column.running_head != nullptr) {
        height.fixed = column.running_head->ascent;
        height.lines = at.paragraph->size;
        height.gaps[static_cast<std::size_t>(GapName::section)] = 1;
    } else {
        height.fixed = at.paragraph->ascent;
    }
    if (has_rule(at, RuleAt::above)) add_rule(height, *at.paragraph);
    return height;
}

Height to_baseline(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    const ColumnLine& above = column.lines[line - 1];
    Height height;
    height.lines = at.paragraph->size;
    if (at.is_first() && at.paragraph->gap != GapName::none)
        height.gaps[static_cast<std::size_t>(at.paragraph->gap)] = 1;
    if (has_rule(at, RuleAt::above)) add_rule(height, *at.paragraph);
    if (has_rule(above, RuleAt::below)) add_rule(height, *above.paragraph);
    return height;
}

Height below_baseline(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    Height height;
    height.fixed = at.paragraph->descent;
    if (has_rule(at, RuleAt::below)) add_rule(height, *at.paragraph);
    return height;
}

Height page_height(const Column& column, std::size_t begin, std::size_t end, std::size_t page) {
    Height height;
    if (begin == end) return height;
    height = to_first_baseline(column, begin, page);
    for (std::size_t i = begin + 1; i < end; ++i)
        add(height, to_baseline(column, i));
    add(height, below_baseline(column, end - 1));
    return height;
}

bool may_break_before(const Column& column, std::size_t line) {
    const ColumnLine& at = column.lines[line];
    if (at.is_first() && line > 0 && column.lines[line - 1].paragraph->keep_with_next) return false;
    if (!at.is_first() && (at.line < 2 || at.lines - at.line < 2)) return false;
    return !goes_on(column, line) || (line >= 2 && goes_on(column, line - 1) &&
                                      line + 1 < column.lines.size() && goes_on(column, line + 1));
}

std::vector<std::size_t> page_begins(const Column& column, const PageSetting& setting) {
    std::vector<std::size_t> begins;
    for (std::size_t at = 0; at < column.lines.size();) {
        begins.push_back(at);
        at = page_end(column, setting, at, begins.size() - 1);
    }
    return begins;
}

double height_beyond(const Column& column, const PageSetting& setting, std::size_t pages) {
    const std::vector<std::size_t> begins = page_begins(column, setting);
    if (begins.size() <= pages) return 0;
    const Height left = page_height(column, begins[pages - 1], column.lines.size(), pages - 1);
    return std::max(0.0, left.at(setting) - text_height(setting));
}

}

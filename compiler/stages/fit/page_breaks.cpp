// A shortest path from the first line to the end, a page a step.
#include "compiler/stages/fit/page_breaks.hpp"

#include "compiler/base/counted_work.hpp"

#include <algorithm>
#include <limits>
#include <tuple>

namespace quoin::fit {

namespace {

// No head of an entry, nor a section's heading.
bool is_body(const Column& column, std::size_t line) {
    return !column.lines[line].paragraph->keep_with_next;
}

// Whether a break before `line` leaves but one paragraph of the entry after it.
bool leaves_one(const Column& column, std::size_t line) {
    const std::size_t next = line + column.lines[line].lines - column.lines[line].line;
    return next == column.lines.size() || !goes_on(column, next);
}

// Whether a break before `line` leaves but one paragraph between it and the entry's head.
bool leads_one(const Column& column, std::size_t line) {
    const ColumnLine& above = column.lines[line - 1];
    const std::size_t first = line - 1 - above.line;
    return first > 0 && is_body(column, line - 1) && goes_on(column, first) &&
           !is_body(column, first - 1);
}

struct PagePath {
    std::size_t cuts = 0; // of what must stay together
    std::size_t pages = std::numeric_limits<std::size_t>::max();
    double cost = 0;
    std::size_t from = 0;

    bool is_reached() const { return pages != std::numeric_limits<std::size_t>::max(); }
    bool operator<(const PagePath& other) const {
        return std::tie(cuts, pages, cost) < std::tie(other.cuts, other.pages, other.cost);
    }
};

double page_cost(const Column& column, const PageHeights& heights, std::size_t begin,
                 std::size_t end) {
    const double full = heights.height(begin, end) / heights.room();
    if (end < column.lines.size()) {
        const double left = std::max(0.0, 1 - full);
        return foot_cost * left * left + break_cost(column, end);
    }
    return begin == 0 ? 0 : thin_cost * std::max(0.0, 1 - full / least_fullness);
}

class Paging {
public:
    Paging(const Column& column, const PageSetting& setting, double more)
        : column_(column), heights_(column, setting), more_(more), paths_(column.lines.size() + 1) {
    }

    std::vector<std::size_t> begins() {
        const std::size_t end = column_.lines.size();
        paths_.front().pages = 0;
        for (std::size_t begin = 0; begin < end; ++begin)
            if (paths_[begin].is_reached()) try_pages(begin);
        std::vector<std::size_t> begins;
        for (std::size_t at = end; at > 0; at = paths_[at].from)
            begins.push_back(paths_[at].from);
        std::reverse(begins.begin(), begins.end());
        return begins;
    }

private:
    void try_pages(std::size_t begin) {
        const std::size_t fit = std::max(heights_.lines_that_fit(begin, more_), begin + 1);
        bool any = false;
        count_work(Work::page_ends, fit - begin);
        for (std::size_t end = fit; end > begin; --end) {
            if (end < column_.lines.size() && !may_break_before(column_, end)) continue;
            offer(begin, end, 0);
            any = true;
        }
        if (!any) offer(begin, fit, 1);
    }

    void offer(std::size_t begin, std::size_t end, std::size_t cuts) {
        PagePath path = paths_[begin];
        path.cuts += cuts;
        ++path.pages;
        path.from = begin;
        path.cost += page_cost(column_, heights_, begin, end);
        if (path < paths_[end]) paths_[end] = path;
    }

    const Column& column_;
    PageHeights heights_;
    double more_;
    std::vector<PagePath> paths_; // to each line as a page's first, and to the end
};

}

double break_cost(const Column& column, std::size_t line) {
    if (!goes_on(column, line)) return 0;
    double cost = entry_cost;
    if (!column.lines[line].is_first()) cost += paragraph_cost;
    if (leaves_one(column, line)) cost += alone_cost;
    if (leads_one(column, line)) cost += led_cost;
    return cost;
}

PageHeights::PageHeights(const Column& column, const PageSetting& setting)
    : room_(setting.paper_height - setting.top_margin - setting.bottom_margin) {
    const std::size_t size = column.lines.size();
    first_.reserve(size);
    down_.reserve(size);
    below_.reserve(size);
    double down = 0;
    for (std::size_t i = 0; i < size; ++i) {
        if (i > 0) down += to_baseline(column, i).at(setting);
        first_.push_back(to_first_baseline(column, i, i > 0 ? 1 : 0).at(setting));
        down_.push_back(down);
        below_.push_back(below_baseline(column, i).at(setting));
    }
}

double PageHeights::height(std::size_t begin, std::size_t end) const {
    if (begin == end) return 0;
    return first_[begin] + (down_[end - 1] - down_[begin]) + below_[end - 1];
}

bool PageHeights::holds(std::size_t begin, std::size_t end) const {
    return height(begin, end) <= room_ + rounding_slack;
}

std::size_t PageHeights::lines_that_fit(std::size_t begin, double more) const {
    std::size_t end = begin;
    while (end < first_.size() && height(begin, end + 1) <= room_ + more + rounding_slack)
        ++end;
    return end;
}

std::vector<std::size_t> page_begins(const Column& column, const PageSetting& setting) {
    return page_begins(column, setting, 0);
}

std::vector<std::size_t> page_begins(const Column& column, const PageSetting& setting,
                                     double more) {
    return Paging(column, setting, more).begins();
}

double pages_cost(const Column& column, const PageSetting& setting,
                  std::span<const std::size_t> begins) {
    const PageHeights heights(column, setting);
    double cost = 0;
    for (std::size_t page = 0; page < begins.size(); ++page)
        cost += page_cost(column, heights, begins[page],
                          page + 1 < begins.size() ? begins[page + 1] : column.lines.size());
    return cost;
}

namespace {

// The line after a page from `begin` that is as full as it can be.
std::size_t full_page_end(const Column& column, const PageHeights& heights, std::size_t begin,
                          double more) {
    const std::size_t fit = std::max(heights.lines_that_fit(begin, more), begin + 1);
    std::size_t end = fit;
    while (end > begin && end < column.lines.size() && !may_break_before(column, end))
        --end;
    return end > begin ? end : fit;
}

// The line after so many full pages.
std::size_t end_of_full_pages(const Column& column, const PageHeights& heights, std::size_t pages,
                              double more) {
    std::size_t at = 0;
    for (std::size_t page = 0; page < pages && at < column.lines.size(); ++page)
        at = full_page_end(column, heights, at, more);
    return at;
}

}

std::vector<std::size_t> full_page_begins(const Column& column, const PageSetting& setting) {
    const PageHeights heights(column, setting);
    std::vector<std::size_t> begins;
    for (std::size_t at = 0; at < column.lines.size();) {
        begins.push_back(at);
        at = full_page_end(column, heights, at, 0);
    }
    return begins;
}

double missing_height(const Column& column, const PageSetting& setting, std::size_t pages) {
    const PageHeights heights(column, setting);
    const std::size_t end = column.lines.size();
    const auto hold = [&](double more) {
        return end_of_full_pages(column, heights, pages, more) == end;
    };
    if (hold(0)) return 0;
    constexpr double finest = 1e-7; // pt
    double low = 0, high = heights.height(0, end);
    while (high - low > finest) {
        const double middle = (low + high) / 2;
        (hold(middle) ? high : low) = middle;
    }
    return high;
}

double height_beyond(const Column& column, const PageSetting& setting, std::size_t pages) {
    const PageHeights heights(column, setting);
    const std::size_t end = column.lines.size();
    const std::size_t last = end_of_full_pages(column, heights, pages - 1, 0);
    return std::max(0.0, heights.height(last, end) - heights.room() - rounding_slack);
}

}

// A shortest path from the first line to the end, a page a step.
#include "compiler/stages/fit/page_breaks.hpp"

#include "compiler/base/counted_work.hpp"

#include <algorithm>
#include <limits>
#include <optional>
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

double page_cost(const Column& column, const PageHeights& heights, std::size_t begin,
                 std::size_t end) {
    const double full = heights.height(begin, end) / heights.room();
    if (end < column.lines.size()) {
        const double left = std::max(0.0, 1 - full);
        return foot_cost * left * left + break_cost(column, end);
    }
    return begin == 0 ? 0 : thin_cost * std::max(0.0, 1 - full / least_fullness);
}

// A line that may be a page's first.
struct PageStart {
    std::size_t line = 0;
    std::size_t end = 0;  // the line after the last that its page holds
    std::size_t page = 0; // counted from 0: no fewer pages lead to it
    double cost = std::numeric_limits<double>::infinity();
    std::size_t from = 0; // the page before begins at this start
};

// Of nothing cut that must stay together. What begins on page 0, 1, 2, … is one stretch of lines
// after the other, for where a page ends at a line it may end at any legal break before. Of those
// that stand on some way of fewest pages there are few where pages are full: they alone are
// weighed.
class FewestPages {
public:
    FewestPages(const Column& column, const PageHeights& heights, double more)
        : column_(column), heights_(heights) {
        const std::size_t size = column.lines.size();
        std::size_t page = 0, reached = 0, with_one_more = 0;
        for (std::size_t line = 0; line < size; ++line) {
            if (line > 0 && !may_break_before(column, line)) continue;
            if (line > with_one_more) return;
            if (line > reached) {
                ++page;
                reached = with_one_more;
            }
            const std::size_t end = std::max(heights.lines_that_fit(line, more), line + 1);
            starts_.push_back({line, end, page});
            with_one_more = std::max(with_one_more, end);
        }
        if (with_one_more < size) return;
        count_ = size > reached ? page + 1 : page;
    }

    // None if something must be cut.
    std::optional<std::size_t> count() const { return count_; }

    std::vector<std::size_t> begins() {
        keep_those_on_the_way();
        starts_.front().cost = 0;
        for (std::size_t i = 0; i + 1 < starts_.size(); ++i)
            try_pages(i);
        std::vector<std::size_t> begins;
        for (std::size_t at = starts_.size() - 1; at > 0; at = starts_[at].from)
            begins.push_back(starts_[starts_[at].from].line);
        std::ranges::reverse(begins);
        return begins;
    }

private:
    // The end of all stands behind them.
    void keep_those_on_the_way() {
        const std::size_t size = column_.lines.size(), nowhere = size + 1;
        std::vector<std::size_t> first(*count_ + 1, nowhere); // of each page, on the way
        first.back() = size;
        for (auto start = starts_.rbegin(); start != starts_.rend(); ++start)
            if (start->page < *count_ && start->end >= first[start->page + 1])
                first[start->page] = start->line;
            else
                start->end = 0;
        std::erase_if(starts_, [](const PageStart& start) { return start.end == 0; });
        starts_.push_back({size, size, *count_});
    }

    void try_pages(std::size_t from) {
        const PageStart& start = starts_[from];
        const auto next = std::ranges::upper_bound(starts_, start.page, {}, &PageStart::page);
        for (auto end = next; end != starts_.end() && end->line <= start.end; ++end) {
            if (end->page > start.page + 1) break;
            count_work(Work::page_ends, 1);
            const double cost = start.cost + page_cost(column_, heights_, start.line, end->line);
            if (cost >= end->cost) continue;
            end->cost = cost;
            end->from = from;
        }
    }

    const Column& column_;
    const PageHeights& heights_;
    std::vector<PageStart> starts_; // in order
    std::optional<std::size_t> count_;
};

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

// Of as few cuts as there can be, then of as few pages: where something fills more than a page.
class CutPages {
public:
    CutPages(const Column& column, const PageHeights& heights, double more)
        : column_(column), heights_(heights), more_(more), paths_(column.lines.size() + 1) {}

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
    const PageHeights& heights_;
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
    lowest_.reserve(size);
    double down = 0;
    for (std::size_t i = 0; i < size; ++i) {
        if (i > 0) down += to_baseline(column, i).at(setting);
        first_.push_back(to_first_baseline(column, i, i > 0 ? 1 : 0).at(setting));
        down_.push_back(down);
        below_.push_back(below_baseline(column, i).at(setting));
        lowest_.push_back(column.lines[i].beside ? std::max(lowest_.back(), below_.back())
                                                 : below_.back());
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
    const double room = room_ + more + rounding_slack;
    std::size_t end = begin,
                beyond = first_.size(); // lines before the one fit, from the other on none
    while (end < beyond) {
        const std::size_t line = end + (beyond - end) / 2;
        if (first_[begin] + (down_[line] - down_[begin]) + lowest_[line] <= room)
            end = line + 1;
        else
            beyond = line;
    }
    return end;
}

std::vector<std::size_t> page_begins(const Column& column, const PageSetting& setting) {
    return page_begins(column, setting, 0);
}

std::vector<std::size_t> page_begins(const Column& column, const PageSetting& setting,
                                     double more) {
    const PageHeights heights(column, setting);
    FewestPages pages(column, heights, more);
    return pages.count() ? pages.begins() : CutPages(column, heights, more).begins();
}

std::size_t page_count(const Column& column, const PageSetting& setting) {
    const PageHeights heights(column, setting);
    const auto count = FewestPages(column, heights, 0).count();
    return count ? *count : CutPages(column, heights, 0).begins().size();
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

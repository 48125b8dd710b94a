// Where pages end: of all legal breaks the ones of least cost.
//
// Costs are in the unit of discomfort, so that the fit can weigh a bad break against a tighter
// page. The cost of pages is the sum of
// - `foot_cost` × the square of the room left at the foot, as a share of the text's height, for
//   every page but the last,
// - for every break inside an entry `entry_cost`; `paragraph_cost` more inside a paragraph;
//   `alone_cost` more if one paragraph of the entry, or what is left of one, stands alone on the
//   next page; `led_cost` more if one alone follows the entry's head on the page before,
// - `thin_cost` × what the last page lacks of a third of its height, as a share of that third.
#pragma once

#include "compiler/stages/fit/column.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace quoin::fit {

constexpr double foot_cost = 1;
constexpr double entry_cost = 0.05;
constexpr double paragraph_cost = 0.1;
constexpr double alone_cost = 0.4;
constexpr double led_cost = 0.1;
constexpr double thin_cost = 0.5;
constexpr double least_fullness = 1.0 / 3; // of a last page

// For rounding; a hundredth of a point is visible at no size.
constexpr double rounding_slack = 1e-6; // pt

// Of ending a page before `line`, its foot apart.
double break_cost(const Column& column, std::size_t line);

// The heights of all lines at one setting.
class PageHeights {
public:
    PageHeights(const Column& column, const PageSetting& setting);

    double room() const { return room_; }                    // pt, between the margins
    double height(std::size_t begin, std::size_t end) const; // pt, of a page of these lines
    bool holds(std::size_t begin, std::size_t end) const;
    // The line after the last that fits on a page from `begin` with so much more room, all before
    // it with it.
    std::size_t lines_that_fit(std::size_t begin, double more = 0) const;

private:
    double room_ = 0;
    std::vector<double> first_; // to the baseline if the line is a page's first
    std::vector<double> down_;  // baselines in one long column
    std::vector<double> below_;
    std::vector<double> lowest_; // the same of all that stand beside it up to it
};

// The first line of each page: as few pages as there can be and, of those, of least cost. What must
// stay together and fills more than a page is cut where the page is full.
std::vector<std::size_t> page_begins(const Column& column, const PageSetting& setting);
// With so many points more room on every page.
std::vector<std::size_t> page_begins(const Column& column, const PageSetting& setting, double more);

// How many those are: what takes no weighing of breaks.
std::size_t page_count(const Column& column, const PageSetting& setting);

// Every page as full as it can be, however bare the last: as a draft shows what is too much.
std::vector<std::size_t> full_page_begins(const Column& column, const PageSetting& setting);

double pages_cost(const Column& column, const PageSetting& setting,
                  std::span<const std::size_t> begins);

// The points that every page must be higher for so many pages to hold the lines; 0 if they do.
double missing_height(const Column& column, const PageSetting& setting, std::size_t pages);

// The points that the last of so many pages is too low, every page before it as full as it can be;
// 0 if they hold the lines.
double height_beyond(const Column& column, const PageSetting& setting, std::size_t pages);

}

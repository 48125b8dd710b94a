// The search along the road: by halves on one page, over every break on two, and beyond that by the
// cheapest breaks at the first places that hold them.
#include "compiler/stages/fit/fit.hpp"

#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/stages/fit/road.hpp"
#include "compiler/stages/fit/two_pages.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace quoin::fit {

namespace {

// The fewest lines of text whose height is `height` or more; at least one.
int lines_in(double height, const PageSetting& setting) {
    const double line = setting.leading * setting.size;
    return std::max(1, static_cast<int>(std::ceil(height / line)));
}

using Begins = std::vector<std::vector<std::size_t>>; // of the pages, for each column

class Fitter {
public:
    Fitter(const composition::Composition& composition, const theme::Theme& theme,
           const model::Settings& settings)
        : choices_(choices_of(theme, settings, characters_in_em(composition))),
          road_(composition, choices_) {}

    std::variant<Fit, Overflow> run(std::size_t allowed) const {
        const RoadPlace least = road_.at(tightest);
        std::size_t pages = 0;
        double beyond = 0;
        for (const Column& column : road_.columns(least)) {
            pages = std::max(pages, page_count(column, least.setting));
            beyond = std::max(beyond, height_beyond(column, least.setting, allowed));
        }
        if (pages > allowed) return Overflow{lines_in(beyond, least.setting)};
        if (pages == 0) return road_.fit(road_.at(0));
        Fit fit = best(pages);
        if (pages < allowed && fit.tightness > most_bearable(fullness_at_roomiest(pages + 1)))
            fit = best(pages + 1);
        return fit;
    }

    Fit preferred() const {
        const RoadPlace place = road_.at(0);
        return cut_up(place,
                      [&](const Column& column) { return page_begins(column, place.setting); });
    }

    Fit smallest() const {
        const RoadPlace place = road_.at(tightest);
        return cut_up(
            place, [&](const Column& column) { return full_page_begins(column, place.setting); });
    }

private:
    template<typename Cut>
    Fit cut_up(const RoadPlace& place, Cut cut) const {
        Fit fit = road_.fit(place);
        const std::vector<Column> columns = road_.columns(place);
        if (!fit.lines.empty()) fit.page_begins = cut(columns.front());
        if (columns.size() > 1) fit.side_begins = cut(columns.back());
        return fit;
    }

    double fullness_at_roomiest(std::size_t pages) const {
        const RoadPlace place = road_.at(roomiest);
        double fullness = 0;
        for (const Column& column : road_.columns(place)) {
            const PageHeights heights(column, place.setting);
            const double height = heights.height(0, column.lines.size());
            fullness = std::max(fullness, height / heights.room() / static_cast<double>(pages));
        }
        return fullness;
    }

    Fit best(std::size_t pages) const {
        if (pages == 1) return on_one_page();
        const bool one_column = road_.columns(road_.at(tightest)).size() == 1;
        if (pages == 2 && one_column)
            if (const auto two = best_on_two_pages(road_)) {
                Fit fit = road_.fit(two->place);
                fit.page_begins = {0, two->cut};
                return fit;
            }
        return on_pages(pages);
    }

    Fit on_one_page() const {
        constexpr double precision = 1e-9;
        const RoadPlace place = road_.roomiest_that(precision, [&](const RoadPlace& at) {
            return std::ranges::all_of(road_.columns(at), [&](const Column& column) {
                return PageHeights(column, at.setting).holds(0, column.lines.size());
            });
        });
        return cut_up(place, [](const Column&) { return std::vector<std::size_t>{0}; });
    }

    // The roomiest place that so many pages hold, or a tighter one whose breaks make up for it.
    Fit on_pages(std::size_t pages) const {
        constexpr double precision = 1e-5, step = 0.05;
        RoadPlace place = road_.roomiest_that(precision, [&](const RoadPlace& at) {
            return std::ranges::all_of(road_.columns(at), [&](const Column& column) {
                return page_count(column, at.setting) <= pages;
            });
        });
        double least = place.tightness + cost_on(place, pages);
        for (double tightness = place.tightness + step; tightness < std::min(least, tightest);
             tightness += step) {
            RoadPlace next = road_.at(tightness);
            const double cost = tightness + cost_on(next, pages);
            if (cost >= least) continue;
            least = cost;
            place = std::move(next);
        }
        return cut_up(
            place, [&](const Column& column) { return begins_on(pages, column, place.setting); });
    }

    static std::vector<std::size_t> begins_on(std::size_t pages, const Column& column,
                                              const PageSetting& setting) {
        std::vector<std::size_t> begins = page_begins(column, setting);
        if (pages == 2 && begins.size() == 2)
            begins.back() = evenest_cut(column, setting).value_or(begins.back());
        return begins;
    }

    double cost_on(const RoadPlace& place, std::size_t pages) const {
        double cost = 0;
        for (const Column& column : road_.columns(place)) {
            const std::vector<std::size_t> begins = begins_on(pages, column, place.setting);
            if (begins.size() > pages) return nowhere;
            for (std::size_t page = 1; page < begins.size(); ++page)
                cost += break_cost(column, begins[page]);
        }
        return cost;
    }

    static constexpr double nowhere = std::numeric_limits<double>::infinity();

    SettingChoices choices_;
    Road road_;
};

}

Fit draft_fit(const composition::Composition& composition, const theme::Theme& theme,
              const model::Settings& settings) {
    return Fitter(composition, theme, settings).smallest();
}

Fit preferred_fit(const composition::Composition& composition, const theme::Theme& theme,
                  const model::Settings& settings) {
    return Fitter(composition, theme, settings).preferred();
}

double full_measure(const PageSetting& setting) {
    return (setting.paper_width - 2 * setting.side_margin) / setting.size;
}

std::variant<Fit, Overflow> fit(const composition::Composition& composition,
                                const theme::Theme& theme, const model::Settings& settings) {
    const auto pages = static_cast<std::size_t>(std::max(*settings.pages, 1));
    return Fitter(composition, theme, settings).run(pages);
}
}

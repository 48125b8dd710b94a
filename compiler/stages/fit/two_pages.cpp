// Stretches of the road on which no number of lines changes, the roomiest first. In each, a page is
// the lower the farther along, so for every break the first place that holds both is found by
// halves.
#include "compiler/stages/fit/two_pages.hpp"

#include "compiler/stages/fit/page_breaks.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace quoin::fit {

namespace {

constexpr double finest = 1e-9; // of tightness

double room_of(const PageSetting& setting) {
    return setting.paper_height - setting.top_margin - setting.bottom_margin;
}

struct Halves {
    Height first, second;

    bool fit(const PageSetting& setting) const {
        const double room = room_of(setting) + rounding_slack;
        return first.at(setting) <= room && second.at(setting) <= room;
    }
    double unevenness(const PageSetting& setting) const {
        return std::abs(first.at(setting) - second.at(setting)) / room_of(setting);
    }
};

class Search {
public:
    explicit Search(const Road& road) : road_(road) {}

    std::optional<TwoPages> run() {
        const RoadPlace high = road_.at(tightest);
        if (has_room(high)) visit(road_.at(roomiest), high);
        if (best_.cost == TwoPages{}.cost) return std::nullopt;
        return std::move(best_);
    }

private:
    // `high` has room.
    void visit(const RoadPlace& low, const RoadPlace& high) {
        if (low.tightness >= best_.cost) return;
        if (low.counts == high.counts) return try_stretch(low, high);
        if (high.tightness - low.tightness < finest) return try_stretch(high, high);
        const RoadPlace middle = road_.between(low, high);
        if (has_room(middle)) visit(low, middle);
        visit(middle, high);
    }

    // Whether two pages are high enough for all lines together, wherever they are parted.
    bool has_room(const RoadPlace& place) const {
        const Column column = road_.columns(place).front();
        const ColumnHeights heights(column);
        return heights.page(0, column.lines.size())
                   .add(heights.least_of_a_break())
                   .at(place.setting) <= 2 * (room_of(place.setting) + rounding_slack);
    }

    void try_stretch(const RoadPlace& low, const RoadPlace& high) {
        const Column column = road_.columns(low).front();
        const ColumnHeights heights(column);
        const std::size_t end = column.lines.size();
        for (std::size_t cut = 1; cut < end; ++cut) {
            if (!may_break_before(column, cut)) continue;
            const double cost = break_cost(column, cut);
            if (low.tightness + cost >= best_.cost) continue;
            const Halves halves{heights.page(0, cut), heights.page(cut, end)};
            if (!halves.fit(high.setting)) continue;
            offer(first_that_fits(halves, low, high), low, cut, cost, halves);
        }
    }

    double first_that_fits(const Halves& halves, const RoadPlace& low,
                           const RoadPlace& high) const {
        if (halves.fit(low.setting)) return low.tightness;
        double misses = low.tightness, fits = high.tightness;
        while (fits - misses > finest) {
            const double middle = (misses + fits) / 2;
            (halves.fit(road_.setting(middle)) ? fits : misses) = middle;
        }
        return fits;
    }

    void offer(double tightness, const RoadPlace& stretch, std::size_t cut, double break_cost,
               const Halves& halves) {
        const PageSetting setting = road_.setting(tightness);
        const double cost = tightness + break_cost + even_cost * halves.unevenness(setting);
        if (cost < best_.cost) best_ = {{tightness, setting, stretch.counts}, cut, cost};
    }

    const Road& road_;
    TwoPages best_;
};

}

std::optional<TwoPages> best_on_two_pages(const Road& road) {
    return Search(road).run();
}

std::optional<std::size_t> evenest_cut(const Column& column, const PageSetting& setting) {
    const PageHeights heights(column, setting);
    const std::size_t end = column.lines.size();
    std::optional<std::size_t> best;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t cut = 1; cut < end; ++cut) {
        if (!may_break_before(column, cut)) continue;
        if (!heights.holds(0, cut) || !heights.holds(cut, end)) continue;
        const double apart = heights.height(0, cut) - heights.height(cut, end);
        const double cost = break_cost(column, cut) + even_cost * std::abs(apart) / heights.room();
        if (cost >= least) continue;
        least = cost;
        best = cut;
    }
    return best;
}

}

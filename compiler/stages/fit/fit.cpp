// The search over numbers of lines and page breaks, the most promising first; for each, the nearest
// point.
#include "compiler/stages/fit/fit.hpp"

#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/stages/fit/polyhedron.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace quoin::fit {

namespace {

// The fewest lines of text whose height is `height` or more; at least one.
int lines_in(double height, const PageSetting& setting) {
    const double line = setting.leading * setting.size;
    return std::max(1, static_cast<int>(std::ceil(height / line)));
}

// From measure `from` on, a paragraph has `lines` lines.
struct Change {
    double measure = 0;
    std::size_t paragraph = 0;
    int lines = 0;
};

using Begins = std::vector<std::vector<std::size_t>>; // of the pages, for each column

struct ColumnHeight {
    std::optional<composition::Region> other; // whose paragraphs stand in another column
    Height height;
};

// Measures from one change to the next: every paragraph keeps its number of lines.
struct MeasureStretch {
    double measure = 0;      // the least
    std::size_t changes = 0; // made up to it
    HalfSpace wide;          // the settings of such measures
    Height height;           // of all lines in one column
    Vector point{};          // the most comfortable that might hold them
    double bound = 0;        // its discomfort
};

struct BestPoint {
    Vector point{};
    double cost = std::numeric_limits<double>::infinity();
    double measure = 0; // no line needs a wider one
};

class Fitter {
public:
    Fitter(const composition::Composition& composition, const SettingChoices& choices)
        : composition_(composition), choices_(choices), space_(choices),
          narrowest_(full_measure(preferred_setting(choices))),
          widest_(full_measure(least_setting(choices))) {
        paragraphs_.reserve(composition.paragraphs.size());
        for (const composition::Paragraph& paragraph : composition.paragraphs)
            paragraphs_.emplace_back(paragraph, narrowest_);
    }

    std::variant<Fit, Overflow> run(std::size_t pages) {
        const PageSetting least = least_setting(choices_);
        std::size_t needed = 0;
        double beyond = 0;
        for (const Column& column : columns_at(widest_)) {
            needed = std::max(needed, page_begins(column, least).size());
            beyond = std::max(beyond, height_beyond(column, least, pages));
        }
        if (needed > pages) return Overflow{lines_in(beyond, least)};
        if (paragraphs_.empty()) return Fit{preferred_setting(choices_), {}, {}, {}};
        if (const std::optional<Fit> fit = best(needed)) return *fit;
        return evenly_tightened(needed);
    }

    Fit preferred() const {
        const PageSetting preferred = preferred_setting(choices_);
        const double measure = (preferred.paper_width - 2 * preferred.side_margin) / preferred.size;
        Begins begins;
        for (const Column& column : columns_at(measure))
            begins.push_back(page_begins(column, preferred));
        return fit_of(preferred, measure, std::move(begins));
    }

    Fit smallest() const {
        const PageSetting least = least_setting(choices_);
        Begins begins;
        for (const Column& column : columns_at(widest_))
            begins.push_back(full_page_begins(column, least));
        return fit_of(least, widest_, std::move(begins));
    }

private:
    std::vector<int> counts_at(double measure) const {
        std::vector<int> counts;
        for (const lines::MeasuredParagraph& paragraph : paragraphs_)
            counts.push_back(paragraph.line_count(measure));
        return counts;
    }

    std::vector<Column> columns_at(double measure) const {
        return make_columns(composition_, counts_at(measure));
    }

    Fit fit_of(const PageSetting& setting, double measure, Begins begins) const {
        Fit fit{setting, lines_at(measure), {}, {}};
        if (!begins.empty()) fit.page_begins = std::move(begins.front());
        if (begins.size() > 1) fit.side_begins = std::move(begins.back());
        return fit;
    }

    std::vector<Change> changes() const {
        std::vector<Change> changes;
        for (std::size_t i = 0; i < paragraphs_.size(); ++i)
            for (const lines::LineStep& step : paragraphs_[i].line_steps(narrowest_, widest_))
                changes.push_back({step.measure, i, step.lines});
        std::stable_sort(changes.begin(), changes.end(),
                         [](const Change& a, const Change& b) { return a.measure < b.measure; });
        return changes;
    }

    // What might hold the content on so many pages, the most comfortable first.
    std::vector<MeasureStretch> stretches(const std::vector<Change>& all, std::size_t pages) const {
        std::vector<int> counts(paragraphs_.size());
        for (std::size_t i = 0; i < counts.size(); ++i)
            counts[all[i].paragraph] = all[i].lines;
        std::vector<ColumnHeight> columns = heights_of(make_columns(composition_, counts), pages);
        std::vector<MeasureStretch> found;
        for (std::size_t i = counts.size() - 1; i < all.size(); ++i) {
            int& lines = counts[all[i].paragraph];
            const composition::Paragraph& paragraph = composition_.paragraphs[all[i].paragraph];
            for (ColumnHeight& column : columns)
                if (paragraph.region != column.other)
                    column.height.lines += (all[i].lines - lines) * paragraph.size;
            lines = all[i].lines;
            if (i + 1 < all.size() && all[i + 1].measure == all[i].measure) continue;
            MeasureStretch stretch;
            stretch.measure = all[i].measure;
            stretch.changes = i + 1;
            stretch.wide = space_.wide_enough(stretch.measure);
            std::vector<HalfSpace> bounds{stretch.wide};
            for (const ColumnHeight& column : columns)
                bounds.push_back(space_.has_room(column.height, static_cast<double>(pages)));
            if (!all_reachable(bounds)) continue;
            stretch.point = space_.most_comfortable(std::move(bounds));
            stretch.bound = discomfort(stretch.point);
            found.push_back(stretch);
        }
        std::stable_sort(
            found.begin(), found.end(),
            [](const MeasureStretch& a, const MeasureStretch& b) { return a.bound < b.bound; });
        return found;
    }

    // Of all lines, and the least that page breaks add.
    std::vector<ColumnHeight> heights_of(const std::vector<Column>& columns,
                                         std::size_t pages) const {
        std::vector<ColumnHeight> all;
        for (const Column& column : columns) {
            const ColumnHeights heights(column);
            all.push_back({{}, heights.page(0, column.lines.size())});
            all.back().height.add(heights.least_of_a_break(), static_cast<double>(pages) - 1);
        }
        if (all.size() > 1) {
            all.front().other = composition::Region::side;
            all.back().other = composition::Region::main;
        }
        return all;
    }

    bool all_reachable(const std::vector<HalfSpace>& half_spaces) const {
        return std::ranges::all_of(
            half_spaces, [&](const HalfSpace& half) { return space_.is_reachable(half); });
    }

    std::optional<Fit> best(std::size_t pages) const {
        BestPoint best;
        const std::vector<Change> all = changes();
        for (const MeasureStretch& stretch : stretches(all, pages)) {
            if (stretch.bound >= best.cost) break;
            if (pages < 2) {
                best = {stretch.point, stretch.bound, stretch.measure};
                break;
            }
            std::vector<int> counts(paragraphs_.size());
            for (std::size_t i = 0; i < stretch.changes; ++i)
                counts[all[i].paragraph] = all[i].lines;
            const std::vector<Column> columns = make_columns(composition_, counts);
            if (pages == 2 && columns.size() == 1)
                try_two_pages(best, columns.front(), stretch);
            else
                try_pages(best, columns, stretch, pages);
        }
        if (best.measure == 0) return std::nullopt;
        return finished(best, pages);
    }

    void improve(BestPoint& best, const std::vector<HalfSpace>& half_spaces, double measure,
                 double cost) const {
        for (const HalfSpace& half : half_spaces)
            if (!space_.is_reachable(half) || comfort_bound(half) + cost >= best.cost) return;
        const Vector point = space_.most_comfortable(half_spaces);
        if (discomfort(point) + cost < best.cost) best = {point, discomfort(point) + cost, measure};
    }

    void try_two_pages(BestPoint& best, const Column& column, const MeasureStretch& stretch) const {
        const std::size_t end = column.lines.size();
        const ColumnHeights heights(column);
        for (std::size_t cut = end; cut-- > 1;) {
            if (!may_break_before(column, cut)) continue;
            improve(best,
                    {stretch.wide, space_.holds(heights.page(0, cut)),
                     space_.holds(heights.page(cut, end))},
                    stretch.measure, break_cost(column, cut));
        }
    }

    // Breaks for a point, a point for those breaks, until they stay.
    void try_pages(BestPoint& best, const std::vector<Column>& columns,
                   const MeasureStretch& stretch, std::size_t pages) const {
        constexpr int most_rounds = 6;
        Vector point = stretch.point;
        Begins before;
        for (int round = 0; round < most_rounds; ++round) {
            const PageSetting setting = space_.setting(point);
            Begins begins;
            std::vector<HalfSpace> half_spaces{stretch.wide};
            double cost = 0;
            for (const Column& column : columns) {
                begins.push_back(
                    page_begins(column, setting, missing_height(column, setting, pages)));
                if (begins.back().size() > pages) return;
                cost += add_pages(half_spaces, column, begins.back());
            }
            if (begins == before || !all_reachable(half_spaces)) return;
            improve(best, half_spaces, stretch.measure, cost);
            point = space_.most_comfortable(std::move(half_spaces));
            before = std::move(begins);
        }
    }

    // The settings that hold a column's pages; gives what their breaks cost.
    double add_pages(std::vector<HalfSpace>& half_spaces, const Column& column,
                     const std::vector<std::size_t>& begins) const {
        const ColumnHeights heights(column);
        double cost = 0;
        for (std::size_t i = 0; i < begins.size(); ++i) {
            const bool last = i + 1 == begins.size();
            const std::size_t end = last ? column.lines.size() : begins[i + 1];
            half_spaces.push_back(space_.holds(heights.page(begins[i], end)));
            if (!last) cost += break_cost(column, end);
        }
        return cost;
    }

    std::optional<Fit> finished(const BestPoint& found, std::size_t pages) const {
        PageSetting setting = space_.setting(found.point);
        const double measure = std::max(found.measure, full_measure(setting));
        const std::vector<Column> columns = columns_at(measure);
        Begins begins;
        double share = 1;
        for (const Column& column : columns) {
            begins.push_back(page_begins(column, setting));
            if (begins.back().size() > pages) return std::nullopt;
            share = std::min(share, gap_share(setting, column, begins.back()));
        }
        if (share > 0) setting = opened_setting(setting, choices_, share);
        return fit_of(setting, measure, std::move(begins));
    }

    // Of their way to most, that the gaps of a column's pages may open; none if one is full.
    double gap_share(const PageSetting& setting, const Column& column,
                     const std::vector<std::size_t>& begins) const {
        const PageSetting most = opened_setting(setting, choices_, 1);
        const PageHeights heights(column, setting), opened(column, most);
        double share = begins.size() > 1 ? 0.5 : 1;
        for (std::size_t i = 0; i < begins.size(); ++i) {
            const std::size_t end = i + 1 < begins.size() ? begins[i + 1] : column.lines.size();
            const double height = heights.height(begins[i], end);
            const double left = heights.room() - height;
            if (left < 0.001) return 0; // pt
            const double more = opened.height(begins[i], end) - height;
            if (more > left) share = std::min(share, left / more);
        }
        return share;
    }

    // Everything by one share of the way from preferred to least, the smallest that will do.
    Fit evenly_tightened(std::size_t pages) const {
        double low = 0, high = 1;
        const auto fits = [&](double share) {
            const PageSetting setting = tightened(share);
            return std::ranges::all_of(
                columns_at(full_measure(setting)),
                [&](const Column& column) { return page_begins(column, setting).size() <= pages; });
        };
        if (fits(0)) high = 0;
        while (high - low > 1e-9) {
            const double middle = (low + high) / 2;
            (fits(middle) ? high : low) = middle;
        }
        const PageSetting setting = tightened(high);
        return fit_of(setting, full_measure(setting), {});
    }

    PageSetting tightened(double share) const {
        PageSetting setting = preferred_setting(choices_);
        const PageSetting least = least_setting(choices_);
        const auto move = [&](double& from, double to) { from = std::lerp(from, to, share); };
        move(setting.size, least.size);
        move(setting.side_margin, least.side_margin);
        move(setting.top_margin, least.top_margin);
        move(setting.bottom_margin, least.bottom_margin);
        move(setting.leading, least.leading);
        for (std::size_t i = 0; i < theme::gap_count; ++i)
            move(setting.gaps[i], least.gaps[i]);
        return setting;
    }

    std::vector<std::vector<lines::Line>> lines_at(double measure) const {
        std::vector<std::vector<lines::Line>> lines;
        for (const lines::MeasuredParagraph& paragraph : paragraphs_)
            lines.push_back(paragraph.lines(measure));
        return lines;
    }

    const composition::Composition& composition_;
    const SettingChoices& choices_;
    SettingSpace space_;
    double narrowest_, widest_; // measures within reach, em
    std::vector<lines::MeasuredParagraph> paragraphs_;
};

}

Fit draft_fit(const composition::Composition& composition, const theme::Theme& theme,
              const model::Settings& settings) {
    const SettingChoices choices = choices_of(theme, settings);
    return Fitter(composition, choices).smallest();
}

Fit preferred_fit(const composition::Composition& composition, const theme::Theme& theme,
                  const model::Settings& settings) {
    const SettingChoices choices = choices_of(theme, settings);
    return Fitter(composition, choices).preferred();
}

double full_measure(const PageSetting& setting) {
    return (setting.paper_width - 2 * setting.side_margin) / setting.size;
}

std::variant<Fit, Overflow> fit(const composition::Composition& composition,
                                const theme::Theme& theme, const model::Settings& settings) {
    const SettingChoices choices = choices_of(theme, settings);
    const auto pages = static_cast<std::size_t>(std::max(*settings.pages, 1));
    return Fitter(composition, choices).run(pages);
}
}

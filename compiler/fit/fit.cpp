// The search over numbers of lines, and over the cut of two pages; for each, the nearest point.
#include "compiler/fit/fit.hpp"

#include "compiler/fit/column.hpp"
#include "compiler/fit/comfort.hpp"
#include "compiler/fit/polyhedron.hpp"
#include "compiler/paragraph/paragraph_lines.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace quoin {

namespace {

double measure_of(const PageSetting& setting) { // em
    return (setting.paper_width - 2 * setting.side_margin) / setting.size;
}

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

struct Found {
    Vector point{};
    double discomfort = std::numeric_limits<double>::infinity();
    double measure = 0; // no line needs a wider one
};

class Fitter {
public:
    Fitter(const Composition& composition, const Choices& choices)
        : composition_(composition), choices_(choices), space_(choices),
          narrowest_(measure_of(preferred_setting(choices))),
          widest_(measure_of(least_setting(choices))) {
        paragraphs_.reserve(composition.paragraphs.size());
        for (const Paragraph& paragraph : composition.paragraphs)
            paragraphs_.emplace_back(paragraph, narrowest_);
    }

    std::variant<Fit, Overflow> run(std::size_t pages) {
        const PageSetting least = least_setting(choices_);
        const Column column = column_at(widest_);
        const std::size_t needed = page_begins(column, least).size();
        if (needed > pages) return Overflow{lines_in(height_beyond(column, least, pages), least)};
        if (needed <= 2)
            if (const std::optional<Fit> fit = best(needed)) return *fit;
        return evenly_tightened(needed);
    }

    Fit smallest() const { return Fit{least_setting(choices_), lines_at(widest_)}; }

private:
    std::vector<int> counts_at(double measure) const {
        std::vector<int> counts;
        for (const MeasuredParagraph& paragraph : paragraphs_)
            counts.push_back(paragraph.line_count(measure));
        return counts;
    }

    Column column_at(double measure) const { return make_column(composition_, counts_at(measure)); }

    std::vector<Change> changes() const {
        std::vector<Change> changes;
        for (std::size_t i = 0; i < paragraphs_.size(); ++i)
            for (const LineStep& step : paragraphs_[i].line_steps(narrowest_, widest_))
                changes.push_back({step.measure, i, step.lines});
        std::stable_sort(changes.begin(), changes.end(),
                         [](const Change& a, const Change& b) { return a.measure < b.measure; });
        return changes;
    }

    // The best for every set of line counts there is, by rising measure.
    std::optional<Fit> best(std::size_t pages) const {
        Found best;
        std::vector<int> counts(paragraphs_.size());
        const std::vector<Change> all = changes();
        for (std::size_t i = 0; i < all.size(); ++i) {
            counts[all[i].paragraph] = all[i].lines;
            if (i + 1 < all.size() && all[i + 1].measure == all[i].measure) continue;
            const HalfSpace wide = space_.wide_enough(all[i].measure);
            if (!space_.is_reachable(wide) || comfort_bound(wide) >= best.discomfort) break;
            const Column column = make_column(composition_, counts);
            if (pages < 2)
                improve(best, {wide, space_.holds(page_height(column, 0, column.lines.size(), 0))},
                        all[i].measure);
            else
                improve_two_pages(best, column, wide, all[i].measure);
        }
        if (best.measure == 0 && !paragraphs_.empty()) return std::nullopt;
        return finished(best, pages);
    }

    void improve(Found& best, const std::vector<HalfSpace>& half_spaces, double measure) const {
        for (const HalfSpace& half : half_spaces)
            if (!space_.is_reachable(half) || comfort_bound(half) >= best.discomfort) return;
        const Vector point = space_.most_comfortable(half_spaces);
        if (discomfort(point) < best.discomfort) best = {point, discomfort(point), measure};
    }

    void improve_two_pages(Found& best, const Column& column, const HalfSpace& wide,
                           double measure) const {
        const std::size_t end = column.lines.size();
        for (std::size_t cut = end; cut-- > 1;) {
            if (!may_break_before(column, cut)) continue;
            improve(best,
                    {wide, space_.holds(page_height(column, 0, cut, 0)),
                     space_.holds(page_height(column, cut, end, 1))},
                    measure);
        }
    }

    std::optional<Fit> finished(const Found& found, std::size_t pages) const {
        PageSetting setting = space_.setting(found.point);
        const double measure = std::max(found.measure, measure_of(setting));
        const Column column = column_at(measure);
        if (page_begins(column, setting).size() > pages) return std::nullopt;
        if (pages == 1) open_gaps(setting, column);
        return Fit{setting, lines_at(measure)};
    }

    void open_gaps(PageSetting& setting, const Column& column) const {
        const Height height = page_height(column, 0, column.lines.size(), 0);
        const double left =
            setting.paper_height - setting.top_margin - setting.bottom_margin - height.at(setting);
        const double opened = height.at(opened_setting(setting, choices_, 1)) - height.at(setting);
        if (left < 0.001 || opened <= 0) return; // pt
        setting = opened_setting(setting, choices_, std::min(1.0, left / opened));
    }

    // Everything by one share of the way from preferred to least, the smallest that will do.
    Fit evenly_tightened(std::size_t pages) const {
        double low = 0, high = 1;
        const auto fits = [&](double share) {
            const PageSetting setting = tightened(share);
            return page_begins(column_at(measure_of(setting)), setting).size() <= pages;
        };
        if (fits(0)) high = 0;
        while (high - low > 1e-9) {
            const double middle = (low + high) / 2;
            (fits(middle) ? high : low) = middle;
        }
        const PageSetting setting = tightened(high);
        return Fit{setting, lines_at(measure_of(setting))};
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
        for (std::size_t i = 0; i < gap_count; ++i)
            move(setting.gaps[i], least.gaps[i]);
        return setting;
    }

    std::vector<std::vector<Line>> lines_at(double measure) const {
        std::vector<std::vector<Line>> lines;
        for (const MeasuredParagraph& paragraph : paragraphs_)
            lines.push_back(paragraph.lines(measure));
        return lines;
    }

    const Composition& composition_;
    const Choices& choices_;
    SettingSpace space_;
    double narrowest_, widest_; // measures within reach, em
    std::vector<MeasuredParagraph> paragraphs_;
};

}

Fit draft_fit(const Composition& composition, const Theme& theme, const Settings& settings) {
    const Choices choices = choices_of(theme, settings);
    return Fitter(composition, choices).smallest();
}

std::variant<Fit, Overflow> fit(const Composition& composition, const Theme& theme,
                                const Settings& settings) {
    const Choices choices = choices_of(theme, settings);
    const auto pages = static_cast<std::size_t>(std::max(*settings.pages, 1));
    return Fitter(composition, choices).run(pages);
}

}

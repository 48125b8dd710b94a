// Measures a fit against its neighbours; nothing here chooses anything.
#include "compiler/stages/fit/explain.hpp"

#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/page_breaks.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace quoin::fit {

namespace {

constexpr double visible_step = 0.01; // pt

std::vector<int> counts_of(const Fit& fit) {
    std::vector<int> counts;
    for (const std::vector<lines::Line>& lines : fit.lines)
        counts.push_back(static_cast<int>(lines.size()));
    return counts;
}

std::vector<int> counts_at(const composition::Composition& composition, double measure) {
    std::vector<int> counts;
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        counts.push_back(lines::MeasuredParagraph(paragraph, measure).line_count(measure));
    return counts;
}

// Of two columns, what the longer one misses.
double missing_at(const composition::Composition& composition, const PageSetting& setting,
                  std::size_t pages) {
    double missing = 0;
    for (const Column& column :
         make_columns(composition, counts_at(composition, full_measure(setting))))
        missing = std::max(missing, missing_height(column, setting, pages));
    return missing;
}

double gap_height(const composition::Composition& composition,
                  const std::array<double, theme::gap_count>& gaps) {
    double height = 0;
    for (std::size_t i = 1; i < composition.paragraphs.size(); ++i)
        height += gaps[static_cast<std::size_t>(composition.paragraphs[i].gap)];
    return height;
}

theme::Preference inches(const theme::Preference& points) {
    return {points.least / theme::points_per_inch, points.preferred / theme::points_per_inch,
            points.most / theme::points_per_inch};
}

std::array<Chosen, quantity_count> chosen_in(const composition::Composition& composition,
                                             const SettingChoices& choices,
                                             const PageSetting& setting) {
    const double preferred = gap_height(composition, preferred_setting(choices).gaps);
    const double gaps = preferred > 0 ? gap_height(composition, setting.gaps) / preferred : 1;
    return {{{setting.size, choices.size},
             {setting.leading, choices.leading},
             {setting.side_margin / theme::points_per_inch, inches(choices.side)},
             {setting.top_margin / theme::points_per_inch, inches(choices.top)},
             {setting.bottom_margin / theme::points_per_inch, inches(choices.bottom)},
             {gaps, {0, 1, 0}}}};
}

// The next whole step above, not beyond preferred.
double stepped(double value, double step, double preferred) {
    constexpr double rounding = 1e-6;
    return std::min(preferred, step * (std::floor(value / step + rounding) + 1));
}

// `setting` with one quantity a step better, and its new value.
std::pair<PageSetting, double> with_step(PageSetting setting, Quantity which,
                                         const SettingChoices& choices) {
    const auto move = [](double& value, double step, double preferred) {
        value = stepped(value, step, preferred);
        return value;
    };
    constexpr double inch_step = 0.01 * theme::points_per_inch;
    double value = 0;
    switch (which) {
    case Quantity::size:
        value = move(setting.size, 0.1, choices.size.preferred);
        break;
    case Quantity::leading:
        value = move(setting.leading, 0.01, choices.leading.preferred);
        break;
    case Quantity::side:
        value =
            move(setting.side_margin, inch_step, choices.side.preferred) / theme::points_per_inch;
        break;
    case Quantity::top:
        value = move(setting.top_margin, inch_step, choices.top.preferred) / theme::points_per_inch;
        break;
    case Quantity::bottom:
        value = move(setting.bottom_margin, inch_step, choices.bottom.preferred) /
                theme::points_per_inch;
        break;
    case Quantity::gaps:
        for (std::size_t i = 0; i < theme::gap_count; ++i)
            move(setting.gaps[i], 0.01, choices.gaps[i].preferred);
        break;
    }
    return {setting, value};
}

std::optional<NextBetter> next_better(const composition::Composition& composition,
                                      const SettingChoices& choices, const PageSetting& setting,
                                      const Explanation& explanation) {
    for (std::size_t i = 0; i < quantity_count; ++i) {
        const auto which = static_cast<Quantity>(i);
        if (explanation.is_preferred(which)) continue;
        const auto [better, value] = with_step(setting, which, choices);
        const double missing = missing_at(composition, better, explanation.pages);
        if (missing < visible_step) continue;
        const bool gaps = which == Quantity::gaps;
        return NextBetter{which, gaps ? chosen_in(composition, choices, better)[i].value : value,
                          missing};
    }
    return std::nullopt;
}

std::string text_of_line(const composition::Paragraph& paragraph, const lines::Line& line) {
    std::string text;
    for (std::uint32_t r = line.begin.run; r < paragraph.runs.size() && r <= line.end.run; ++r) {
        const composition::Run& run = paragraph.runs[r];
        const std::uint32_t begin = r == line.begin.run ? line.begin.glyph : 0;
        const std::size_t end = r == line.end.run ? line.end.glyph : run.glyphs.size();
        for (std::size_t g = begin; g < end && g < run.glyphs.size(); ++g)
            text += run.text.substr(run.glyphs[g].text_begin, run.glyphs[g].text_length);
    }
    return text;
}

std::vector<LoneWord> lone_words(const composition::Composition& composition, const Fit& fit) {
    std::vector<LoneWord> found;
    for (std::size_t p = 0; p < fit.lines.size(); ++p) {
        const composition::Paragraph& paragraph = composition.paragraphs[p];
        if (fit.lines[p].size() < 2) continue;
        const lines::Line& last = fit.lines[p].back();
        std::string word = text_of_line(paragraph, last);
        const double room = full_measure(fit.setting) - paragraph.indent;
        if (word.find(' ') == std::string::npos && last.width < room / 4)
            found.push_back({p, std::move(word)});
    }
    return found;
}

}

bool Explanation::is_preferred(Quantity which) const {
    const Chosen& at = chosen[static_cast<std::size_t>(which)];
    return at.value >= at.bounds.preferred - 1e-6;
}

bool Explanation::is_at_least(Quantity which) const {
    const Chosen& at = chosen[static_cast<std::size_t>(which)];
    return !is_preferred(which) && at.value <= at.bounds.least + 1e-6;
}

std::vector<double> page_fullness(const composition::Composition& composition, const Fit& fit) {
    std::vector<double> fullness;
    const std::vector<Column> columns = make_columns(composition, counts_of(fit));
    for (const Column& column : columns) {
        const PageHeights heights(column, fit.setting);
        std::vector<std::size_t> begins =
            &column == &columns.front() ? fit.page_begins : fit.side_begins;
        if (begins.empty()) begins = page_begins(column, fit.setting);
        fullness.resize(std::max(fullness.size(), begins.size()));
        begins.push_back(column.lines.size());
        for (std::size_t i = 0; i + 1 < begins.size(); ++i)
            fullness[i] =
                std::max(fullness[i], heights.height(begins[i], begins[i + 1]) / heights.room());
    }
    return fullness;
}

Explanation explain(const composition::Composition& composition, const theme::Theme& theme,
                    const model::Settings& settings, const Fit& fit) {
    const SettingChoices choices = choices_of(theme, settings, characters_in_em(composition));
    const PageSetting& setting = fit.setting;
    const double room = setting.paper_height - setting.top_margin - setting.bottom_margin;
    Explanation out;
    out.fullness = page_fullness(composition, fit);
    out.pages = std::max<std::size_t>(out.fullness.size(), 1);
    out.chosen = chosen_in(composition, choices, setting);
    out.line = setting.size * setting.leading;
    out.room = out.fullness.empty() ? room : std::max(0.0, (1 - out.fullness.back()) * room);
    const PageSetting preferred = preferred_setting(choices);
    out.preferred_missing = missing_at(composition, preferred, out.pages);
    out.next_better = next_better(composition, choices, setting, out);
    out.is_opened = std::ranges::any_of(
        out.chosen, [](const Chosen& at) { return at.value > at.bounds.preferred + 1e-6; });
    out.height_binds = std::ranges::any_of(
        out.fullness, [&](double full) { return (1 - full) * room < visible_step; });
    const double narrower = full_measure(setting) * (1 - 1e-7);
    const auto lines = [](const std::vector<int>& counts) {
        return std::accumulate(counts.begin(), counts.end(), 0);
    };
    out.measure_binds = lines(counts_at(composition, narrower)) > lines(counts_of(fit));
    out.lone_words = lone_words(composition, fit);
    return out;
}

}

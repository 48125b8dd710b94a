// What a fit must be held against: heights worked out anew, line by line, and all settings of a
// grid.
#pragma once

#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

namespace quoin::fit_reference {

inline double measure_of(const fit::PageSetting& setting) {
    return (setting.paper_width - 2 * setting.side_margin) / setting.size;
}

// First come, first set: the fewest lines there can be.
inline std::vector<int> greedy_counts(const composition::Composition& composition, double measure) {
    std::vector<int> counts;
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        counts.push_back(
            lines::MeasuredParagraph(paragraph, std::min(measure, 30.0)).line_count(measure));
    return counts;
}

struct PlainLine {
    const composition::Paragraph* paragraph;
    int line, lines;
    const composition::Paragraph* running_head; // null if there is none
    theme::GapName gap;
    const composition::Paragraph* continued =
        nullptr; // its section's heading set again; null if none is
};

// A page that begins within a section has its heading first.
inline const composition::Paragraph* continued_above(const composition::Composition& composition,
                                                     const composition::Paragraph& paragraph) {
    if (composition.continued.empty() || paragraph.section == 0) return nullptr;
    if (paragraph.style == theme::StyleName::section) return nullptr;
    return &composition.continued.at(paragraph.section);
}

// Entries of one line each stand apart as entries do, once one of them takes two lines.
inline theme::GapName gap_in_list(const composition::Composition& composition,
                                  const std::vector<int>& counts, std::size_t i) {
    const composition::Paragraph& paragraph = composition.paragraphs[i];
    for (std::size_t other = 0; other < counts.size(); ++other)
        if (paragraph.list > 0 && composition.paragraphs[other].list == paragraph.list &&
            counts[other] > 1 && paragraph.gap == theme::GapName::line)
            return theme::GapName::entry;
    return paragraph.gap;
}

inline std::vector<PlainLine> lines_of(const composition::Composition& composition,
                                       const std::vector<int>& counts) {
    std::vector<PlainLine> lines;
    for (std::size_t i = 0; i < counts.size(); ++i)
        for (int line = 0; line < counts[i]; ++line)
            lines.push_back(
                {&composition.paragraphs[i], line, counts[i],
                 composition.running_head.runs.empty() ? nullptr : &composition.running_head,
                 gap_in_list(composition, counts, i),
                 continued_above(composition, composition.paragraphs[i])});
    return lines;
}

// What the first line of a page after the first takes, down to its baseline, its own rule apart.
inline double opening(const PlainLine& line, const fit::PageSetting& at) {
    const composition::Paragraph* first =
        line.continued != nullptr ? line.continued : line.paragraph;
    double height = first->ascent * at.size;
    if (line.running_head != nullptr)
        height = (line.running_head->ascent + at.gaps[std::size_t(theme::GapName::section)] +
                  at.leading * first->size) *
                 at.size;
    if (line.continued == nullptr) return height;
    if (first->rule != theme::RuleAt::none)
        height += first->rule_gap * at.size + first->rule_thickness;
    return height +
           (at.leading * line.paragraph->size + at.gaps[std::size_t(theme::GapName::heading)]) *
               at.size;
}

// How far above the bottom margin the last line's descent ends; negative if below it.
inline double left_at_foot(const std::vector<PlainLine>& lines, std::size_t begin, std::size_t end,
                           const fit::PageSetting& at) {
    double y = at.paper_height - at.top_margin;
    for (std::size_t i = begin; i < end; ++i) {
        const composition::Paragraph& paragraph = *lines[i].paragraph;
        if (i == begin && begin > 0) {
            y -= opening(lines[i], at);
        } else if (i == begin) {
            y -= paragraph.ascent * at.size;
        } else {
            const bool in_heading =
                lines[i].gap == theme::GapName::header || lines[i].gap == theme::GapName::contact;
            if (lines[i].line == 0 && in_heading)
                y -= (lines[i - 1].paragraph->descent + 0.15 + paragraph.ascent) * at.size;
            else
                y -= at.leading * paragraph.size * at.size;
            if (lines[i].line == 0) y -= at.gaps[std::size_t(lines[i].gap)] * at.size;
            const composition::Paragraph& above = *lines[i - 1].paragraph;
            if (above.rule == theme::RuleAt::below && lines[i - 1].line + 1 == lines[i - 1].lines)
                y -= above.rule_gap * at.size + above.rule_thickness;
        }
        if (paragraph.rule == theme::RuleAt::above && lines[i].line == 0)
            y -= paragraph.rule_gap * at.size + paragraph.rule_thickness;
    }
    const composition::Paragraph& last = *lines[end - 1].paragraph;
    y -= last.descent * at.size;
    if (last.rule == theme::RuleAt::below) y -= last.rule_gap * at.size + last.rule_thickness;
    return y - at.bottom_margin;
}

inline fit::GapCounts gap_counts(const composition::Composition& composition) {
    fit::GapCounts counts{};
    for (std::size_t i = 1; i < composition.paragraphs.size(); ++i)
        if (composition.paragraphs[i].gap != theme::GapName::none)
            ++counts[std::size_t(composition.paragraphs[i].gap)];
    return counts;
}

inline bool holds_on_one_page(const std::vector<PlainLine>& lines,
                              const fit::PageSetting& setting) {
    return left_at_foot(lines, 0, lines.size(), setting) >= -1e-6;
}

inline bool starts_entry(const std::vector<PlainLine>& lines, std::size_t i) {
    const theme::GapName gap = lines[i].gap;
    return lines[i].line == 0 && gap != theme::GapName::bullet && gap != theme::GapName::line;
}

// Lines of the entry, its head not counted, before a cut and after it, and paragraphs.
struct Parted {
    int lines_before = 0, lines_after = 0;
    int whole_before = 0, after = 0;
    bool head_before = false;
};

inline Parted parted_by(const std::vector<PlainLine>& lines, std::size_t cut) {
    Parted parted;
    for (std::size_t i = cut; i-- > 0;) {
        if (lines[i].paragraph->keep_with_next) {
            parted.head_before = true;
            break;
        }
        ++parted.lines_before;
        parted.whole_before += lines[i].line == 0;
        if (starts_entry(lines, i)) break;
    }
    for (std::size_t i = cut; i < lines.size() && !starts_entry(lines, i); ++i) {
        ++parted.lines_after;
        parted.after += i == cut || lines[i].line == 0;
    }
    return parted;
}

// Two lines at least of a paragraph on either side of a page's end, and a heading never parted from
// what it heads: common practice; here, two of an entry's bullets too.
inline bool is_legal_cut(const std::vector<PlainLine>& lines, std::size_t cut) {
    if (lines[cut].line == 0 && lines[cut - 1].paragraph->keep_with_next) return false;
    if (lines[cut].line != 0 && (lines[cut].line < 2 || lines[cut].lines - lines[cut].line < 2))
        return false;
    if (starts_entry(lines, cut)) return true;
    const Parted parted = parted_by(lines, cut);
    return parted.lines_before >= 2 && parted.lines_after >= 2;
}

// As compiler/stages/fit/page_breaks.hpp states it.
inline double cost_of_cut(const std::vector<PlainLine>& lines, std::size_t cut) {
    if (starts_entry(lines, cut)) return 0;
    const Parted parted = parted_by(lines, cut);
    return 0.05 + (lines[cut].line > 0 ? 0.1 : 0) + (parted.after == 1 ? 0.4 : 0) +
           (parted.whole_before == 1 && parted.head_before ? 0.1 : 0);
}

inline constexpr double nowhere = std::numeric_limits<double>::infinity();

// From least to most.
inline double along(const theme::Preference& preference, int step, int steps) {
    return preference.least + (preference.most - preference.least) * step / steps;
}

struct Steps { // of a grid, between least and most
    int size = 8, side = 8, top_bottom = 4, leading = 4, gaps = 4;
};

// Lines at every measure, each paragraph measured once.
class LineCounts {
public:
    explicit LineCounts(const composition::Composition& composition) : composition_(composition) {
        paragraphs_.reserve(composition.paragraphs.size());
        for (const composition::Paragraph& paragraph : composition.paragraphs)
            paragraphs_.emplace_back(paragraph, 30);
    }

    std::vector<PlainLine> at(const fit::PageSetting& setting) const {
        std::vector<int> counts;
        for (const lines::MeasuredParagraph& paragraph : paragraphs_)
            counts.push_back(paragraph.line_count(measure_of(setting)));
        return lines_of(composition_, counts);
    }

private:
    const composition::Composition& composition_;
    std::vector<lines::MeasuredParagraph> paragraphs_;
};

inline void set_gaps(fit::PageSetting& setting, const fit::SettingChoices& choices, int step,
                     int steps) {
    for (std::size_t gap = 0; gap < theme::gap_count; ++gap)
        setting.gaps[gap] = along(choices.gaps[gap], step, steps);
}

struct Option { // one value of one quantity
    double height = 0, tightness = 0;
};

// On one page, of all grid settings of one size and side margin that hold the lines.
inline double best_of_options(const std::vector<Option>& leading, const std::vector<Option>& gaps,
                              const std::vector<Option>& top, const std::vector<Option>& bottom,
                              double room, double best) {
    for (const Option& l : leading)
        for (const Option& g : gaps)
            for (const Option& t : top)
                for (const Option& b : bottom) {
                    const double here =
                        std::max({l.tightness, g.tightness, t.tightness, b.tightness});
                    if (here < best && l.height + g.height + t.height + b.height <= room + 1e-6)
                        best = here;
                }
    return best;
}

inline fit::PageSetting loosest(const fit::SettingChoices& choices) {
    fit::PageSetting setting = preferred_setting(choices);
    setting.size = choices.size.most;
    setting.side_margin = choices.side.most;
    setting.top_margin = choices.top.most;
    setting.bottom_margin = choices.bottom.most;
    setting.leading = choices.leading.most;
    set_gaps(setting, choices, 1, 1);
    return setting;
}

// The options of one quantity, all others of `setting` unchanged.
template<typename Set>
std::vector<Option> options(const fit::PageSetting& setting, const fit::SettingChoices& choices,
                            const std::vector<PlainLine>& lines, int steps, Set set) {
    std::vector<Option> found;
    const double left = left_at_foot(lines, 0, lines.size(), setting);
    for (int step = 0; step <= steps; ++step) {
        fit::PageSetting moved = setting, alone = loosest(choices);
        set(moved, step, steps);
        set(alone, step, steps);
        found.push_back(
            {left - left_at_foot(lines, 0, lines.size(), moved), tightness_of(alone, choices)});
    }
    return found;
}

// The least tightness of all grid settings that hold the content on one page; all of a grid whose
// lowest values the top margin may have.
inline double best_on_one_page(const composition::Composition& composition,
                               const fit::SettingChoices& choices, const Steps& steps) {
    double best = nowhere;
    const LineCounts line_counts(composition);
    for (int size = 0; size <= steps.size; ++size)
        for (int side = 0; side <= steps.side; ++side) {
            fit::PageSetting setting = loosest(choices);
            setting.size = along(choices.size, size, steps.size);
            setting.side_margin = along(choices.side, side, steps.side);
            const double base = tightness_of(setting, choices);
            if (base >= best) continue;
            const std::vector<PlainLine> lines = line_counts.at(setting);
            const auto of = [&](int count, auto set) {
                return options(setting, choices, lines, count, set);
            };
            const double more = best_of_options(
                of(steps.leading, [&](fit::PageSetting& at, int i,
                                      int n) { at.leading = along(choices.leading, i, n); }),
                of(steps.gaps,
                   [&](fit::PageSetting& at, int i, int n) { set_gaps(at, choices, i, n); }),
                of(steps.top_bottom, [&](fit::PageSetting& at, int i,
                                         int n) { at.top_margin = along(choices.top, i, n); }),
                of(steps.top_bottom,
                   [&](fit::PageSetting& at, int i, int n) {
                       at.bottom_margin = along(choices.bottom, i, n);
                   }),
                left_at_foot(lines, 0, lines.size(), setting), best);
            best = std::min(best, std::max(base, more));
        }
    return best;
}

// As compiler/stages/fit/two_pages.hpp states it, of the cheapest cut at one setting.
inline double feet_and_cut(const std::vector<PlainLine>& lines, const fit::PageSetting& setting) {
    const double room = setting.paper_height - setting.top_margin - setting.bottom_margin;
    double least = nowhere;
    for (std::size_t cut = 1; cut < lines.size(); ++cut) {
        if (!is_legal_cut(lines, cut)) continue;
        const double first = left_at_foot(lines, 0, cut, setting);
        const double second = left_at_foot(lines, cut, lines.size(), setting);
        if (first < -1e-6 || second < -1e-6) continue;
        least = std::min(least, cost_of_cut(lines, cut) + 0.2 * std::abs(first - second) / room);
    }
    return least;
}

// The least tightness, with the cost of the break and the feet, of places close together all along
// the road.
inline double best_on_two_pages(const composition::Composition& composition,
                                const fit::SettingChoices& choices, int places) {
    double best = nowhere;
    const LineCounts line_counts(composition);
    for (int i = 0; i <= places; ++i) {
        const double tightness = -1 + 2.0 * i / places;
        if (tightness >= best) break;
        const fit::PageSetting setting = setting_at(choices, tightness);
        best = std::min(best, tightness + feet_and_cut(line_counts.at(setting), setting));
    }
    return best;
}

// The same measure of a fit.
inline double cost_of(const composition::Composition& composition,
                      const fit::SettingChoices& choices, const fit::Fit& fit) {
    std::vector<int> counts;
    for (const std::vector<lines::Line>& lines : fit.lines)
        counts.push_back(static_cast<int>(lines.size()));
    const std::vector<PlainLine> lines = lines_of(composition, counts);
    const double at = tightness_of(fit.setting, choices);
    if (fit.page_begins.size() > 1) return at + feet_and_cut(lines, fit.setting);
    return holds_on_one_page(lines, fit.setting) ? at : nowhere;
}

// The cost of the breaks a fit has, and its tightness.
inline double cost_on_pages(const composition::Composition& composition,
                            const fit::SettingChoices& choices, const fit::Fit& fit) {
    std::vector<int> counts;
    for (const std::vector<lines::Line>& lines : fit.lines)
        counts.push_back(static_cast<int>(lines.size()));
    const std::vector<PlainLine> lines = lines_of(composition, counts);
    double cost = tightness_of(fit.setting, choices);
    for (std::size_t i = 0; i < fit.page_begins.size(); ++i) {
        const bool last = i + 1 == fit.page_begins.size();
        const std::size_t end = last ? lines.size() : fit.page_begins[i + 1];
        if (left_at_foot(lines, fit.page_begins[i], end, fit.setting) < -1e-6) return nowhere;
        if (last) continue;
        if (!is_legal_cut(lines, end)) return nowhere;
        cost += cost_of_cut(lines, end);
    }
    return cost;
}

inline double cost_on_three_pages(const std::vector<PlainLine>& lines,
                                  const fit::PageSetting& setting) {
    double least = nowhere;
    for (std::size_t first = 1; first + 1 < lines.size(); ++first) {
        if (!is_legal_cut(lines, first) || left_at_foot(lines, 0, first, setting) < -1e-6) continue;
        for (std::size_t second = first + 1; second < lines.size(); ++second)
            if (is_legal_cut(lines, second) &&
                left_at_foot(lines, first, second, setting) >= -1e-6 &&
                left_at_foot(lines, second, lines.size(), setting) >= -1e-6)
                least = std::min(least, cost_of_cut(lines, first) + cost_of_cut(lines, second));
    }
    return least;
}

// Of places along the road, all breaks.
inline double best_on_three_pages(const composition::Composition& composition,
                                  const fit::SettingChoices& choices, int places) {
    double best = nowhere;
    const LineCounts line_counts(composition);
    for (int i = 0; i <= places; ++i) {
        const double tightness = -1 + 2.0 * i / places;
        if (tightness >= best) break;
        const fit::PageSetting setting = setting_at(choices, tightness);
        best = std::min(best, tightness + cost_on_three_pages(line_counts.at(setting), setting));
    }
    return best;
}

}

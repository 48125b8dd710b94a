// What a fit may choose from, and how far from preferred a choice is.
#pragma once

#include "compiler/stages/fit/fit.hpp"

#include <array>

namespace quoin::fit {

// The theme's preferences, held within what the résumé's settings allow: where the two do not meet,
// the nearest value that the résumé allows. Settings so read never contradict each other: their
// own bounds, 10 to 12 pt and 0.5 to 1 inch, leave 6.5 inches on letter paper for a measure.
struct SettingChoices {
    double paper_width = 0, paper_height = 0;  // pt
    theme::Preference size, side, top, bottom; // pt
    theme::Preference leading;
    std::array<theme::Preference, theme::gap_count> gaps{};
};

using GapCounts = std::array<double, theme::gap_count>; // how often each gap opens

SettingChoices choices_of(const theme::Theme& theme, const model::Settings& settings);

PageSetting preferred_setting(const SettingChoices& choices);
PageSetting least_setting(const SettingChoices& choices);
// Its gaps opened by `share` of their way to most.
PageSetting opened_setting(PageSetting setting, const SettingChoices& choices, double share);

// From preferred to least.
double range(const theme::Preference& preference);

// The em that the gaps give between preferred and least, all together.
double gap_room(const SettingChoices& choices, const GapCounts& counts);

double discomfort(const PageSetting& setting, const SettingChoices& choices,
                  const GapCounts& counts);

constexpr double size_weight = 4;

}

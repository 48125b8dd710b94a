// What a fit may choose from, and how far from preferred a choice is.
#pragma once

#include "compiler/fit/fit.hpp"

#include <array>

namespace quoin {

// The theme's preferences, held within what the résumé's settings allow.
struct Choices {
    double paper_width = 0, paper_height = 0; // pt
    Preference size, side, top, bottom;       // pt
    Preference leading;
    std::array<Preference, gap_count> gaps{};
};

using GapCounts = std::array<double, gap_count>; // how often each gap opens

Choices choices_of(const Theme& theme, const Settings& settings);

PageSetting preferred_setting(const Choices& choices);
PageSetting least_setting(const Choices& choices);
// Its gaps opened by `share` of the way from preferred to most.
PageSetting opened_setting(PageSetting setting, const Choices& choices, double share);

// From preferred to least.
double range(const Preference& preference);

// The em that the gaps give between preferred and least, all together.
double gap_room(const Choices& choices, const GapCounts& counts);

double discomfort(const PageSetting& setting, const Choices& choices, const GapCounts& counts);

constexpr double size_weight = 4;

}

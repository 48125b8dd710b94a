// What a fit may choose from, and the one road from the roomiest setting to the tightest.
//
// The tightness of a setting is one number: -1 is the roomiest, 0 the preferred, 1 the tightest.
// At each tightness every quantity has one value, and none ever grows with it:
//
// - towards the tightest, 0 to 1: leading and the margins above and below give evenly, size slowly
//   first, and the side margins slowest, for they make lines longer. Gaps give down to
//   `early_gaps` of what is preferred until the size has given `early_size`, and the rest after;
// - towards the roomiest, 0 to -1: leading opens first, then size and margins, gaps last.
//
// Any other setting is as tight as its tightest quantity.
//
// How many pages is weighed on the same scale. A turn of the page costs a reader `bearable`: as
// long as a text is no tighter without it, one page less is preferred. It costs more if the pages
// would be bare: even if the text is opened as far as it may be, they are filled to less than
// `decent`, and half-empty pages are worse than any setting. Tightness never falls as a text grows,
// nor does what it fills; so the number of pages only ever grows with it.
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

// `characters` are those of running text that an em of the page's measure holds, 0 if there is no
// such text. Where lines would be longer than `long_line`, as wide side margins are preferred as
// may be; and the longest lines there can be get `long_line_leading` and more.
SettingChoices choices_of(const theme::Theme& theme, const model::Settings& settings,
                          double characters = 0);

constexpr double long_line = 92;    // characters
constexpr double side_share = 0.75; // of the side margin, that the top margin has at least
constexpr double early_gaps = 0.6;  // of the preferred gap
constexpr double early_size = 0.3;  // pt
constexpr double tightest = 1, roomiest = -1;

// Of a composition's running text, for choices_of.
double characters_in_em(const composition::Composition& composition);

// Of lines of so many characters: 1.22 for 100, and 0.01 more for each ten.
double least_leading(double characters);

PageSetting setting_at(const SettingChoices& choices, double tightness);
PageSetting preferred_setting(const SettingChoices& choices);
PageSetting least_setting(const SettingChoices& choices);

constexpr double bearable = 0.6;
constexpr double decent = 0.7; // of the height between the margins
constexpr double bare_cost = 5;

// The tightness beyond which one page more is better, of text that at its roomiest fills such a
// share of those pages together. Smooth: above `bearable` by the square of what they lack.
double most_bearable(double fullness);

// Of any setting within the bounds; infinite if a quantity is under its least.
double tightness_of(const PageSetting& setting, const SettingChoices& choices);

}

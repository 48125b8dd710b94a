// The road that comfort.hpp describes, and where a setting stands on it.
#include "compiler/stages/fit/comfort.hpp"

#include "compiler/trade/paper.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::fit {

namespace {

theme::Preference within(const theme::Preference& preference, double least, double most) {
    theme::Preference held;
    held.least = std::clamp(preference.least, least, most);
    held.most = std::clamp(preference.most, held.least, most);
    held.preferred = std::clamp(preference.preferred, held.least, held.most);
    return held;
}

void raise_least(theme::Preference& preference, double least) {
    preference.least = std::max(preference.least, least);
    preference.preferred = std::max(preference.preferred, preference.least);
    preference.most = std::max(preference.most, preference.preferred);
}

double width_at(const SettingChoices& choices, double side) {
    return choices.paper_width - 2 * side;
}

void suit_long_lines(SettingChoices& choices, double characters) {
    const double longest = characters * width_at(choices, choices.side.least) / choices.size.least;
    raise_least(choices.leading, least_leading(longest));
    const double side = (choices.paper_width - long_line / characters * choices.size.preferred) / 2;
    choices.side.preferred = std::clamp(side, choices.side.preferred, choices.side.most);
}

// `tight` of the way from preferred to least, or `roomy` of it to most: one of them is 0.
double moved(const theme::Preference& from, double tight, double roomy) {
    return tight > 0 ? std::lerp(from.preferred, from.least, tight)
                     : std::lerp(from.preferred, from.most, roomy);
}

constexpr double size_power = 1.5;

double slowly_at_both_ends(double share) {
    return share * share * (3 - 2 * share);
}

double slowly_at_the_end(double share) {
    return 1 - (1 - share) * (1 - share) * (1 - share);
}

struct Way { // how far along
    double tight = 0, roomy = 0;
};

// Where the size has given `early_size`; half the way if it has not so much to give.
double early_end(const theme::Preference& size) {
    const double range = size.preferred - size.least;
    return range > early_size ? std::pow(early_size / range, 1 / size_power) : 0.5;
}

double gap_at(const theme::Preference& gap, Way way, double early) {
    const double floor = std::max(gap.least, early_gaps * gap.preferred);
    if (way.tight > early) return std::lerp(floor, gap.least, (way.tight - early) / (1 - early));
    if (way.tight > 0) return std::lerp(gap.preferred, floor, way.tight / early);
    return std::lerp(gap.preferred, gap.most, way.roomy * way.roomy * way.roomy);
}

bool is_nowhere_above(const PageSetting& a, const PageSetting& b) {
    constexpr double rounding = 1e-9;
    const auto above = [](double one, double other) { return one > other + rounding; };
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        if (above(a.gaps[i], b.gaps[i])) return false;
    return !above(a.size, b.size) && !above(a.side_margin, b.side_margin) &&
           !above(a.top_margin, b.top_margin) && !above(a.bottom_margin, b.bottom_margin) &&
           !above(a.leading, b.leading);
}

}

double characters_in_em(const composition::Composition& composition) {
    if (composition.character <= 0) return 0;
    double share = 0;
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        if (paragraph.style == theme::StyleName::bullet ||
            paragraph.style == theme::StyleName::line)
            share = std::max(share, paragraph.span.share);
    return share / composition.character;
}

double least_leading(double characters) {
    return 1.22 + (characters - 100) / 1000;
}

SettingChoices choices_of(const theme::Theme& theme, const model::Settings& settings,
                          double characters) {
    SettingChoices choices;
    const trade::PaperSize paper = size_of(*settings.paper);
    choices.paper_width = paper.width;
    choices.paper_height = paper.height;
    choices.size = within(theme.size, settings.size->least, settings.size->most);
    const double least = settings.margins->least * theme::points_per_inch;
    const double most = settings.margins->most * theme::points_per_inch;
    choices.side = within(theme.side_margin, least, most);
    choices.top = within(theme.top_margin, least, most);
    choices.bottom = within(theme.bottom_margin, least, most);
    choices.leading = theme.leading;
    choices.gaps = theme.gaps;
    if (characters > 0) suit_long_lines(choices, characters);
    return choices;
}

PageSetting setting_at(const SettingChoices& choices, double tightness) {
    const Way way{std::max(0.0, tightness), std::max(0.0, -tightness)};
    const double late = way.tight * way.tight, open = slowly_at_both_ends(way.roomy);
    PageSetting setting;
    setting.paper_width = choices.paper_width;
    setting.paper_height = choices.paper_height;
    setting.size = moved(choices.size, std::pow(way.tight, size_power), open);
    setting.side_margin = moved(choices.side, late, open);
    setting.top_margin =
        std::max(moved(choices.top, way.tight, open), side_share * setting.side_margin);
    setting.bottom_margin = moved(choices.bottom, way.tight, open);
    setting.leading = moved(choices.leading, way.tight, slowly_at_the_end(way.roomy));
    const double early = early_end(choices.size);
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        setting.gaps[i] = gap_at(choices.gaps[i], way, early);
    return setting;
}

PageSetting preferred_setting(const SettingChoices& choices) {
    return setting_at(choices, 0);
}

PageSetting least_setting(const SettingChoices& choices) {
    return setting_at(choices, tightest);
}

double most_bearable(double fullness) {
    const double lacking = std::max(0.0, 1 - fullness / decent);
    return bearable + bare_cost * lacking * lacking;
}

double tightness_of(const PageSetting& setting, const SettingChoices& choices) {
    const auto reaches = [&](double tightness) {
        return is_nowhere_above(setting_at(choices, tightness), setting);
    };
    if (!reaches(tightest)) return std::numeric_limits<double>::infinity();
    if (reaches(roomiest)) return roomiest;
    double low = roomiest, high = tightest;
    while (high - low > 1e-12) {
        const double middle = (low + high) / 2;
        (reaches(middle) ? high : low) = middle;
    }
    return high;
}

}

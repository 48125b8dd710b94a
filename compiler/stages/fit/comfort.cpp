// The measure that fit.hpp describes.
#include "compiler/stages/fit/comfort.hpp"

#include <algorithm>

namespace quoin::fit {

namespace {

theme::Preference within(const theme::Preference& preference, double least, double most) {
    theme::Preference held;
    held.least = std::clamp(preference.least, least, most);
    held.most = std::clamp(preference.most, held.least, most);
    held.preferred = std::clamp(preference.preferred, held.least, held.most);
    return held;
}

PageSetting setting_of(const SettingChoices& choices, double theme::Preference::*which) {
    PageSetting setting;
    setting.paper_width = choices.paper_width;
    setting.paper_height = choices.paper_height;
    setting.size = choices.size.*which;
    setting.side_margin = choices.side.*which;
    setting.top_margin = choices.top.*which;
    setting.bottom_margin = choices.bottom.*which;
    setting.leading = choices.leading.*which;
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        setting.gaps[i] = choices.gaps[i].*which;
    return setting;
}

double squared_share(double value, const theme::Preference& preference) {
    if (range(preference) <= 0) return 0;
    const double share = (preference.preferred - value) / range(preference);
    return share * share;
}

}

SettingChoices choices_of(const theme::Theme& theme, const model::Settings& settings) {
    SettingChoices choices;
    const bool a4 = *settings.paper == trade::Paper::a4;
    choices.paper_width = a4 ? 210 / 25.4 * theme::points_per_inch : 612;
    choices.paper_height = a4 ? 297 / 25.4 * theme::points_per_inch : 792;
    choices.size = within(theme.size, settings.size->least, settings.size->most);
    const double least = settings.margins->least * theme::points_per_inch;
    const double most = settings.margins->most * theme::points_per_inch;
    choices.side = within(theme.side_margin, least, most);
    choices.top = within(theme.top_margin, least, most);
    choices.bottom = within(theme.bottom_margin, least, most);
    choices.leading = theme.leading;
    choices.gaps = theme.gaps;
    return choices;
}

PageSetting preferred_setting(const SettingChoices& choices) {
    return setting_of(choices, &theme::Preference::preferred);
}

PageSetting least_setting(const SettingChoices& choices) {
    return setting_of(choices, &theme::Preference::least);
}

PageSetting opened_setting(PageSetting setting, const SettingChoices& choices, double share) {
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        setting.gaps[i] += share * (choices.gaps[i].most - setting.gaps[i]);
    return setting;
}

double range(const theme::Preference& preference) {
    return preference.preferred - preference.least;
}

double gap_room(const SettingChoices& choices, const GapCounts& counts) {
    double room = 0;
    for (std::size_t i = 0; i < theme::gap_count; ++i)
        room += counts[i] * range(choices.gaps[i]);
    return room;
}

double discomfort(const PageSetting& setting, const SettingChoices& choices,
                  const GapCounts& counts) {
    const double scale = setting.size / choices.size.preferred; // leading and gaps in points
    double sum = size_weight * squared_share(setting.size, choices.size) +
                 squared_share(setting.side_margin, choices.side) +
                 squared_share(setting.top_margin, choices.top) +
                 squared_share(setting.bottom_margin, choices.bottom) +
                 scale * scale * squared_share(setting.leading, choices.leading);
    const double room = gap_room(choices, counts);
    for (std::size_t i = 0; i < theme::gap_count; ++i) {
        const theme::Preference& gap = choices.gaps[i];
        if (room <= 0 || setting.gaps[i] > gap.preferred) continue;
        const double weight = counts[i] * range(gap) / room;
        sum += weight * scale * scale * squared_share(setting.gaps[i], gap);
    }
    return sum;
}

}

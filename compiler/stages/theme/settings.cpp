// Tables of the settings: label, what it sets, bounds.
#include "compiler/stages/theme/settings.hpp"

#include "compiler/stages/theme/messages.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <span>
#include <variant>
#include <vector>

namespace quoin::theme {

namespace {

struct PreferenceSetting {
    std::string_view label;
    Preference& (*of)(Theme&);
    Bounds bounds;
    double scale = 1; // from the file's unit to the theme's
};

template<GapName Name>
Preference& gap_of(Theme& theme) {
    return theme.gaps[static_cast<std::size_t>(Name)];
}

constexpr Bounds sizes{trade::size_bounds.least, trade::size_bounds.most, "pt"};
constexpr Bounds margins{trade::margin_bounds.least, trade::margin_bounds.most, "inch"};
constexpr Bounds leading_bounds{1.1, 1.5, "times a line's size"};
constexpr Bounds gap_bounds{0, 4, "em"};

constexpr PreferenceSetting preference_settings[] = {
    {"size", [](Theme& theme) -> Preference& { return theme.size; }, sizes},
    {"side-margin", [](Theme& theme) -> Preference& { return theme.side_margin; }, margins,
     points_per_inch},
    {"top-margin", [](Theme& theme) -> Preference& { return theme.top_margin; }, margins,
     points_per_inch},
    {"bottom-margin", [](Theme& theme) -> Preference& { return theme.bottom_margin; }, margins,
     points_per_inch},
    {"leading", [](Theme& theme) -> Preference& { return theme.leading; }, leading_bounds},
    {"side-width",
     [](Theme& theme) -> Preference& { return theme.side_width; },
     {0.2, 0.5, "of the columns' width"}},
    {"header-gap", gap_of<GapName::header>, gap_bounds},
    {"contact-gap", gap_of<GapName::contact>, gap_bounds},
    {"section-gap", gap_of<GapName::section>, gap_bounds},
    {"heading-gap", gap_of<GapName::heading>, gap_bounds},
    {"entry-gap", gap_of<GapName::entry>, gap_bounds},
    {"line-gap", gap_of<GapName::line>, gap_bounds},
    {"bullet-gap", gap_of<GapName::bullet>, gap_bounds},
};

struct WordsSetting {
    std::string_view label;
    std::string Theme::*of;
};

constexpr WordsSetting words_settings[] = {
    {"theme", &Theme::name},
    {"use", &Theme::use},
    {"bullet", &Theme::bullet},
    {"inner-bullet", &Theme::inner_bullet},
};

void read_family(const ThemeLine& line, Theme& theme, Diagnostics&) {
    theme.family = line.value.joined();
    theme.family_place = line.place;
}

void read_fallback(const ThemeLine& line, Theme& theme, Diagnostics&) {
    theme.fallback = parted_by_commas(line.value.joined());
    theme.fallback_places.assign(theme.fallback.size(), line.place);
}

void read_family_file(const ThemeLine& line, Theme& theme, Diagnostics&) {
    theme.family_files.clear();
    for (const std::string& path : parted_by_commas(line.value.joined()))
        theme.family_files.push_back(std::filesystem::path("/usr/share/fonts") / path);
    theme.family_files_place = line.place;
}

void read_kinds(const ThemeLine& line, std::vector<trade::Holds>& kinds, Diagnostics& diagnostics) {
    kinds.clear();
    for (const std::string& name : parted_by_commas(line.value.joined())) {
        if (const auto holds = trade::named<trade::Holds>(name)) {
            kinds.push_back(*holds);
            continue;
        }
        if (name == "none") continue;
        const auto known = trade::names_of<trade::Holds>();
        diagnostics.error(line.place, fill<messages::no_section_holds>(name, fmt::join(known, ", "),
                                                                       did_you_mean(name, known)));
    }
}

// Text may be set in it, so it is held to what text needs.
bool is_dark_enough(const Colour& colour, const ThemeLine& line, Diagnostics& diagnostics) {
    const double contrast = contrast_on_white(colour);
    if (contrast >= least_contrast) return true;
    diagnostics.error(line.place,
                      fill<messages::too_light>(line.value.joined(), contrast, least_contrast));
    return false;
}

void read_accent(const ThemeLine& line, Theme& theme, Diagnostics& diagnostics) {
    const auto colour = read_colour(line, diagnostics);
    if (colour && is_dark_enough(*colour, line, diagnostics)) theme.accent = colour;
}

void read_ways(const ThemeLine& line, Theme& theme, Diagnostics&) {
    theme.ways = parted_by_commas(line.value.joined());
}

void read_skill_columns(const ThemeLine& line, Theme& theme, Diagnostics& diagnostics) {
    constexpr std::string_view counts[] = {"one", "two", "three"};
    if (const auto index = read_choice(line, counts, diagnostics))
        theme.skill_columns = static_cast<int>(*index) + 1;
}

struct OwnSetting {
    std::string_view label;
    void (*read)(const ThemeLine&, Theme&, Diagnostics&);
};

constexpr OwnSetting own_settings[] = {
    {"family", read_family},
    {"fallback", read_fallback},
    {"family-file", read_family_file},
    {"accent", read_accent},
    {"side-sections", [](const ThemeLine& line, Theme& theme,
                         Diagnostics& faults) { read_kinds(line, theme.side_sections, faults); }},
    {"numbered", [](const ThemeLine& line, Theme& theme,
                    Diagnostics& faults) { read_kinds(line, theme.numbered, faults); }},
    {"skill-columns", read_skill_columns},
    {"ways", read_ways},
    {"based-on", [](const ThemeLine&, Theme&, Diagnostics&) {}}, // read before all else
};

template<typename Table>
auto find_row(const Table& table, std::string_view label) {
    const auto row = std::ranges::find_if(table, [&](const auto& r) { return r.label == label; });
    return row == std::end(table) ? nullptr : &*row;
}

template<typename Table>
void add_labels(const Table& table, std::vector<std::string_view>& labels) {
    for (const auto& row : table)
        labels.push_back(row.label);
}

// Settings of a style

struct StyleNumber {
    std::string_view label;
    double Style::*of;
    Bounds bounds;
};

// More tracking than a twelfth of an em and readers take the letters for words.
constexpr StyleNumber style_numbers[] = {
    {"size", &Style::size, {0.8, 4, "times the text"}},
    {"least-size", &Style::least_size, {0.8, 4, "times the text"}},
    {"indent", &Style::indent, {0, 8, "em"}},
    {"tracking", &Style::tracking, {0, 1.0 / 12, "em"}},
    {"rule-thickness", &Style::rule_thickness, {0.25, 2, "pt"}},
    {"rule-gap", &Style::rule_gap, {0, 1, "em"}},
    {"turn-over", &Style::turn_over, {0, 4, "em"}},
    {"most-measure", &Style::most_measure, {40, 200, "characters"}},
};

struct StyleChoice {
    std::string_view label;
    std::span<const std::string_view> words;
    void (*set)(Style&, std::size_t);
};

constexpr std::string_view weights[] = {"regular", "bold"};
constexpr std::string_view slants[] = {"upright", "italic"};
constexpr std::string_view caps[] = {"none", "small", "all"};
constexpr std::string_view no_or_yes[] = {"no", "yes"};
constexpr std::string_view figure_kinds[] = {"lining", "oldstyle"};
constexpr std::string_view alignments[] = {"left", "centre", "right", "justified"};
constexpr std::string_view rule_places[] = {"none", "above", "below"};

constexpr StyleChoice style_choices[] = {
    {"weight", weights, [](Style& style, std::size_t index) { style.bold = index == 1; }},
    {"slant", slants, [](Style& style, std::size_t index) { style.italic = index == 1; }},
    {"caps", caps,
     [](Style& style, std::size_t index) { style.letters.caps = static_cast<Caps>(index); }},
    {"figures", figure_kinds,
     [](Style& style, std::size_t index) { style.letters.figures = static_cast<Figures>(index); }},
    {"ligatures", no_or_yes,
     [](Style& style, std::size_t index) { style.letters.ligatures = index == 1; }},
    {"align", alignments,
     [](Style& style, std::size_t index) { style.align = static_cast<Align>(index); }},
    {"rule", rule_places,
     [](Style& style, std::size_t index) { style.rule = static_cast<RuleAt>(index); }},
};

bool says(const ThemeLine& line, std::string_view word) {
    return line.value.joined() == word;
}

void read_text_colour(const ThemeLine& line, Style& style, Diagnostics& diagnostics) {
    style.accent = says(line, "accent");
    if (style.accent) return;
    const auto colour = read_colour(line, diagnostics);
    if (colour && is_dark_enough(*colour, line, diagnostics)) style.colour = *colour;
}

void read_rule_colour(const ThemeLine& line, Style& style, Diagnostics& diagnostics) {
    style.rule_accent = says(line, "accent");
    if (style.rule_accent) return;
    if (const auto colour = read_colour(line, diagnostics)) style.rule_colour = *colour;
}

// An icon says what the text beside it says, and is drawn as dark as that.
void read_icon_colour(const ThemeLine& line, Style& style, Diagnostics& diagnostics) {
    style.icon_accent = says(line, "accent");
    if (style.icon_accent) return;
    const auto colour = read_colour(line, diagnostics);
    if (colour && is_dark_enough(*colour, line, diagnostics)) style.icon_colour = colour;
}

void read_rule_length(const ThemeLine& line, Style& style, Diagnostics& diagnostics) {
    constexpr Bounds bounds{0.5, 60, "em"};
    if (says(line, "full"))
        style.rule_length = 0;
    else if (const auto length = read_number(line, bounds, diagnostics))
        style.rule_length = *length;
}

struct OwnStyleSetting {
    std::string_view label;
    void (*read)(const ThemeLine&, Style&, Diagnostics&);
};

constexpr OwnStyleSetting own_style_settings[] = {
    {"family",
     [](const ThemeLine& line, Style& style, Diagnostics&) { style.family = line.value.joined(); }},
    {"colour", read_text_colour},
    {"rule-colour", read_rule_colour},
    {"icon-colour", read_icon_colour},
    {"rule-length", read_rule_length},
};

constexpr std::string_view style_names[style_count] = {
    "text", "name", "headline", "contact", "section", "title", "line", "bullet", "running-head"};

void report_unknown(const ThemeLine& line, std::string_view what,
                    const std::vector<std::string_view>& labels, Diagnostics& diagnostics) {
    diagnostics.error(line.label_place,
                      fill<messages::no_setting>(line.label, what, fmt::join(labels, ", "),
                                                 did_you_mean(line.label, labels)));
}

}

void read_theme_setting(const ThemeLine& line, Theme& theme, Diagnostics& diagnostics) {
    if (const auto* row = find_row(preference_settings, line.label)) {
        if (auto value = read_preference(line, row->bounds, diagnostics))
            row->of(theme) = {value->least * row->scale, value->preferred * row->scale,
                              value->most * row->scale};
    } else if (const auto* number = find_row(number_settings, line.label)) {
        if (const auto value = read_number(line, number->bounds, diagnostics))
            theme.*number->of = *value;
    } else if (const auto* words = find_row(words_settings, line.label)) {
        theme.*words->of = line.value.joined();
    } else if (const auto* either = find_row(either_settings, line.label)) {
        if (const auto choice = read_choice(line, either->words, diagnostics))
            theme.*either->of = *choice == 1;
    } else if (const auto* own = find_row(own_settings, line.label)) {
        own->read(line, theme, diagnostics);
    } else {
        std::vector<std::string_view> labels;
        add_labels(words_settings, labels);
        add_labels(own_settings, labels);
        add_labels(either_settings, labels);
        add_labels(preference_settings, labels);
        add_labels(number_settings, labels);
        report_unknown(line, "of a theme", labels, diagnostics);
    }
}

void read_style_setting(const ThemeLine& line, Style& style, Diagnostics& diagnostics) {
    style.places[line.label] = line.place;
    if (const auto* number = find_row(style_numbers, line.label)) {
        if (const auto value = read_number(line, number->bounds, diagnostics))
            style.*number->of = *value;
    } else if (const auto* choice = find_row(style_choices, line.label)) {
        if (const auto index = read_choice(line, choice->words, diagnostics))
            choice->set(style, *index);
    } else if (const auto* own = find_row(own_style_settings, line.label)) {
        own->read(line, style, diagnostics);
    } else {
        std::vector<std::string_view> labels;
        add_labels(style_numbers, labels);
        add_labels(style_choices, labels);
        add_labels(own_style_settings, labels);
        report_unknown(line, "of a style", labels, diagnostics);
    }
}

void read_field_setting(const ThemeLine& line, FieldLetters& letters, Diagnostics& diagnostics) {
    constexpr std::string_view known[] = {"caps", "figures", "ligatures"};
    letters.places[line.label] = line.place;
    const auto choice = [&](std::span<const std::string_view> words) {
        return read_choice(line, words, diagnostics);
    };
    if (line.label == "caps") {
        if (const auto index = choice(caps)) letters.caps = static_cast<Caps>(*index);
    } else if (line.label == "figures") {
        if (const auto index = choice(figure_kinds)) letters.figures = static_cast<Figures>(*index);
    } else if (line.label == "ligatures") {
        if (const auto index = choice(no_or_yes)) letters.ligatures = *index == 1;
    } else {
        report_unknown(line, "of a field", {std::begin(known), std::end(known)}, diagnostics);
    }
}

std::optional<trade::FieldName> read_field_block(const ThemeLine& line, Diagnostics& diagnostics) {
    std::vector<std::string_view> names;
    std::vector<trade::FieldName> fields;
    for (const trade::Word& word : trade::vocabulary())
        if (const auto* field = std::get_if<trade::FieldName>(&word.means)) {
            names.push_back(word.label);
            fields.push_back(*field);
        }
    names.push_back("group");
    fields.push_back(trade::FieldName::group);
    const auto index = read_choice(line, names, diagnostics);
    return index ? std::optional(fields[*index]) : std::nullopt;
}

std::optional<StyleName> read_style_name(const ThemeLine& line, Diagnostics& diagnostics) {
    const auto index = read_choice(line, style_names, diagnostics);
    return index ? std::optional(static_cast<StyleName>(*index)) : std::nullopt;
}

std::string_view name_of(StyleName style) {
    return style_names[static_cast<std::size_t>(style)];
}

std::string_view name_of(Align align) {
    return alignments[static_cast<std::size_t>(align)];
}

}

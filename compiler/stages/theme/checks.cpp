#include "compiler/stages/theme/checks.hpp"

#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/settings.hpp"
#include "compiler/trade/paper.hpp"

#include <string_view>

namespace quoin::theme {

namespace {

Place place_of(const Style& style, std::string_view label) {
    const auto place = style.places.find(label);
    return place == style.places.end() ? Place{} : place->second;
}

// Text smaller than 10 pt is never set, whatever the theme.
void check_size(const Theme& theme, StyleName name, std::string_view label, double ratio,
                std::optional<Place> own_size, Diagnostics& diagnostics) {
    const double smallest = ratio * theme.size.least;
    if (ratio == 0 || smallest > least_text - 1e-9) return;
    const Place place = place_of(theme.style(name), label);
    const bool elsewhere = own_size && own_size->file != place.file;
    diagnostics.error(elsewhere ? *own_size : place,
                      fill<messages::too_small>(name_of(name), smallest, least_text,
                                                least_text / theme.size.least));
}

void check_form_fills(const Theme& theme, const Form& form, Diagnostics& diagnostics) {
    for (const PatternLine& line : form.lines) {
        const Align align = theme.style(line.style).align;
        if (line.fills() && (align == Align::centre || align == Align::right))
            diagnostics.error(line.place,
                              fill<messages::fill_not_left>(name_of(line.style), name_of(align)));
    }
}

// Its lines stand level with the text's, whose leading its own has to bear.
constexpr double most_margin_heading = 1.1; // ratio of the text size
constexpr double least_heading_room = 4;    // em: `Education` and its like
constexpr double least_skill_column = 10;   // em: two or three words

void check_margin_style(const Theme& theme, Diagnostics& diagnostics) {
    const Style& style = theme.style(StyleName::section);
    const auto fault = [&](std::string_view label, std::string text) {
        diagnostics.error(place_of(style, label), std::move(text));
    };
    if (style.align == Align::centre || style.align == Align::justified)
        fault("align", fill<messages::margin_align>(name_of(style.align)));
    if (style.rule == RuleAt::below) fault("rule", fill<messages::margin_rule>());
    if (style.size > most_margin_heading)
        fault("size", fill<messages::margin_size>(style.size, most_margin_heading));
}

// Of one column of skills, em, where lines are shortest.
double narrowest_skill_column(const Theme& theme) {
    const double paper = trade::size_of(trade::Paper::a4).width;
    const double measure = (paper - 2 * theme.side_margin.most) / theme.size.most;
    const int columns = theme.skill_columns;
    return (measure - theme.body_indent - theme.column_gap * (columns - 1)) / columns;
}

}

void check_accents(Theme& theme, Diagnostics& diagnostics) {
    for (std::size_t index = 0; index < style_count; ++index) {
        Style& style = theme.styles[index];
        const std::string_view label = style.accent        ? "colour"
                                       : style.rule_accent ? "rule-colour"
                                       : style.icon_accent ? "icon-colour"
                                                           : "";
        if (label.empty()) continue;
        if (!theme.accent) {
            diagnostics.error(
                place_of(style, label),
                fill<messages::no_accent>(name_of(static_cast<StyleName>(index)), theme.name));
            continue;
        }
        if (style.accent) style.colour = *theme.accent;
        if (style.rule_accent) style.rule_colour = *theme.accent;
        if (style.icon_accent) style.icon_colour = theme.accent;
    }
}

void check_sizes(const Theme& theme, std::optional<Place> own_size, Diagnostics& diagnostics) {
    for (std::size_t index = 0; index < style_count; ++index) {
        const auto name = static_cast<StyleName>(index);
        const Style& style = theme.styles[index];
        if (theme.size.most > 0) {
            check_size(theme, name, "size", style.size, own_size, diagnostics);
            check_size(theme, name, "least-size", style.least_size, own_size, diagnostics);
        }
    }
}

void check_fills(const Theme& theme, Diagnostics& diagnostics) {
    check_form_fills(theme, theme.heading, diagnostics);
    for (const auto& [holds, form] : theme.forms)
        check_form_fills(theme, form, diagnostics);
}

void check_geometry(const Theme& theme, const SettingPlace& place_of, Diagnostics& diagnostics) {
    if (theme.margin_headings && theme.two_columns)
        diagnostics.error(place_of({"headings", "columns"}), fill<messages::margin_of_columns>());
    if (theme.skill_columns > 1 && theme.two_columns)
        diagnostics.error(place_of({"skill-columns", "columns"}),
                          fill<messages::skills_of_columns>());
    if (theme.margin_headings) {
        const double room = theme.body_indent - theme.column_gap;
        if (room < least_heading_room)
            diagnostics.error(place_of({"headings", "body-indent", "column-gap"}),
                              fill<messages::margin_narrow>(theme.body_indent,
                                                            least_heading_room + theme.column_gap));
        check_margin_style(theme, diagnostics);
    }
    if (theme.skill_columns == 1 || theme.size.most == 0) return;
    const double narrowest = narrowest_skill_column(theme);
    if (narrowest < least_skill_column)
        diagnostics.error(place_of({"skill-columns", "body-indent", "column-gap"}),
                          fill<messages::skills_narrow>(narrowest, least_skill_column));
}

}

#include "compiler/stages/theme/checks.hpp"

#include "compiler/stages/theme/messages.hpp"
#include "compiler/stages/theme/settings.hpp"

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

}

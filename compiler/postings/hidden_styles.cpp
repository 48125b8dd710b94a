#include "compiler/postings/hidden_styles.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/utf8.hpp"

#include <algorithm>
#include <cstddef>

namespace quoin::postings {

namespace {

constexpr std::string_view css_blanks = " \t\r\n\f";

// `font-size: 1px`: below what can be read.
bool is_tiny(std::string_view property, std::string_view value) {
    if (property != "font-size") return false;
    constexpr std::string_view units[] = {"", "px", "pt"};
    const std::size_t figures = std::min(value.find_first_not_of("0123456789."), value.size());
    const std::string_view number = value.substr(0, figures);
    const bool zero = !number.empty() && number.find_first_not_of("0.") == number.npos;
    const bool few = number.starts_with("0.") || number == "1" || number == "2" || number == "3";
    return zero || (few && is_one_of(value.substr(figures), units));
}

bool is_hiding(std::string_view property, std::string_view value) {
    constexpr std::string_view shifts[] = {"left", "top", "right", "text-indent", "margin-left"};
    if (property == "display") return value == "none";
    if (property == "visibility") return value == "hidden" || value == "collapse";
    if (property == "opacity") return value == "0" || value == "0.0";
    if (property == "clip") return value.starts_with("rect(0") || value.starts_with("rect(1px");
    const bool far_off = value.starts_with("-999") || value.starts_with("-1000");
    return is_tiny(property, value) || (far_off && is_one_of(property, shifts));
}

}

bool hides(std::string_view declarations) {
    const std::string close = replaced(lower_case(declarations), " ", "");
    for (const std::string_view declaration : pieces_of(close, ";")) {
        const std::size_t colon = declaration.find(':');
        if (colon == declaration.npos) continue;
        std::string_view value = trimmed(declaration.substr(colon + 1), css_blanks);
        if (value.ends_with("!important"))
            value.remove_suffix(std::string_view("!important").size());
        if (is_hiding(trimmed(declaration.substr(0, colon), css_blanks), value)) return true;
    }
    return false;
}

void HiddenStyles::read(std::string_view style_sheet) {
    std::size_t depth = 0, begin = 0, body = 0;
    for (std::size_t i = 0; i < style_sheet.size(); ++i) {
        if (style_sheet[i] == '{' && ++depth == 1) body = i + 1;
        if (style_sheet[i] != '}' || depth == 0) continue;
        if (--depth > 0) continue;
        const std::string_view selectors =
            trimmed(style_sheet.substr(begin, body - 1 - begin), css_blanks);
        if (!selectors.starts_with('@')) read_rule(selectors, style_sheet.substr(body, i - body));
        begin = i + 1;
    }
}

void HiddenStyles::read_rule(std::string_view selectors, std::string_view declarations) {
    if (!hides(declarations)) return;
    for (const std::string_view one : pieces_of(selectors, ",")) {
        const std::string_view selector = trimmed(one, css_blanks);
        const bool simple = selector.size() > 1 && (selector[0] == '.' || selector[0] == '#') &&
                            selector.substr(1).find_first_of(" .#>+~:[") == selector.npos;
        if (simple) selectors_.emplace(selector);
    }
}

bool HiddenStyles::hide_class(std::string_view classes) const {
    const auto all = parted(classes, css_blanks);
    return std::ranges::any_of(
        all, [&](const std::string& one) { return selectors_.contains('.' + one); });
}

}

#include "compiler/commands/set/explain_report.hpp"

#include "compiler/base/whole_file_place.hpp"
#include "compiler/commands/messages.hpp"
#include "compiler/stages/fit/page_breaks.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string_view>

namespace quoin::commands {

namespace {

struct Wording {
    std::string_view row;  // of the table
    std::string_view step; // `{}` takes the value
    std::string_view unit;
};

constexpr Wording wordings[fit::quantity_count] = {
    {"size", "a size of {} pt", " pt"},
    {"leading", "a leading of {}", ""},
    {"side margins", "side margins of {} in", " in"},
    {"top margin", "a top margin of {} in", " in"},
    {"bottom margin", "a bottom margin of {} in", " in"},
    {"gaps", "gaps of {}", ""},
};

const Wording& wording_of(fit::Quantity which) {
    return wordings[static_cast<std::size_t>(which)];
}

// As few decimals as tell it, three at most.
std::string number(double value) {
    std::string text = fmt::format("{:.3f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string percent(double share) {
    return fmt::format("{} %", std::lround(share * 100));
}

std::string value_of(fit::Quantity which, double value) {
    return which == fit::Quantity::gaps ? percent(value) : number(value);
}

std::string in_lines(double points, const fit::Explanation& explanation) {
    const std::string lines = fmt::format("{:.1f}", points / explanation.line);
    return fmt::format("{:.1f} pt ({} {})", points, lines, lines == "1.0" ? "line" : "lines");
}

std::string row(fit::Quantity which, const fit::Explanation& explanation) {
    const fit::Chosen& at = explanation.chosen[static_cast<std::size_t>(which)];
    std::string bounds;
    if (which != fit::Quantity::gaps)
        bounds = fmt::format("{}..{}{}", number(at.bounds.least), number(at.bounds.most),
                             wording_of(which).unit);
    std::string line =
        fmt::format("  {:<15}{:<9}{:<12}{}", wording_of(which).row, value_of(which, at.value),
                    value_of(which, at.bounds.preferred), bounds);
    line.erase(line.find_last_not_of(' ') + 1);
    return line + '\n';
}

std::string quantities_listed(const fit::Explanation& explanation,
                              bool (fit::Explanation::*is)(fit::Quantity) const) {
    std::string list;
    for (std::size_t i = 0; i < fit::quantity_count; ++i)
        if (const auto which = static_cast<fit::Quantity>(i); (explanation.*is)(which))
            list += fmt::format("{}{}", list.empty() ? "" : ", ", wording_of(which).row);
    return list;
}

std::string binding(const fit::Explanation& explanation) {
    const bool several = explanation.pages > 1;
    std::string text;
    if (explanation.height_binds)
        text += fmt::format("  what binds: the height of {}\n", several ? "a page" : "the page");
    if (explanation.measure_binds)
        text += fmt::format("  what binds{}: the measure; a narrower one takes a line more\n",
                            explanation.height_binds ? " too" : "");
    const std::string least = quantities_listed(explanation, &fit::Explanation::is_at_least);
    if (!least.empty()) text += "  at its least: " + least + '\n';
    return text;
}

std::string missing(const fit::Explanation& explanation) {
    std::string text;
    const std::string_view each = explanation.pages > 1 ? " of height on each page" : " of height";
    if (explanation.next_better) {
        const auto& [which, value, points] = *explanation.next_better;
        text +=
            fmt::format("  {}, all else the same, lacks {}{}\n",
                        fmt::format(fmt::runtime(wording_of(which).step), value_of(which, value)),
                        in_lines(points, explanation), each);
    }
    if (explanation.preferred_missing > 0)
        text += fmt::format("  the preferred setting lacks {}{}\n",
                            in_lines(explanation.preferred_missing, explanation), each);
    return text;
}

std::string place_and_line(const Place& place, const Sources& sources, std::uint32_t file) {
    if (place.line == 0) return sources.file(file).name;
    return fmt::format("{}:{}", sources.file(place.file).name, place.line);
}

std::string_view how_set(const fit::Explanation& explanation) {
    if (explanation.is_opened)
        return "opened beyond what the theme prefers, into the room there is";
    return explanation.preferred_missing == 0 ? "set as the theme prefers it"
                                              : "the most comfortable setting that holds it";
}

}

std::string explain_report(const fit::Explanation& explanation,
                           const composition::Composition& composition, const Sources& sources,
                           std::uint32_t file) {
    std::string text = fmt::format("{}: {} {}, {}\n", sources.file(file).name, explanation.pages,
                                   explanation.pages == 1 ? "page" : "pages", how_set(explanation));
    text += fmt::format("  {:<15}{:<9}{:<12}{}\n", "", "set", "preferred", "allowed");
    for (std::size_t i = 0; i < fit::quantity_count; ++i)
        text += row(static_cast<fit::Quantity>(i), explanation);
    text += binding(explanation) + missing(explanation);
    text += fmt::format("  room left at the foot{}: {}\n",
                        explanation.pages > 1 ? " of the last page" : "",
                        explanation.room < 0.05 ? "none" : in_lines(explanation.room, explanation));
    for (const fit::LoneWord& lone : explanation.lone_words)
        text += fmt::format(
            "  {}: the last line is one short word, '{}'\n",
            place_and_line(composition.paragraphs[lone.paragraph].place, sources, file), lone.word);
    return text;
}

std::string explain_report(const stages::Typeset& typeset, const fit::Fit& fit,
                           const Sources& sources, std::uint32_t file) {
    const fit::Explanation explanation =
        explain(typeset.composition, typeset.theme, typeset.resume.settings, fit);
    return explain_report(explanation, typeset.composition, sources, file);
}

void warn_of_thin_page(const stages::Typeset& typeset, const fit::Fit& fit, std::uint32_t file,
                       Diagnostics& diagnostics) {
    const std::vector<double> fullness = page_fullness(typeset.composition, fit);
    if (fullness.size() < 2 || fullness.back() >= fit::least_fullness) return;
    const std::size_t pages = fullness.size();
    diagnostics.warning(whole_file(file),
                        fill<messages::thin_page>(pages == 2 ? "second" : "last",
                                                  percent(fullness.back()), pages - 1));
}

}

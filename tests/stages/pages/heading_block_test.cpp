// The name, the headline and the contact lines on every page: they never touch, and the headline is
// as near to the name as the contact line is to it.
#include "compiler/stages/fit/column.hpp"
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace {

using namespace quoin;

// The ink of the heading's lines on the first page, top down.
std::vector<every_page::Ink> heading_lines(const composition::Composition& composition,
                                           const pages::Page& page) {
    std::vector<every_page::Ink> lines;
    std::optional<double> baseline;
    for (const pages::PlacedRun& placed : page.runs) {
        if (placed.paragraph >= composition.paragraphs.size()) continue;
        const composition::Paragraph& paragraph = composition.paragraphs[placed.paragraph];
        if (paragraph.style == theme::StyleName::section) break;
        if (baseline != placed.y) lines.emplace_back();
        baseline = placed.y;
        every_page::add_ink(lines.back(), paragraph.runs[placed.run], placed);
    }
    return lines;
}

void check_air(const stages::Typeset& set, const fit::Fit& fit) {
    const pages::Pages pages = pages::make_pages(set.composition, fit);
    const auto lines = heading_lines(set.composition, pages.pages.front());
    for (std::size_t i = 1; i < lines.size(); ++i)
        CHECK(lines[i - 1].bottom - lines[i].top >= 0.15 * fit.setting.size - 0.02);
}

// From the descenders' depth to the ascenders' height, in pt.
double air_above(const stages::Typeset& set, const fit::Column& column, std::size_t line,
                 const fit::PageSetting& setting) {
    const composition::Paragraph& at = *column.lines[line].paragraph;
    const composition::Paragraph& above = *column.lines[line - 1].paragraph;
    CHECK(set.theme.gap(at.gap).preferred > 0);
    return to_baseline(column, line).at(setting) - (above.descent + at.ascent) * setting.size;
}

void check_even(const stages::Typeset& set, const fit::PageSetting& setting) {
    const std::vector<int> counts(set.composition.paragraphs.size(), 1);
    const fit::Column column = fit::make_column(set.composition, counts);
    if (column.lines.at(1).paragraph->style != theme::StyleName::headline) return;
    const double to_name = air_above(set, column, 1, setting);
    CHECK(std::abs(to_name - air_above(set, column, 2, setting)) <= 0.1 * setting.size);
}

}

TEST_CASE("name, headline and contact lines keep 0.15 em of air on every page, at every setting") {
    every_page::each([](const stages::Typeset& set, const std::string&) {
        const auto& settings = set.resume.settings;
        const fit::Fit at[] = {stages::fit_or_draft(set),
                               fit::draft_fit(set.composition, set.theme, settings),
                               fit::preferred_fit(set.composition, set.theme, settings)};
        for (const fit::Fit& fit : at) {
            check_air(set, fit);
            check_even(set, fit.setting);
        }
    });
}

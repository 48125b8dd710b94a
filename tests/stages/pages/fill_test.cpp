// What `{fill}` sends to the right edge: it ends there on every page, never touches what stands
// before it, and where one of a page would not find room in its line, the page takes another way.
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <string>

namespace {

using namespace quoin;

constexpr double same = 0.01; // pt

struct Sides { // of one line that is filled, pt
    double left_end = 0, right_begin = 0, right_end = 0;
};

// The filled lines of a page, each checked for itself.
template<typename Visit>
void each_filled_line(const composition::Composition& composition, const pages::Page& page,
                      Visit visit) {
    for (std::size_t i = 0; i < page.runs.size(); ++i) {
        const pages::PlacedRun& placed = page.runs[i];
        if (placed.paragraph >= composition.paragraphs.size()) continue;
        const composition::Paragraph& paragraph = composition.paragraphs[placed.paragraph];
        if (paragraph.fill_run != placed.run || i + 1 == page.runs.size()) continue;
        if (page.runs[i + 1].y != placed.y) continue; // the rest is on the next line
        Sides sides{placed.x, page.runs[i + 1].x, 0};
        for (std::size_t r = i + 1; r < page.runs.size() && page.runs[r].y == placed.y &&
                                    page.runs[r].paragraph == placed.paragraph;
             ++r)
            sides.right_end = page.runs[r].x + page.runs[r].width;
        visit(paragraph, sides);
    }
}

std::string title_of(const std::string& fields, const std::string& pattern) {
    const auto composition =
        composed::compose(composed::entry("honors", fields), "form: honors\ntitle: " + pattern);
    return composed::text_of(composition.paragraphs.back());
}

const std::string markup = composed::entry("honors", "award: Medal of the Harbour Master\n"
                                                     "by: Skerry County\ndates: Jun 2026");
const std::string filled = "form: honors\ntitle: {award}[, {by}] {fill} {dates}";

}

TEST_CASE("what is sent to the right edge ends there on every page, apart from what is before it") {
    std::size_t count = 0;
    every_page::each([&](const stages::Typeset& set, const std::string&) {
        const fit::Fit fit = stages::fit_or_draft(set);
        for (const pages::Page& page : stages::make_pages(set, fit).pages)
            each_filled_line(set.composition, page, [&](const auto& paragraph, const Sides& sides) {
                const double edge =
                    fit.setting.side_margin + (paragraph.span.begin(full_measure(fit.setting)) +
                                               paragraph.span.width(full_measure(fit.setting))) *
                                                  fit.setting.size;
                const double least = set.theme.fill_gap * paragraph.size * fit.setting.size;
                CHECK(std::abs(sides.right_end - edge) <= same);
                CHECK(sides.right_begin - sides.left_end >= least - same);
                ++count;
            });
        for (std::size_t p = 0; p < fit.lines.size(); ++p)
            if (set.composition.paragraphs[p].fill_run) CHECK(fit.lines[p].size() == 1);
    });
    CHECK(count > 100);
}

TEST_CASE("a fill stands between what there is, without a separator left over") {
    const struct {
        std::string fields, pattern, text;
    } cases[] = {
        {"award: A\nby: B\ndates: 2026", "{award}[, {by}] {fill} {dates}", "A, B 2026"},
        {"award: A\nby: B", "{award}[, {by}] {fill} {dates}", "A, B"},
        {"award: A\nby: B\ndates: 2026", "{award} {fill} [{by}][ · {dates}]", "A B · 2026"},
        {"award: A\ndates: 2026", "{award} {fill} [{by}][ · {dates}]", "A 2026"},
        {"award: A\ndates: 2026", "{by} · {fill} [{award}][ · {dates}]", " A · 2026"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.pattern);
        CHECK(title_of(one.fields, one.pattern) == one.text);
    }
}

TEST_CASE("where both sides find no room they take two lines, and the right one stays whole") {
    const auto composition = composed::compose(markup, filled);
    const composition::Paragraph& title = composition.paragraphs.back();
    REQUIRE(title.fill_run);
    const lines::MeasuredParagraph measured(title, 8);
    const double whole = measured.lines(100).front().width;
    CHECK(measured.line_count(whole + 1e-9) == 1);
    CHECK(measured.line_count(whole - 1e-9) == 2);
    for (double measure = 8; measure < whole; measure += 0.5) {
        const auto lines = measured.lines(measure);
        CHECK(lines.back().begin.run <= *title.fill_run + 1); // no line ends within the dates
        for (const lines::Line& line : lines)
            CHECK(line.width <= measure + 1e-9);
    }
}

TEST_CASE("the white of a fill is as wide as the theme says") {
    const auto width = [](const std::string& gap) {
        const auto composition = composed::compose(markup, gap + filled);
        return lines::MeasuredParagraph(composition.paragraphs.back(), 8).lines(200).front().width;
    };
    CHECK(std::abs(width("fill-gap: 3\n\n") - width("fill-gap: 0.5\n\n") - 2.5) < 1e-3);
}

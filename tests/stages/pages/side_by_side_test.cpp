// What stands side by side, on every sample: headings in the margin with the first lines of their
// sections, and the columns of skills.
#include "compiler/stages/fit/column.hpp"
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace {

using namespace quoin;

constexpr double tolerance = 0.01; // pt

struct SetLine { // of a paragraph
    std::size_t page = 0;
    double y = 0, left = 0, right = 0;
};
using SetLines = std::map<std::uint32_t, std::vector<SetLine>>; // by paragraph

SetLines lines_of(const pages::Pages& pages) {
    SetLines lines;
    for (std::size_t page = 0; page < pages.pages.size(); ++page)
        for (const pages::PlacedRun& run : pages.pages[page].runs) {
            if (pages::is_artifact(run)) continue;
            std::vector<SetLine>& of = lines[run.paragraph];
            if (of.empty() || of.back().page != page || of.back().y != run.y)
                of.push_back({page, run.y, run.x, run.x});
            of.back().right = std::max(of.back().right, run.x + run.width);
        }
    return lines;
}

template<typename Visit>
void each_page(Visit visit) {
    for (const auto& sample : every_page::samples())
        for (const trade::Paper paper : {trade::Paper::letter, trade::Paper::a4}) {
            const stages::Typeset set = every_page::typeset(
                sample, QUOIN_SOURCE_FOLDER "/tests/fixtures/margin.theme", paper);
            const std::string name = sample.stem().string();
            CAPTURE(name);
            const fit::Fit fit = stages::fit_or_draft(set);
            visit(set, fit, stages::make_pages(set, fit));
        }
}

// The least height of so many columns that paragraphs of these counts of lines fill in order.
int least_height(const std::vector<int>& counts, std::size_t first, std::uint32_t columns) {
    int height = 0, least = 0;
    for (std::size_t i = first; columns == 1 && i < counts.size(); ++i)
        least += counts[i];
    if (columns == 1) return least;
    least = 1 << 20;
    for (std::size_t i = first; i + columns <= counts.size(); ++i) {
        height += counts[i];
        least = std::min(least, std::max(height, least_height(counts, i + 1, columns - 1)));
    }
    return least;
}

}

TEST_CASE(
    "a heading in the margin begins on its text's baseline, keeps its pitch and stands clear") {
    std::size_t of_two_lines = 0;
    each_page([&](const stages::Typeset& set, const fit::Fit& fit, const pages::Pages& pages) {
        const SetLines lines = lines_of(pages);
        const auto& all = set.composition.paragraphs;
        const SetLine* below = nullptr; // the next section's heading
        for (auto p = static_cast<std::uint32_t>(all.size()); p-- > 0;) {
            if (!all[p].in_margin) continue;
            const std::vector<SetLine>& heading = lines.at(p);
            CHECK(std::abs(heading.front().y - lines.at(p + 1).front().y) <= tolerance);
            for (std::size_t i = 1; i < heading.size(); ++i)
                CHECK(std::abs(heading[i - 1].y - heading[i].y -
                               fit.setting.leading * fit.setting.size) <= tolerance);
            for (const SetLine& line : heading) {
                CHECK(line.page == heading.front().page);
                CHECK(line.right + set.theme.column_gap * fit.setting.size <=
                      lines.at(p + 1).front().left + tolerance);
            }
            of_two_lines += heading.size() > 1;
            if (below != nullptr && below->page == heading.front().page)
                CHECK(heading.back().y - below->y > fit.setting.leading * fit.setting.size);
            below = &heading.front();
        }
    });
    CHECK(of_two_lines > 10);
}

TEST_CASE("columns of skills are as even as can be, of one width, line beside line") {
    std::size_t blocks = 0;
    each_page([&](const stages::Typeset& set, const fit::Fit& fit, const pages::Pages& pages) {
        const SetLines lines = lines_of(pages);
        std::map<std::uint32_t, std::vector<std::uint32_t>> of_block;
        for (std::uint32_t p = 0; p < set.composition.paragraphs.size(); ++p)
            if (const auto block = set.composition.paragraphs[p].block)
                of_block[block].push_back(p);
        for (const auto& [block, paragraphs] : of_block) {
            const composition::Paragraph& first = set.composition.paragraphs[paragraphs.front()];
            std::vector<int> counts;
            std::map<double, int, std::greater<>> rows; // lines, by baseline
            for (const std::uint32_t p : paragraphs) {
                counts.push_back(static_cast<int>(fit.lines[p].size()));
                for (const SetLine& line : lines.at(p))
                    ++rows[std::round(line.y / tolerance)];
            }
            CHECK(static_cast<int>(rows.size()) == least_height(counts, 0, first.block_columns));
            CHECK(rows.begin()->second == static_cast<int>(first.block_columns));
            for (const auto& [row, count] : rows)
                CHECK(count <= static_cast<int>(first.block_columns));
            ++blocks;
        }
    });
    CHECK(blocks > 20);
}

TEST_CASE("what stands side by side is set one after the other, in reading order") {
    each_page([](const stages::Typeset&, const fit::Fit&, const pages::Pages& pages) {
        for (const pages::Page& page : pages.pages)
            CHECK(std::ranges::is_sorted(page.runs, {}, [](const pages::PlacedRun& run) {
                return pages::is_artifact(run) ? 0 : run.paragraph + 1;
            }));
    });
}

TEST_CASE("numbered groups are no columns, and one group is none") {
    const struct {
        std::string lines, theme;
        std::vector<std::uint32_t> columns; // of each paragraph
    } cases[] = {
        {"Tools: saw, plane\nBoats: dory, skiff", "", {2, 2}},
        {"Tools: saw, plane\nBoats: dory\nKnots: bowline\nSigns: flags", "", {2, 2, 2, 2}},
        {"Tools: saw, plane", "", {1}},
        {"Tools: saw, plane\nBoats: dory, skiff", "\nnumbered: skills", {1, 1}},
    };
    for (const auto& one : cases) {
        CAPTURE(one.lines);
        const auto set = composed::compose(composed::entry("skills", one.lines),
                                           "skill-columns: two" + one.theme);
        std::vector<std::uint32_t> columns;
        for (const composition::Paragraph& paragraph : set.paragraphs)
            if (paragraph.section > 0 && paragraph.style != theme::StyleName::section)
                columns.push_back(paragraph.block_columns);
        CHECK(columns == one.columns);
    }
}

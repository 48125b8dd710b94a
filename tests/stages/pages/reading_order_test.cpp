// Columns that programs read whole by their places: against the published ways spelled out, on
// pages of random blocks and on every sample.
#include "compiler/stages/pages/reading_order.hpp"

#include "compiler/stages/lines/paragraph_lines.hpp"
#include "tests/every_page.hpp"
#include "tests/stages/pages/reading_order_reference.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include <hb.h>

namespace {

using namespace quoin;
namespace reference = reading_order_reference;
using composition::Region;

struct Sheet {
    composition::Composition composition;
    pages::Pages pages{612, 792, {{}}};
};

constexpr double size = 10, pitch = 13; // pt

const fonts::Face& text_face() {
    std::string fault;
    const fonts::Face* face = composed::fonts().face(*composed::fonts().family("Lato"), {}, fault);
    REQUIRE(face != nullptr);
    return *face;
}

void add_line(Sheet& sheet, Region region, double x, double y, double width) {
    composition::Paragraph paragraph;
    paragraph.region = region;
    paragraph.runs.emplace_back();
    paragraph.runs.back().face = &text_face();
    pages::PlacedRun placed;
    placed.paragraph = static_cast<std::uint32_t>(sheet.composition.paragraphs.size());
    placed.x = x;
    placed.y = y;
    placed.size = size;
    placed.width = width;
    sheet.composition.paragraphs.push_back(std::move(paragraph));
    sheet.pages.pages[0].runs.push_back(placed);
}

// Blocks of so many lines, each so far below the last beyond its pitch.
struct Drop {
    int lines;
    double gap;
};

void add_column(Sheet& sheet, Region region, double x, double width,
                const std::vector<Drop>& drops) {
    double y = 700;
    for (const Drop& drop : drops) {
        y -= drop.gap;
        for (int line = 0; line < drop.lines; ++line, y -= pitch)
            add_line(sheet, region, x, y, line + 1 == drop.lines ? width / 2 : width);
    }
}

Sheet two_columns(const std::vector<Drop>& main, const std::vector<Drop>& side,
                  double side_x = 400) {
    Sheet sheet;
    add_line(sheet, Region::whole, 60, 740, 200);
    add_column(sheet, Region::main, side_x > 60 ? 60 : 230, 310, main);
    add_column(sheet, Region::side, side_x, 140, side);
    return sheet;
}

// Spaces at a line's end are letters to pdfminer.
double right_with_spaces(const composition::Run& run, const pages::PlacedRun& at) {
    double width = 0;
    for (std::uint32_t g = at.begin; g < at.end; ++g)
        width += (lines::advance(run, run.glyphs[g]) * at.size / run.size) +
                 (lines::is_space(run, run.glyphs[g]) ? at.word_space : 0);
    return at.x + std::max(width, at.width);
}

reference::Line line_of(const composition::Run& run, const pages::PlacedRun& at) {
    hb_font_extents_t extents{};
    hb_font_get_h_extents(run.face->hb_font(), &extents);
    const double unit = at.size / run.face->units_per_em(), foot = at.y + unit * extents.descender;
    return {{at.x, foot, at.x + at.width, at.y + unit * extents.ascender},
            {at.x, foot, right_with_spaces(run, at), foot + at.size},
            at.y,
            at.size};
}

std::vector<reference::Line> lines_of(const Sheet& sheet, const pages::Page& page) {
    std::vector<reference::Line> lines;
    const pages::PlacedRun* before = nullptr;
    for (const pages::PlacedRun& at : page.runs) {
        const auto line = line_of(paragraph_of(sheet.composition, at).runs[at.run], at);
        if (!before || before->paragraph != at.paragraph || before->y != at.y)
            lines.push_back(line);
        lines.back().letters = lines.back().letters.with(line.letters);
        lines.back().ems = lines.back().ems.with(line.ems);
        before = &at;
    }
    return lines;
}

bool is_in_order(const reference::Order& order) {
    return std::ranges::is_sorted(order);
}

// The file's order is that of both.
bool is_read_whole(const Sheet& sheet) {
    const auto lines = lines_of(sheet, sheet.pages.pages[0]);
    return is_in_order(reference::by_nearest(lines)) && is_in_order(reference::by_blocks(lines));
}

bool is_told_whole(const Sheet& sheet) {
    return pages::columns_read_whole(sheet.composition, sheet.pages);
}

}

TEST_CASE("reading order: what two columns are read whole") {
    const struct {
        const char* what;
        std::vector<Drop> main, side;
        bool whole;
    } cases[] = {
        {"one block beside one", {{12, 0}}, {{11, 0}}, true},
        {"a band, and tops alike on both sides", {{6, 0}, {6, 8}}, {{5, 0}, {5, 21}}, false},
        {"the lower blocks begin half an em apart", {{6, 0}, {6, 8}}, {{5, 0}, {5, 27}}, true},
        {"no band: the side's block ends lower", {{6, 0}, {6, 8}}, {{8, 0}, {5, 8}}, true},
        {"a band, and feet alike on both sides", {{6, 0}, {6, 8}}, {{6, 0}, {5, 21}}, false},
        {"one line beside a gap", {{6, 0}, {1, 9}, {8, 9}}, {{6, 0}, {9, 40}}, false},
        {"one line beside one line", {{1, 0}, {1, 9}, {1, 9}}, {{1, 0}, {1, 9}, {1, 9}}, false},
        {"a narrow column that ends far above", {{4, 0}, {40, 12}}, {{12, 0}}, false},
    };
    for (const auto& one : cases) {
        CAPTURE(one.what);
        const Sheet sheet = two_columns(one.main, one.side);
        CHECK(is_told_whole(sheet) == one.whole);
        CHECK(is_read_whole(sheet) == one.whole);
    }
}

TEST_CASE("reading order: of columns the left one is first, of one column nothing is asked") {
    CHECK(is_told_whole(two_columns({{12, 0}}, {{11, 0}}, 60)));
    Sheet one;
    add_column(one, Region::whole, 60, 300, {{1, 0}, {3, 9}, {1, 40}});
    CHECK(is_told_whole(one));
}

TEST_CASE("reading order: as the published ways have it, on random pages") {
    std::mt19937 random(31);
    const auto some = [&](int least, int most) {
        return std::uniform_int_distribution(least, most)(random);
    };
    int whole = 0, mixed = 0;
    for (int page = 0; page < 2000; ++page) {
        std::vector<Drop> columns[2];
        for (auto& column : columns)
            for (int blocks = some(1, 7); blocks > 0; --blocks)
                column.push_back({some(1, 9), column.empty() ? 0.0 : some(0, 3) * 5.5});
        const Sheet sheet = two_columns(columns[0], columns[1]);
        CAPTURE(page);
        const bool expected = is_read_whole(sheet);
        CHECK(is_told_whole(sheet) == expected);
        ++(expected ? whole : mixed);
    }
    CHECK(whole > 200);
    CHECK(mixed > 200);
}

TEST_CASE("reading order: two columns of every sample are read whole") {
    int two = 0;
    for (const auto& sample : every_page::samples())
        for (const trade::Paper paper : {trade::Paper::letter, trade::Paper::a4}) {
            CAPTURE(sample);
            const stages::Typeset set = every_page::typeset(sample, "oystercatcher", paper);
            const Sheet sheet{set.composition, make_pages(set, stages::fit_or_draft(set))};
            const bool has_side = std::ranges::find(sheet.composition.paragraphs, Region::side,
                                                    &composition::Paragraph::region) !=
                                  sheet.composition.paragraphs.end();
            if (!has_side || sheet.pages.pages.size() > 1) continue;
            ++two;
            CHECK(is_told_whole(sheet));
            CHECK(is_read_whole(sheet));
        }
    CHECK(two > 5);
}

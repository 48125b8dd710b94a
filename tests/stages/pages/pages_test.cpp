// Where everything stands on the page, to a hundredth of a point.
#include "compiler/stages/pages/pages.hpp"

#include "compiler/stages/lines/paragraph_lines.hpp"
#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace pages_test {

using quoin::composition::Composition;
using quoin::composition::Paragraph;
using quoin::composition::Run;
using quoin::fit::Fit;
using quoin::fit::PageSetting;
using quoin::lines::Line;
using quoin::model::Settings;
using quoin::pages::make_pages;
using quoin::pages::Page;
using quoin::pages::Pages;
using quoin::pages::PlacedRun;
using quoin::synthetic::add_paragraph;
using quoin::synthetic::add_run;
using quoin::synthetic::paragraph;
using quoin::synthetic::resume;
using quoin::synthetic::theme;
using quoin::theme::Align;
using quoin::theme::GapName;
using quoin::theme::RuleAt;

namespace {

PageSetting plain_setting() {
    PageSetting setting;
    setting.paper_width = 612;
    setting.paper_height = 792;
    setting.size = 10;
    setting.side_margin = 72;
    setting.top_margin = 50;
    setting.bottom_margin = 40;
    setting.leading = 1.2;
    setting.gaps = {0, 0.1, 0.2, 1, 0.4, 0.6, 0.05, 0.1};
    return setting;
}

Fit fit_at(const Composition& composition, const PageSetting& setting) {
    const double measure = (setting.paper_width - 2 * setting.side_margin) / setting.size;
    Fit fit{setting, {}};
    for (const Paragraph& each : composition.paragraphs)
        fit.lines.push_back(quoin::lines::MeasuredParagraph(each, measure).lines(measure));
    return fit;
}

Pages pages_at(const Composition& composition, const PageSetting& setting) {
    return make_pages(composition, fit_at(composition, setting));
}

Pages fitted(const Composition& composition, int pages) {
    Settings settings;
    settings.pages.value = pages;
    return make_pages(composition, std::get<Fit>(quoin::fit::fit(composition, theme(), settings)));
}

bool near(double a, double b) {
    return std::abs(a - b) < 0.005; // pt: the two agree to a hundredth
}

// The baselines of a paragraph's lines, top down.
std::vector<double> baselines(const Page& page, std::uint32_t index) {
    std::vector<double> found;
    for (const PlacedRun& run : page.runs)
        if (run.paragraph == index && (found.empty() || found.back() != run.y))
            found.push_back(run.y);
    return found;
}

}

TEST_CASE("baselines, gaps and rules, worked by hand") {
    Composition composition;
    add_paragraph(composition, "name", GapName::none, 2);         // ascent 1.4, descent 0.4 em
    add_paragraph(composition, "heading", GapName::section, 1.5); // ascent 1.05, descent 0.3 em
    composition.paragraphs[1].rule = RuleAt::below;
    composition.paragraphs[1].rule_thickness = 0.8;
    composition.paragraphs[1].rule_gap = 0.25;
    add_paragraph(composition, "entry", GapName::heading);
    add_paragraph(composition, "closing", GapName::section);
    composition.paragraphs[3].rule = RuleAt::above;
    composition.paragraphs[3].rule_thickness = 1;
    composition.paragraphs[3].rule_gap = 0.5;
    const Pages pages = pages_at(composition, plain_setting());
    REQUIRE(pages.pages.size() == 1);
    const Page& page = pages.pages[0];
    REQUIRE(page.runs.size() == 4);
    const double first = 792 - 50 - 14;
    CHECK(near(page.runs[0].y, first));
    const double second = first - 1.2 * 15 - 10; // leading × its size, the section gap
    CHECK(near(page.runs[1].y, second));
    const double third = second - 12 - 4 - (2.5 + 0.8); // the rule and its gap take their room
    CHECK(near(page.runs[2].y, third));
    const double fourth = third - 12 - 10 - (5 + 1);
    CHECK(near(page.runs[3].y, fourth));
    CHECK(page.runs[1].size == doctest::Approx(15));
    REQUIRE(page.rules.size() == 2);
    CHECK(near(page.rules[0].y, second - 3 - 2.5 - 0.4));
    CHECK(page.rules[0].thickness == 0.8);
    CHECK(near(page.rules[0].x, 72));
    CHECK(near(page.rules[0].width, 612 - 144));
    CHECK(near(page.rules[1].y, fourth + 7 + 5 + 0.5));
}

TEST_CASE("left, centre, right, justified") {
    const double left = 72, right = 612 - 72;
    for (const Align align : {Align::left, Align::centre, Align::right, Align::justified}) {
        Composition composition;
        std::mt19937 random(4);
        add_paragraph(composition, quoin::synthetic::words(random, 60, true), GapName::none);
        composition.paragraphs[0].align = align;
        const Pages pages = pages_at(composition, plain_setting());
        std::map<double, std::pair<double, double>> lines; // by baseline
        for (const PlacedRun& run : pages.pages[0].runs) {
            auto& [begin, end] = lines.try_emplace(run.y, 1e9, 0.0).first->second;
            begin = std::min(begin, run.x);
            end = std::max(end, run.x + run.width);
        }
        REQUIRE(lines.size() > 3);
        const double hyphen = 6; // may follow
        for (const auto& [y, line] : lines) {
            const auto [begin, end] = line;
            CHECK(begin >= left - 0.005);
            CHECK(end <= right + 0.005);
            if (align == Align::left || align == Align::justified) CHECK(near(begin, left));
            if (align == Align::right) CHECK(end >= right - hyphen);
            if (align == Align::justified && y != lines.begin()->first)
                CHECK(end >= right - hyphen);
            if (align == Align::centre) CHECK(std::abs(begin - left - (right - end)) <= hyphen);
        }
    }
}

TEST_CASE("tracking: none after a line's last glyph, so that centred is centred") {
    Composition composition;
    Paragraph spaced = paragraph("^abc");
    spaced.align = Align::centre;
    composition.paragraphs.push_back(spaced);
    const Pages pages = pages_at(composition, plain_setting());
    REQUIRE(pages.pages[0].runs.size() == 1);
    const PlacedRun& run = pages.pages[0].runs[0];
    double glyphs = 0;
    for (const char letter : {'a', 'b', 'c'})
        glyphs += quoin::synthetic::em_width(letter) * 12;
    CHECK(near(run.width, glyphs + 2 * 0.03 * 12));
    CHECK(near(run.x + run.width / 2, 306));
}

TEST_CASE("a label hangs before the indent, on the first line alone") {
    Composition composition;
    Paragraph item;
    add_run(item).text = "- ";
    for (std::uint32_t i = 0; i < 2; ++i) {
        quoin::fonts::Glyph glyph;
        glyph.id = 1;
        glyph.advance = 300;
        glyph.text_begin = i;
        glyph.text_length = 1;
        item.runs[0].glyphs.push_back(glyph);
    }
    const Paragraph text =
        paragraph(std::string(30, 'a') + ' ' + std::string(90, 'b') + ' ' + std::string(60, 'c'));
    item.runs.push_back(text.runs[0]);
    item.hyphen_glyphs.push_back(0);
    item.breaks = text.breaks;
    for (quoin::composition::BreakPoint& each : item.breaks)
        each.run = 1;
    item.label_runs = 1;
    item.indent = 1.5;
    item.hang = 0.8;
    composition.paragraphs.push_back(item);
    const Pages pages = pages_at(composition, plain_setting());
    const std::vector<PlacedRun>& runs = pages.pages[0].runs;
    REQUIRE(runs.size() >= 3);
    CHECK(runs[0].run == 0);
    CHECK(runs[0].begin == 0);
    CHECK(runs[0].end == 2);
    CHECK(near(runs[0].x, 72 + 7));
    CHECK(runs[0].y == runs[1].y);
    for (std::size_t i = 1; i < runs.size(); ++i) {
        CHECK(runs[i].run == 1);
        CHECK(near(runs[i].x, 72 + 15));
    }
}

TEST_CASE("every glyph once, in order, within the margins") {
    for (unsigned seed = 0; seed < 12; ++seed) {
        CAPTURE(seed);
        const Composition composition = resume(seed, 3 + seed % 5, 6);
        Settings settings;
        settings.pages.value = 3;
        const Fit fit = std::get<Fit>(quoin::fit::fit(composition, theme(), settings));
        const Pages pages = make_pages(composition, fit);
        std::vector<std::vector<std::uint32_t>> reached;
        for (const Paragraph& each : composition.paragraphs)
            reached.emplace_back(each.runs.size(), 0);
        std::uint32_t last_paragraph = 0;
        for (const Page& page : pages.pages) {
            for (const PlacedRun& run : page.runs) {
                const Paragraph& of = composition.paragraphs[run.paragraph];
                CHECK(run.paragraph >= last_paragraph);
                last_paragraph = run.paragraph;
                CHECK(run.begin == reached[run.paragraph][run.run]);
                reached[run.paragraph][run.run] = run.end;
                CHECK(run.x >= fit.setting.side_margin - 0.005);
                CHECK(run.x + run.width <= 612 - fit.setting.side_margin + 0.005);
                CHECK(run.y - of.descent * fit.setting.size >= fit.setting.bottom_margin - 0.005);
                CHECK(run.y + of.ascent * fit.setting.size <= 792 - fit.setting.top_margin + 0.005);
            }
        }
        for (std::size_t p = 0; p < reached.size(); ++p)
            for (std::size_t r = 0; r < reached[p].size(); ++r)
                CHECK(reached[p][r] == composition.paragraphs[p].runs[r].glyphs.size());
    }
}

TEST_CASE("like things are at like distances") {
    for (unsigned seed = 0; seed < 8; ++seed) {
        const Composition composition = resume(seed, 3, 6);
        const Pages pages = fitted(composition, 1);
        REQUIRE(pages.pages.size() == 1);
        std::map<std::pair<GapName, double>, double> above; // by gap and size of what follows
        std::map<double, double> within;                    // by size
        double last = 0;
        for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p) {
            const Paragraph& each = composition.paragraphs[p];
            const std::vector<double> ys = baselines(pages.pages[0], p);
            const bool ruled = p > 0 && composition.paragraphs[p - 1].rule != RuleAt::none;
            if (p > 0) {
                const double step = last - ys[0] - (ruled ? 1000 : 0);
                CHECK(near(above.try_emplace({each.gap, each.size}, step).first->second, step));
            }
            for (std::size_t i = 1; i < ys.size(); ++i)
                CHECK(near(within.try_emplace(each.size, ys[i - 1] - ys[i]).first->second,
                           ys[i - 1] - ys[i]));
            last = ys.back();
        }
    }
}

TEST_CASE("page breaks keep headings with what they head, and two lines of an entry together") {
    // At least two lines of a paragraph on either side of a page break: common practice.
    int breaks = 0;
    for (unsigned seed = 0; seed < 10; ++seed) {
        CAPTURE(seed);
        const Composition composition = resume(seed, 9, 7);
        const Pages pages = fitted(composition, 3);
        for (std::size_t i = 0; i + 1 < pages.pages.size(); ++i) {
            const std::uint32_t last = pages.pages[i].runs.back().paragraph;
            const std::uint32_t next = pages.pages[i + 1].runs.front().paragraph;
            ++breaks;
            if (last != next) {
                CHECK(!composition.paragraphs[last].keep_with_next);
                const bool entry_ends = next + 1 == composition.paragraphs.size() ||
                                        composition.paragraphs[next + 1].gap != GapName::bullet;
                if (composition.paragraphs[next].gap == GapName::bullet && entry_ends)
                    CHECK(baselines(pages.pages[i + 1], next).size() >= 2);
                continue;
            }
            CHECK(baselines(pages.pages[i], last).size() >= 2);
            CHECK(baselines(pages.pages[i + 1], last).size() >= 2);
        }
    }
    CHECK(breaks >= 10);
}

TEST_CASE("the running head stands on the pages after the first, with their number") {
    Composition composition = resume(6, 18, 6);
    Paragraph& head = composition.running_head;
    head = paragraph("Ottoline Brandt ");
    head.align = Align::right;
    Run& figures = add_run(head);
    for (std::uint32_t i = 0; i < 10; ++i) {
        figures.text += static_cast<char>('0' + i);
        quoin::fonts::Glyph glyph;
        glyph.id = 10 + i;
        glyph.advance = 500;
        glyph.text_begin = i;
        glyph.text_length = 1;
        figures.glyphs.push_back(glyph);
    }
    PageSetting setting = plain_setting();
    setting.paper_height = 230; // many pages
    const Pages pages = pages_at(composition, setting);
    REQUIRE(pages.pages.size() >= 12);
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
        const std::vector<PlacedRun>& runs = pages.pages[i].runs;
        std::string number;
        double end = 0;
        for (const PlacedRun& run : runs) {
            if (run.paragraph != quoin::pages::running_head_index) continue;
            CHECK(near(run.y, 230 - 50 - 7));
            if (run.run == 1) number += static_cast<char>('0' + run.begin);
            end = run.x + run.width;
        }
        CHECK(number == (i == 0 ? "" : std::to_string(i + 1)));
        if (i > 0) CHECK(near(end, 612 - 72));
        for (const PlacedRun& run : runs)
            if (i > 0 && run.paragraph != quoin::pages::running_head_index)
                CHECK(run.y < 230 - 50 - 12);
    }
}

TEST_CASE("a hyphen is asked for where a line ends in a word") {
    Composition composition;
    add_paragraph(composition, std::string(70, 'a') + '|' + std::string(70, 'b'), GapName::none);
    const Pages pages = pages_at(composition, plain_setting());
    const std::vector<PlacedRun>& runs = pages.pages[0].runs;
    REQUIRE(runs.size() >= 2);
    int hyphens = 0;
    for (const PlacedRun& run : runs) {
        hyphens += run.hyphen;
        if (run.hyphen) CHECK(run.end == 70);
    }
    CHECK(hyphens == 1);
}

TEST_CASE("nothing to set is one empty page") {
    const Pages pages = pages_at({}, plain_setting());
    REQUIRE(pages.pages.size() == 1);
    CHECK(pages.pages[0].runs.empty());
}

} // namespace pages_test

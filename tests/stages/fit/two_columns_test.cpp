// Two columns under one heading: both hold, no setting of a grid that holds both is better, and the
// pages set one whole after the other.
#include "compiler/stages/fit/fit.hpp"

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/side_choice.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/typeset.hpp"
#include "tests/composed.hpp"
#include "tests/every_page.hpp"
#include "tests/stages/fit/fit_reference.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace {

using namespace quoin;
using namespace quoin::fit;
using namespace std::string_literals;
using fit_reference::PlainLine;

struct Set {
    composition::Composition composition;
    theme::Theme theme;
    model::Settings settings;
};

Set set(const std::string& markup, const std::string& lines) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("test.resume", markup, diagnostics);
    const auto resume =
        model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
    REQUIRE(resume);
    const auto theme_file = sources.add("test.theme", lines, diagnostics);
    const auto theme = theme::read_theme(
        sources, *theme_file, std::filesystem::path(QUOIN_DATA_FOLDER) / "themes", diagnostics);
    REQUIRE(theme);
    auto composition = composition::compose(*resume, *theme, composed::fonts(), diagnostics);
    REQUIRE(composition);
    return {*std::move(composition), *theme, resume->settings};
}

std::string words(int count, int seed) {
    static const std::string each[] = {"eelgrass", "counts", "of", "tidal",
                                       "flats",    "in",     "a",  "season"};
    std::string text;
    for (int i = 0; i < count; ++i)
        text += (i > 0 ? " " : "") + each[(i * 5 + seed * 3 + i * i) % 8];
    return text;
}

// So many bullets in the main column, so many groups in the narrow one.
std::string resume_of(int bullets, int groups) {
    std::string text = "name: Ana Reyes\nemail: a@ellerystate.example\n\nsection: Work\n"
                       "holds: experience\n\nrole: Mate\nemployer: Salish Tidal Trust\n";
    for (int i = 0; i < bullets; ++i)
        text += "- " + words(9 + i % 7, i) + "\n";
    text += "\nsection: Skills\n\n";
    for (int i = 0; i < groups; ++i)
        text += "Group "s + static_cast<char>('A' + i % 26) + ": " + words(3 + i % 6, i) + "\n";
    return text;
}

const std::string two_columns = "based-on: turnstone\ncolumns: two\nside-width: 0.3\n"
                                "column-gap: 2\nside-sections: skills\n";

// The lines that stand in one column, the heading's with them.
std::vector<PlainLine> lines_beside(const composition::Composition& composition,
                                    const std::vector<int>& counts, composition::Region other) {
    std::vector<PlainLine> lines;
    for (std::size_t i = 0; i < counts.size(); ++i)
        for (int line = 0; line < counts[i] && composition.paragraphs[i].region != other; ++line)
            lines.push_back({&composition.paragraphs[i], line, counts[i], nullptr,
                             fit_reference::gap_in_list(composition, counts, i)});
    return lines;
}

bool holds_both(const std::vector<PlainLine>& main, const std::vector<PlainLine>& side,
                const PageSetting& setting) {
    return fit_reference::holds_on_one_page(main, setting) &&
           fit_reference::holds_on_one_page(side, setting);
}

double best_of_grid(const composition::Composition& composition, const SettingChoices& choices) {
    using fit_reference::along;
    const fit_reference::LineCounts line_counts(composition);
    constexpr int steps = 8;
    double best = fit_reference::nowhere;
    for (int size = 0; size <= steps; ++size)
        for (int side = 0; side <= steps; ++side) {
            quoin::fit::PageSetting at = fit_reference::loosest(choices);
            at.size = along(choices.size, size, steps);
            at.side_margin = along(choices.side, side, steps);
            if (tightness_of(at, choices) >= best) continue;
            const auto lines =
                fit_reference::greedy_counts(composition, fit_reference::measure_of(at));
            const auto main = lines_beside(composition, lines, composition::Region::side);
            const auto narrow = lines_beside(composition, lines, composition::Region::main);
            for (int rest = 0; rest < 5 * 5 * 3 * 3; ++rest) {
                at.leading = along(choices.leading, rest % 5, 4);
                fit_reference::set_gaps(at, choices, rest / 5 % 5, 4);
                at.top_margin = along(choices.top, rest / 25 % 3, 2);
                at.bottom_margin = along(choices.bottom, rest / 75, 2);
                if (!holds_both(main, narrow, at)) continue;
                best = std::min(best, tightness_of(at, choices));
            }
        }
    return best;
}

}

TEST_CASE("two columns: no setting of a grid that holds both is better") {
    int tight = 0;
    const std::pair<int, int> cases[] = {{4, 3}, {30, 4}, {36, 4}, {6, 28}, {8, 36}, {33, 30}};
    for (const auto& row : cases) {
        CAPTURE(row.first);
        CAPTURE(row.second);
        const Set page = set(resume_of(row.first, row.second), two_columns);
        const SettingChoices choices =
            choices_of(page.theme, page.settings, characters_in_em(page.composition));
        const auto result = fit::fit(page.composition, page.theme, page.settings);
        const double best = best_of_grid(page.composition, choices);
        if (std::holds_alternative<quoin::fit::Overflow>(result)) {
            CHECK(best == fit_reference::nowhere);
            continue;
        }
        const Fit& found = std::get<Fit>(result);
        std::vector<int> lines;
        for (const auto& paragraph : found.lines)
            lines.push_back(static_cast<int>(paragraph.size()));
        CHECK(holds_both(lines_beside(page.composition, lines, composition::Region::side),
                         lines_beside(page.composition, lines, composition::Region::main),
                         found.setting));
        tight += found.tightness > 0;
        CHECK(found.tightness <= best + 1e-9);
    }
    CHECK(tight >= 3);
}

TEST_CASE("two columns: side by side under the heading, the main one first") {
    const Set page = set(resume_of(6, 6), two_columns);
    const Fit found = std::get<Fit>(fit::fit(page.composition, page.theme, page.settings));
    const pages::Pages pages = pages::make_pages(page.composition, found);
    REQUIRE(pages.pages.size() == 1);
    const PageSetting& at = found.setting;
    const double text = at.paper_width - 2 * at.side_margin;
    const double side_begins = at.side_margin + (text - 2 * at.size) * 0.7 + 2 * at.size;
    composition::Region before = composition::Region::whole;
    double main_top = 0, side_top = 0;
    for (const pages::PlacedRun& placed : pages.pages[0].runs) {
        const composition::Paragraph& paragraph = page.composition.paragraphs[placed.paragraph];
        CHECK(paragraph.region >= before); // whole, then main, then side
        before = paragraph.region;
        if (paragraph.region == composition::Region::side) CHECK(placed.x >= side_begins - 0.01);
        if (paragraph.region == composition::Region::main)
            CHECK(placed.x + placed.width < side_begins);
        double& top = paragraph.region == composition::Region::main ? main_top : side_top;
        if (paragraph.region != composition::Region::whole) top = std::max(top, placed.y);
    }
    CHECK(before == composition::Region::side);
    CHECK(main_top == doctest::Approx(side_top)); // their headings on one baseline
    std::size_t headings = 0;
    for (const pages::PlacedRun& placed : pages.pages[0].runs)
        headings += placed.paragraph == 0;
    CHECK(headings == 1); // the heading is set once
}

TEST_CASE("two columns over two pages: each goes on in its own column") {
    for (const std::pair<int, int>& counts : {std::pair(70, 5), {10, 70}, {70, 70}}) {
        const int bullets = counts.first, groups = counts.second;
        CAPTURE(bullets);
        CAPTURE(groups);
        const Set page = set("pages: 2\n" + resume_of(bullets, groups), two_columns);
        const Fit found = std::get<Fit>(fit::fit(page.composition, page.theme, page.settings));
        CHECK(found.page_begins.size() == (bullets > 60 ? 2 : 1));
        CHECK(found.side_begins.size() == (groups > 60 ? 2 : 1));
        const pages::Pages pages = pages::make_pages(page.composition, found);
        REQUIRE(pages.pages.size() == 2);
        std::vector<std::size_t> lines(page.composition.paragraphs.size());
        for (const pages::Page& each : pages.pages)
            for (const pages::PlacedRun& placed : each.runs) {
                CHECK(placed.y >= found.setting.bottom_margin - 0.01);
                if (!is_artifact(placed)) ++lines[placed.paragraph];
            }
        for (const std::size_t count : lines)
            CHECK(count > 0); // nothing is lost
    }
}

namespace {

struct Parted { // of one plan
    bool counts = false;
    double tightness = fit_reference::nowhere;
};

// Read off the pages: how far down each column goes at the preferred setting.
Parted parted_by_plan(const model::Resume& resume, const theme::Theme& theme,
                      const composition::SidePlan& plan) {
    Diagnostics diagnostics;
    const auto page =
        composition::compose(resume, theme, composed::fonts(), diagnostics, nullptr, 0, &plan);
    const Fit preferred = preferred_fit(*page, theme, resume.settings);
    std::vector<int> counts;
    for (const auto& lines : preferred.lines)
        counts.push_back(static_cast<int>(lines.size()));
    const auto foot = [&](composition::Region other) {
        const auto lines = lines_beside(*page, counts, other);
        const PageSetting& at = preferred.setting;
        return at.paper_height - at.top_margin - at.bottom_margin -
               fit_reference::left_at_foot(lines, 0, lines.size(), at);
    };
    std::vector<PlainLine> heading = lines_beside(*page, counts, composition::Region::main);
    std::erase_if(heading, [](const PlainLine& line) { return line.paragraph->section > 0; });
    const PageSetting& at = preferred.setting;
    const double head = at.paper_height - at.top_margin - at.bottom_margin -
                        fit_reference::left_at_foot(heading, 0, heading.size(), at) -
                        heading.back().paragraph->descent * at.size;
    const double main = foot(composition::Region::side), side = foot(composition::Region::main);
    Parted parted{side - head >= least_side * (main - head)};
    const auto fitted = fit::fit(*page, theme, resume.settings);
    if (const auto* fit = std::get_if<Fit>(&fitted)) parted.tightness = fit->tightness;
    return parted;
}

}

// Every way is tried by itself.
TEST_CASE("what stands at the side, and how wide it is, is the best of all ways") {
    const std::string rules = "based-on: turnstone\ncolumns: two\nside-width: 0.32 (0.28..0.4)\n"
                              "column-gap: 2\nside-sections: skills, honors, languages\n";
    for (const std::pair<int, int>& size : {std::pair(26, 6), {12, 14}, {34, 4}, {8, 1}}) {
        CAPTURE(size.first);
        const std::string markup =
            resume_of(size.first, size.second) +
            "\nsection: Honors\n\naward: Tide Prize\nby: Port Ellery\n\n"
            "award: Shore Medal\nby: Skerry County\ndates: 2025\n\n"
            "section: Languages\n\nSpoken: Spanish (native), French (basic)\n";
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.add("test.resume", markup, diagnostics);
        const auto resume =
            model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
        const Set page = set(markup, rules);
        const composition::SidePlan widest = composition::widest_plan(*resume, page.theme);
        const std::vector<bool> nowhere(widest.at_side.size());
        const composition::SidePlan none{nowhere, widest.width};
        const auto compose = [&](const composition::SidePlan& plan) {
            return *composition::compose(*resume, page.theme, composed::fonts(), diagnostics,
                                         nullptr, 0, &plan);
        };
        const composition::Composition main = compose(none), side = compose(widest);
        SideChoice choice({main, side, widest.at_side, nowhere}, page.theme, resume->settings);
        const composition::SidePlan best = *choice.next();
        double least = fit_reference::nowhere;
        for (int bits = 1; bits < 8; ++bits)
            for (int step = 0; step <= width_steps; ++step) {
                composition::SidePlan plan{nowhere, 0.28 + 0.12 * step / width_steps};
                for (std::size_t i = 0; i < 3; ++i)
                    plan.at_side[i + 1] = (bits >> i & 1) != 0;
                const Parted parted = parted_by_plan(*resume, page.theme, plan);
                if (parted.counts) least = std::min(least, parted.tightness);
            }
        if (least == fit_reference::nowhere) {
            CHECK(best.at_side == nowhere);
            continue;
        }
        CHECK(parted_by_plan(*resume, page.theme, best).tightness <= least + 3e-4);
    }
}

namespace {

// How far down a column of the first page goes, from where it begins: 0 if there is none.
double height_on_page(const stages::Typeset& set, composition::Region region) {
    const pages::Pages pages = stages::make_pages(set, stages::fit_or_draft(set));
    double top = 0, bottom = set.fit.index() == 0 ? std::get<Fit>(set.fit).setting.paper_height : 0;
    for (const pages::PlacedRun& placed : pages.pages[0].runs) {
        if (set.composition.paragraphs[placed.paragraph].region != region) continue;
        top = std::max(top, placed.y);
        bottom = std::min(bottom, placed.y);
    }
    return std::max(top - bottom, 0.0);
}

}

// What is chosen is chosen at the preferred setting; at another, lines may fall otherwise.
TEST_CASE("beside a narrow column there is no hole, and no page is tight that has room in one") {
    int two = 0, one = 0;
    for (const auto& sample : every_page::samples())
        for (const trade::Paper paper : {trade::Paper::letter, trade::Paper::a4}) {
            CAPTURE(sample);
            const stages::Typeset set = every_page::typeset(sample, "oystercatcher", paper);
            const double side = height_on_page(set, composition::Region::side);
            const double main = height_on_page(set, composition::Region::main);
            if (side > 0) CHECK(side >= (least_side - 0.07) * main);
            ++(side > 0 ? two : one);
            if (const auto* fit = std::get_if<Fit>(&set.fit);
                fit && side > 0 && fit->pages() == 1) {
                composition::Composition single = set.composition;
                for (composition::Paragraph& paragraph : single.paragraphs) {
                    paragraph.region = composition::Region::whole;
                    paragraph.span = {};
                }
                const auto wide = fit::fit(single, set.theme, set.resume.settings);
                const auto* other = std::get_if<Fit>(&wide);
                CHECK(
                    (fit->tightness <= comfortable || !other || other->tightness > fit->tightness));
            }
        }
    CHECK(two > 3);
    CHECK(one > 3);
}

// The page fit against an exhaustive grid: no setting that holds the content is more comfortable.
// Whether a setting holds it is worked out here anew, line by line.
#include "compiler/stages/fit/fit.hpp"

#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "tests/stages/fit/fit_reference.hpp"
#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <variant>
#include <vector>

namespace fit_test {

using quoin::composition::Composition;
using quoin::composition::Paragraph;
using quoin::fit::Fit;
using quoin::fit::Overflow;
using quoin::fit::PageSetting;
using quoin::fit::SettingChoices;
using quoin::fit_reference::greedy_counts;
using quoin::fit_reference::holds_on_one_page;
using quoin::fit_reference::left_at_foot;
using quoin::fit_reference::lines_of;
using quoin::fit_reference::measure_of;
using quoin::fit_reference::PlainLine;
using quoin::model::Settings;
using quoin::synthetic::add_paragraph;
using quoin::synthetic::resume;
using quoin::synthetic::theme;
using quoin::theme::GapName;
using quoin::theme::Preference;
using quoin::theme::RuleAt;
using quoin::theme::Theme;

namespace {

void check_in_bounds(double value, const Preference& bounds) {
    CHECK(value >= bounds.least - 1e-12);
    CHECK(value <= bounds.most + 1e-12);
}

void check_setting(const PageSetting& setting, const SettingChoices& choices) {
    check_in_bounds(setting.size, choices.size);
    check_in_bounds(setting.side_margin, choices.side);
    check_in_bounds(setting.top_margin, choices.top);
    check_in_bounds(setting.bottom_margin, choices.bottom);
    check_in_bounds(setting.leading, choices.leading);
    for (std::size_t i = 0; i < quoin::theme::gap_count; ++i)
        check_in_bounds(setting.gaps[i], choices.gaps[i]);
}

std::vector<int> counts_of(const Fit& fit) {
    std::vector<int> counts;
    for (const std::vector<quoin::lines::Line>& lines : fit.lines)
        counts.push_back(int(lines.size()));
    return counts;
}

void check_lines(const Composition& composition, const Fit& fit) {
    const double measure = measure_of(fit.setting);
    REQUIRE(fit.lines.size() == composition.paragraphs.size());
    for (std::size_t i = 0; i < fit.lines.size(); ++i)
        for (const quoin::lines::Line& line : fit.lines[i])
            CHECK(line.width <= measure - composition.paragraphs[i].indent + 1e-9);
}

double jittered(double value, const Preference& within, double share, std::mt19937& random) {
    const double step = (within.preferred - within.least) * share;
    const double moved = value + step * (std::uniform_real_distribution<>(-1, 1)(random));
    return std::clamp(moved, within.least, within.most);
}

PageSetting neighbour(const PageSetting& of, const SettingChoices& choices, double share,
                      std::mt19937& random) {
    PageSetting setting = of;
    setting.size = jittered(of.size, choices.size, share, random);
    setting.side_margin = jittered(of.side_margin, choices.side, share, random);
    setting.top_margin = jittered(of.top_margin, choices.top, share, random);
    setting.bottom_margin = jittered(of.bottom_margin, choices.bottom, share, random);
    setting.leading = jittered(of.leading, choices.leading, share, random);
    for (std::size_t i = 0; i < quoin::theme::gap_count; ++i) // each gap by itself
        setting.gaps[i] = jittered(of.gaps[i], choices.gaps[i], share, random);
    return setting;
}

// Some ranges narrow, some of no width, so that every bound is met somewhere.
Theme varied_theme(unsigned seed) {
    Theme varied = theme();
    if (seed % 4 == 1) varied.top_margin.least = 52;
    if (seed % 4 == 2) varied.leading = {1.26, 1.26, 1.3};
    if (seed % 4 == 3) varied.side_margin = {60, 62, 70};
    if (seed % 5 == 1) varied.bottom_margin.least = 56;
    if (seed % 5 == 2) varied.gaps[3] = {0.9, 0.9, 1.2};
    if (seed % 5 == 3) varied.size = {10.4, 10.6, 12};
    return varied;
}

Settings settings_for(int pages) {
    Settings settings;
    settings.pages.value = pages;
    return settings;
}

}

TEST_CASE("no setting of a grid, nor near by, is roomier than the fit's") {
    int tight = 0;
    for (unsigned seed = 0; seed < 20; ++seed) {
        CAPTURE(seed);
        const Composition composition = resume(seed, 3 + seed % 2, 5 + seed % 3);
        const SettingChoices choices = quoin::fit::choices_of(varied_theme(seed), settings_for(1));
        const double grid = quoin::fit_reference::best_on_one_page(composition, choices, {});
        const auto result = quoin::fit::fit(composition, varied_theme(seed), settings_for(1));
        if (std::holds_alternative<Overflow>(result)) {
            CHECK(grid == std::numeric_limits<double>::infinity());
            continue;
        }
        const Fit& fit = std::get<Fit>(result);
        check_setting(fit.setting, choices);
        check_lines(composition, fit);
        const double best = quoin::fit::tightness_of(fit.setting, choices);
        CHECK(best == doctest::Approx(fit.tightness));
        CHECK(holds_on_one_page(lines_of(composition, counts_of(fit)), fit.setting));
        CHECK(best <= grid + 1e-8);
        if (best <= quoin::fit::roomiest) continue;
        tight += best > 0;
        std::mt19937 random(seed);
        for (int i = 0; i < 3000; ++i) {
            const PageSetting near = neighbour(fit.setting, choices,
                                               i % 3 == 0   ? 0.2
                                               : i % 3 == 1 ? 0.01
                                                            : 1e-4,
                                               random);
            if (quoin::fit::tightness_of(near, choices) >= best - 1e-8) continue;
            CHECK(!holds_on_one_page(
                lines_of(composition, greedy_counts(composition, measure_of(near))), near));
        }
    }
    CHECK(tight >= 8);
}

TEST_CASE("one quantity free to give: it gives what is needed, down to its least") {
    const auto pinned = [](const Preference& at) {
        return Preference{at.preferred, at.preferred, at.preferred};
    };
    for (int free = 0; free < 5; ++free) {
        CAPTURE(free);
        Theme stiff = theme();
        for (Preference* each : {&stiff.size, &stiff.side_margin, &stiff.top_margin,
                                 &stiff.bottom_margin, &stiff.leading})
            *each = pinned(*each);
        for (Preference& gap : stiff.gaps)
            gap = pinned(gap);
        if (free == 0) stiff.size = theme().size;
        if (free == 1) stiff.top_margin = theme().top_margin;
        if (free == 2) stiff.bottom_margin = theme().bottom_margin;
        if (free == 3) stiff.leading = theme().leading;
        if (free == 4) stiff.gaps = theme().gaps;
        const SettingChoices choices = quoin::fit::choices_of(stiff, settings_for(1));
        Composition composition;
        int fits = 0, given = 0;
        for (int lines = 0; lines < 800; ++lines) {
            // a tenth of a line each, so that the page fills in small steps
            add_paragraph(composition, "n", GapName::none, 0.1);
            composition.paragraphs.back().descent = 0.2;
            if (lines % 20 == 0 && lines < 200) add_paragraph(composition, "nn", GapName::section);
            const std::vector<PlainLine> all =
                lines_of(composition, std::vector<int>(composition.paragraphs.size(), 1));
            const auto result = quoin::fit::fit(composition, stiff, settings_for(1));
            const bool fit = std::holds_alternative<Fit>(result);
            CHECK(fit == holds_on_one_page(all, quoin::fit::least_setting(choices)));
            if (!fit) break;
            ++fits;
            if (holds_on_one_page(all, quoin::fit::preferred_setting(choices))) continue;
            ++given;
            CHECK(std::abs(left_at_foot(all, 0, all.size(), std::get<Fit>(result).setting)) < 1e-6);
        }
        CHECK(fits > 10);
        CHECK(given > 0);
    }
}

TEST_CASE("two pages: as comfortable as the best of a grid") {
    int tight = 0;
    for (unsigned seed = 20; seed < 25; ++seed) {
        CAPTURE(seed);
        const Composition composition = resume(seed, 6 + seed % 3, 6);
        const SettingChoices choices = quoin::fit::choices_of(theme(), settings_for(2));
        const auto result = quoin::fit::fit(composition, theme(), settings_for(2));
        REQUIRE(std::holds_alternative<Fit>(result));
        const Fit& fit = std::get<Fit>(result);
        check_setting(fit.setting, choices);
        check_lines(composition, fit);
        const double best = quoin::fit_reference::cost_of(composition, choices, fit);
        CHECK(best <= quoin::fit_reference::best_on_two_pages(composition, choices, 400) + 1e-8);
        tight += best > 0;
    }
    CHECK(tight >= 2);
}

TEST_CASE("too much: exactly so many lines too many") {
    for (unsigned seed = 40; seed < 50; ++seed) {
        CAPTURE(seed);
        Composition composition = resume(seed, 3, 5);
        REQUIRE(
            std::holds_alternative<Fit>(quoin::fit::fit(composition, theme(), settings_for(1))));
        while (std::holds_alternative<Fit>(quoin::fit::fit(composition, theme(), settings_for(1))))
            add_paragraph(composition, "nnnn nnnn", GapName::line);
        for (unsigned more = 0; more < seed % 7; ++more)
            add_paragraph(composition, "nnnn nnnn", GapName::line);
        auto result = quoin::fit::fit(composition, theme(), settings_for(1));
        const int too_many = std::get<Overflow>(result).lines_too_many;
        CHECK(too_many == 1 + int(seed % 7));
        composition.paragraphs.resize(composition.paragraphs.size() - std::size_t(too_many) + 1);
        result = quoin::fit::fit(composition, theme(), settings_for(1));
        CHECK(std::get<Overflow>(result).lines_too_many == 1);
        composition.paragraphs.pop_back();
        CHECK(std::holds_alternative<Fit>(quoin::fit::fit(composition, theme(), settings_for(1))));
    }
}

TEST_CASE("room to spare: the roomiest setting, the rest at the foot") {
    for (const std::size_t sections : {1U, 2U}) {
        CAPTURE(sections);
        const Composition composition = resume(5, sections, 4);
        const Fit fit = std::get<Fit>(quoin::fit::fit(composition, theme(), settings_for(1)));
        CHECK(fit.setting.size == 12);
        CHECK(fit.setting.side_margin == 72);
        CHECK(fit.setting.top_margin == 72);
        CHECK(fit.setting.bottom_margin == 72);
        CHECK(fit.setting.leading == 1.32);
        for (std::size_t i = 0; i < quoin::theme::gap_count; ++i)
            CHECK(fit.setting.gaps[i] == doctest::Approx(theme().gaps[i].most));
    }
}

TEST_CASE("a page nearly full: leading opens first, then size, gaps last") {
    Composition composition = resume(5, 3, 4);
    const auto share = [](double value, const Preference& of) {
        return (value - of.preferred) / (of.most - of.preferred);
    };
    int partly = 0;
    for (int i = 0; i < 40; ++i) {
        add_paragraph(composition, "nnnn", GapName::entry);
        const auto result = quoin::fit::fit(composition, theme(), settings_for(1));
        if (std::holds_alternative<Overflow>(result)) break;
        const PageSetting& at = std::get<Fit>(result).setting;
        const double leading = share(at.leading, theme().leading);
        if (leading <= 1e-6 || leading >= 1 - 1e-6) continue;
        ++partly;
        CHECK(leading > share(at.size, theme().size));
        CHECK(share(at.size, theme().size) > share(at.gaps[3], theme().gaps[3]));
    }
    CHECK(partly >= 3);
}

TEST_CASE("the writer's settings hold, whatever the theme prefers") {
    struct Case {
        quoin::model::Interval size, margins;
        double least_size, most_size, least_margin, most_margin;
    };
    const std::vector<Case> cases{
        {{11.5, 11.5}, {0.5, 1}, 11.5, 11.5, 36, 72},
        {{10, 10}, {0.75, 0.75}, 10, 10, 54, 54},
        {{10, 10.5}, {0.9, 1}, 10, 10.5, 64.8, 72},
        {{10, 12}, {0.5, 0.5}, 10, 12, 36, 36},
    };
    const Composition composition = resume(2, 3, 8);
    for (const Case& each : cases) {
        Settings settings;
        settings.size.value = each.size;
        settings.margins.value = each.margins;
        const auto result = quoin::fit::fit(composition, theme(), settings);
        if (std::holds_alternative<Overflow>(result)) continue;
        const PageSetting setting = std::get<Fit>(result).setting;
        CHECK(setting.size >= each.least_size);
        CHECK(setting.size <= each.most_size);
        for (const double margin :
             {setting.side_margin, setting.top_margin, setting.bottom_margin}) {
            CHECK(margin >= each.least_margin - 1e-9);
            CHECK(margin <= each.most_margin + 1e-9);
        }
    }
}

TEST_CASE("what the résumé allows goes before what the theme does, even where they do not meet") {
    struct Case {
        quoin::model::Interval size, margins;
        quoin::theme::Preference expected_size, expected_side; // pt
    };
    // the theme: size 11 (10..12), side margin 64 (36..72) pt
    const Case cases[] = {
        {{10, 12}, {0.5, 1}, {10, 11, 12}, {36, 64, 72}},
        {{10.5, 10.8}, {0.6, 0.8}, {10.5, 10.8, 10.8}, {43.2, 57.6, 57.6}},
        {{11.5, 12}, {0.95, 1}, {11.5, 11.5, 12}, {68.4, 68.4, 72}},
        {{12, 12}, {0.5, 0.5}, {12, 12, 12}, {36, 36, 36}},
    };
    const auto check = [](const Preference& found, const Preference& expected) {
        CHECK(found.least == doctest::Approx(expected.least));
        CHECK(found.preferred == doctest::Approx(expected.preferred));
        CHECK(found.most == doctest::Approx(expected.most));
    };
    for (const Case& each : cases) {
        Settings settings;
        settings.size.value = each.size;
        settings.margins.value = each.margins;
        const SettingChoices choices = quoin::fit::choices_of(theme(), settings);
        check(choices.size, each.expected_size);
        check(choices.side, each.expected_side);
    }
    Theme narrow = theme(); // its own bounds lie wholly below what the résumé asks for
    narrow.size = {10, 10.2, 10.4};
    narrow.side_margin = {36, 40, 44};
    Settings settings;
    settings.size.value = {11, 11.5};
    settings.margins.value = {0.75, 0.8};
    const SettingChoices choices = quoin::fit::choices_of(narrow, settings);
    check(choices.size, {11, 11, 11});
    check(choices.side, {54, 54, 54});
}

TEST_CASE("paper, in points") {
    // Letter 8.5 × 11 in; A4 210 × 297 mm (ISO 216); 72 points to the inch.
    Settings settings;
    SettingChoices choices = quoin::fit::choices_of(theme(), settings);
    CHECK(choices.paper_width == 612);
    CHECK(choices.paper_height == 792);
    settings.paper.value = quoin::trade::Paper::a4;
    choices = quoin::fit::choices_of(theme(), settings);
    CHECK(choices.paper_width == doctest::Approx(595.276).epsilon(1e-6));
    CHECK(choices.paper_height == doctest::Approx(841.890).epsilon(1e-6));
}

TEST_CASE("fewer pages first, and the same answer every time") {
    const Composition composition = resume(5, 2, 4);
    const Fit one = std::get<Fit>(quoin::fit::fit(composition, theme(), settings_for(1)));
    const Fit two = std::get<Fit>(quoin::fit::fit(composition, theme(), settings_for(2)));
    CHECK(one.setting.size == two.setting.size);
    CHECK(one.setting.gaps == two.setting.gaps);
    const Composition long_one = resume(3, 12, 7);
    const auto first = quoin::fit::fit(long_one, theme(), settings_for(4));
    const auto second = quoin::fit::fit(long_one, theme(), settings_for(4));
    CHECK(std::get<Fit>(first).setting.size == std::get<Fit>(second).setting.size);
    CHECK(std::get<Fit>(first).setting.leading == std::get<Fit>(second).setting.leading);
}

TEST_CASE("nothing to set") {
    const Fit fit = std::get<Fit>(quoin::fit::fit({}, theme(), settings_for(1)));
    CHECK(fit.lines.empty());
    CHECK(fit.setting.size == 11);
}

TEST_CASE("tightness, a worked example") {
    const SettingChoices choices = quoin::fit::choices_of(theme(), settings_for(1));
    const auto at = [&](auto set) {
        PageSetting setting = quoin::fit::preferred_setting(choices);
        set(setting);
        return quoin::fit::tightness_of(setting, choices);
    };
    CHECK(at([](PageSetting&) {}) == doctest::Approx(0));
    // leading: 1.15 to 1.26, evenly
    CHECK(at([](PageSetting& s) { s.leading = 1.26 - 0.11 / 4; }) == doctest::Approx(0.25));
    // size: 10 to 11 pt; half a point is given where 1.5 × the logarithm of the way is that of a
    // half
    CHECK(at([](PageSetting& s) { s.size = 10.5; }) == doctest::Approx(std::pow(0.5, 2.0 / 3)));
    // side margins: 36 to 64 pt, a quarter of the way given at half of the road
    CHECK(at([](PageSetting& s) { s.side_margin = 57; }) == doctest::Approx(0.5));
    // the section gap gives 0.4 of its preferred 1 em until the size has given 0.3 pt
    const double early = std::pow(0.3, 2.0 / 3);
    CHECK(at([](PageSetting& s) { s.gaps[3] = 0.8; }) == doctest::Approx(early / 2));
    CHECK(at([](PageSetting& s) { s.gaps[3] = 0.55; }) == doctest::Approx(early + (1 - early) / 2));
    // as tight as the tightest, however roomy the rest
    CHECK(at([](PageSetting& s) {
              s.size = 12;
              s.leading = 1.26 - 0.11 / 2;
          }) == doctest::Approx(0.5));
    CHECK(at([](PageSetting& s) { s.size = 9.9; }) == std::numeric_limits<double>::infinity());
    // the top margin is three quarters of the side margin at least
    PageSetting wide = quoin::fit::setting_at(choices, 1);
    CHECK(wide.top_margin == 36);
    CHECK(wide.side_margin == 36);
}

} // namespace fit_test

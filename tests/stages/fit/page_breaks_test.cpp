// Page breaks against all sets of breaks there are, and the breaks that must not be.
#include "compiler/stages/fit/page_breaks.hpp"

#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/explain.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "tests/stages/fit/fit_reference.hpp"
#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <span>
#include <string>
#include <variant>
#include <vector>

using quoin::composition::Composition;
using quoin::fit::Column;
using quoin::fit::Fit;
using quoin::fit::PageSetting;
using quoin::fit_reference::left_at_foot;
using quoin::fit_reference::PlainLine;
using quoin::synthetic::add_paragraph;
using quoin::theme::GapName;

namespace {

PageSetting plain_setting(double paper_height) {
    PageSetting setting;
    setting.paper_width = 612;
    setting.paper_height = paper_height;
    setting.size = 10;
    setting.side_margin = setting.top_margin = setting.bottom_margin = 36;
    setting.leading = 1.2;
    setting.gaps = {0, 0.1, 0.2, 1, 0.4, 0.6, 0.05, 0.1};
    return setting;
}

// Entries of a head and bullets of so many lines each.
struct Document {
    Composition composition;
    std::vector<int> counts;

    void add(GapName gap, int lines, bool heads = false) {
        add_paragraph(composition, "nnnn", gap);
        composition.paragraphs.back().keep_with_next = heads;
        counts.push_back(lines);
    }
    void add_entry(std::vector<int> bullets, GapName gap = GapName::entry) {
        add(gap, 1, true);
        for (const int lines : bullets)
            add(GapName::bullet, lines);
    }
    Column column() const { return quoin::fit::make_column(composition, counts); }
    std::vector<PlainLine> lines() const {
        return quoin::fit_reference::lines_of(composition, counts);
    }
};

Document random_document(std::mt19937& random, std::size_t lines_at_least = 13) {
    Document document;
    while (document.lines().size() < lines_at_least) {
        if (random() % 4 == 0) document.add(GapName::section, 1, true);
        std::vector<int> bullets(random() % 4);
        for (int& lines : bullets)
            lines = 1 + int(random() % 4);
        document.add_entry(bullets);
        if (bullets.empty()) document.composition.paragraphs.back().keep_with_next = false;
    }
    return document;
}

// What page_breaks.hpp states, of a page of these lines; infinite if it does not hold them.
double cost_of_page(const std::vector<PlainLine>& lines, std::size_t begin, std::size_t end,
                    const PageSetting& setting) {
    const double room = setting.paper_height - setting.top_margin - setting.bottom_margin;
    const double left = left_at_foot(lines, begin, end, setting);
    if (left < -1e-6) return quoin::fit_reference::nowhere;
    if (end < lines.size())
        return std::pow(left / room, 2) + quoin::fit_reference::cost_of_cut(lines, end);
    return begin > 0 ? 0.5 * std::max(0.0, 1 - 3 * (1 - left / room)) : 0;
}

double cost_of_pages(const std::vector<PlainLine>& lines, const std::vector<std::size_t>& begins,
                     const PageSetting& setting) {
    double cost = 0;
    for (std::size_t i = 0; i < begins.size(); ++i)
        cost += cost_of_page(lines, begins[i], i + 1 < begins.size() ? begins[i + 1] : lines.size(),
                             setting);
    return cost;
}

struct Best {
    std::size_t pages = 0;
    double cost = quoin::fit_reference::nowhere;
};

// Over all sets of legal breaks.
Best best_of_all(const std::vector<PlainLine>& lines, const PageSetting& setting) {
    std::vector<std::size_t> cuts;
    for (std::size_t i = 1; i < lines.size(); ++i)
        if (quoin::fit_reference::is_legal_cut(lines, i)) cuts.push_back(i);
    Best best;
    for (std::size_t set = 0; set < std::size_t{1} << cuts.size(); ++set) {
        std::vector<std::size_t> begins{0};
        for (std::size_t i = 0; i < cuts.size(); ++i)
            if ((set >> i & 1) != 0) begins.push_back(cuts[i]);
        const double cost = cost_of_pages(lines, begins, setting);
        if (cost == quoin::fit_reference::nowhere) continue;
        if (best.pages == 0 || begins.size() < best.pages ||
            (begins.size() == best.pages && cost < best.cost))
            best = {begins.size(), cost};
    }
    return best;
}

// The same, by a table of the best ways to so many pages up to each line.
Best best_of_table(const std::vector<PlainLine>& lines, const PageSetting& setting) {
    const std::size_t end = lines.size();
    std::vector<double> costs(end + 1, quoin::fit_reference::nowhere); // of so many pages
    costs[0] = 0;
    for (std::size_t pages = 1; pages <= end; ++pages) {
        std::vector<double> next(end + 1, quoin::fit_reference::nowhere);
        for (std::size_t to = 1; to <= end; ++to)
            for (std::size_t from = 0; from < to; ++from)
                if (costs[from] < quoin::fit_reference::nowhere &&
                    (to == end || quoin::fit_reference::is_legal_cut(lines, to)))
                    next[to] =
                        std::min(next[to], costs[from] + cost_of_page(lines, from, to, setting));
        costs = next;
        if (costs[end] < quoin::fit_reference::nowhere) return {pages, costs[end]};
    }
    return {};
}

std::vector<std::size_t> begins(const Document& document, double paper_height) {
    return quoin::fit::page_begins(document.column(), plain_setting(paper_height));
}

}

TEST_CASE("breaks: none cheaper among all sets of legal breaks") {
    std::mt19937 random(3);
    int several = 0, none = 0;
    for (int round = 0; round < 400; ++round) {
        CAPTURE(round);
        const Document document = random_document(random);
        const PageSetting setting = plain_setting(130 + double(random() % 120));
        const std::vector<PlainLine> lines = document.lines();
        const Best best = best_of_all(lines, setting);
        if (best.pages == 0) {
            ++none;
            continue;
        }
        const Column column = document.column();
        const std::vector<std::size_t> found = quoin::fit::page_begins(column, setting);
        CHECK(found.size() == best.pages);
        CHECK(quoin::fit::page_count(column, setting) == best.pages);
        CHECK(cost_of_pages(lines, found, setting) == doctest::Approx(best.cost));
        CHECK(quoin::fit::pages_cost(column, setting, found) == doctest::Approx(best.cost));
        CHECK(quoin::fit::missing_height(column, setting, found.size()) == 0);
        several += found.size() > 2;
        if (found.size() < 2) continue;
        const double missing = quoin::fit::missing_height(column, setting, found.size() - 1);
        PageSetting taller = setting;
        taller.paper_height += missing;
        CHECK(best_of_all(lines, taller).pages < found.size());
        taller.paper_height -= 0.001;
        CHECK(best_of_all(lines, taller).pages == found.size());
    }
    CHECK(several > 50);
    CHECK(none < 100);
}

TEST_CASE("breaks: none cheaper on many pages, full ones and such as have room") {
    std::mt19937 random(7);
    std::size_t pages = 0;
    for (int round = 0; round < 60; ++round) {
        CAPTURE(round);
        const Document document = random_document(random, 90);
        const PageSetting setting = plain_setting(200 + double(random() % 200));
        const Best best = best_of_table(document.lines(), setting);
        if (best.pages == 0) continue;
        const std::vector<std::size_t> found = quoin::fit::page_begins(document.column(), setting);
        CHECK(found.size() == best.pages);
        CHECK(quoin::fit::page_count(document.column(), setting) == best.pages);
        CHECK(cost_of_pages(document.lines(), found, setting) == doctest::Approx(best.cost));
        pages = std::max(pages, best.pages);
    }
    CHECK(pages > 8);
}

TEST_CASE("what a page may not end on") {
    Document document;
    document.add(GapName::section, 1, true); // line 0
    document.add_entry({1, 1, 1, 1});        // 1; 2 3 4 5
    document.add_entry({4});                 // 6; 7 8 9 10
    document.add_entry({1, 1});              // 11; 12 13
    document.add_entry({});                  // 14
    document.composition.paragraphs.back().keep_with_next = false;
    document.add(GapName::line, 1); // 15 16 17, a list of entries of a line each
    document.add(GapName::line, 1);
    document.add(GapName::line, 1);
    const Column column = document.column();
    std::string legal;
    for (std::size_t i = 1; i < column.lines.size(); ++i)
        legal += quoin::fit::may_break_before(column, i) ? std::to_string(i) + ' ' : "";
    // 4: two bullets on either side; 9: two lines of the bullet; 16: two of the list
    CHECK(legal == "4 6 9 11 14 16 ");
}

TEST_CASE("the cost of a break, worked by hand") {
    Document document;
    document.add_entry({2, 2, 2}); // 0; 1 2, 3 4, 5 6
    document.add_entry({4, 4});    // 7; 8 9 10 11, 12 13 14 15
    const Column column = document.column();
    const auto cost = [&](std::size_t line) { return quoin::fit::break_cost(column, line); };
    CHECK(cost(7) == 0);
    CHECK(cost(3) == doctest::Approx(0.05 + 0.1));        // one bullet after the head
    CHECK(cost(5) == doctest::Approx(0.05 + 0.4));        // one bullet alone on the next page
    CHECK(cost(10) == doctest::Approx(0.05 + 0.1 + 0.1)); // inside a bullet, the first
    CHECK(cost(12) == doctest::Approx(0.05 + 0.4 + 0.1)); // between an entry's only two
    CHECK(cost(14) == doctest::Approx(0.05 + 0.1 + 0.4)); // inside the last
}

TEST_CASE("a bullet does not stand alone on the next page where the entry can move") {
    // The entry at the foot has its head and two bullets of two lines; the page has room for the
    // head and one of them, and one more line.
    Document document;
    for (int entry = 0; entry < 6; ++entry)
        document.add_entry({1, 1, 1});
    document.add_entry({2, 2});
    for (int entry = 0; entry < 4; ++entry)
        document.add_entry({1, 1, 1});
    const std::size_t entry_begin = 6 * 4;
    const Column column = document.column();
    const PageSetting setting = plain_setting(792);
    const quoin::fit::PageHeights heights(column, setting);
    for (std::size_t held = entry_begin + 3; held < entry_begin + 5; ++held) {
        PageSetting page = setting;
        page.paper_height = 72 + heights.height(0, held) + 1;
        CHECK(quoin::fit::page_begins(column, page) == std::vector<std::size_t>{0, entry_begin});
    }
    // moving a whole long entry would leave most of the page empty: then it is parted
    Document one;
    one.add_entry({1});
    one.add_entry({1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1});
    const std::vector<std::size_t> parted = begins(one, 72 + 150);
    REQUIRE(parted.size() == 2);
    CHECK(parted[1] > 5);
    CHECK(parted[1] <= 12); // and two at least go with it
}

TEST_CASE("a last page of a few lines takes more from the page before, where that costs little") {
    Document document;
    for (int entry = 0; entry < 9; ++entry)
        document.add_entry({1, 1, 1});
    const Column column = document.column();
    const PageSetting setting = plain_setting(792);
    PageSetting page = setting; // the last entry does not fit
    page.paper_height = 72 + quoin::fit::PageHeights(column, setting).height(0, 32) + 1;
    const std::vector<std::size_t> found = quoin::fit::page_begins(column, page);
    REQUIRE(found.size() == 2);
    CHECK(found[1] < 32);
    CHECK(found[1] % 4 == 0);
}

TEST_CASE("three pages: close to the best of all settings of a grid and all breaks") {
    // Lines of five times the size, so that a page holds few and all pairs of breaks can be tried.
    const quoin::theme::Theme theme = quoin::synthetic::theme();
    quoin::model::Settings settings;
    settings.pages.value = 3;
    const quoin::fit::SettingChoices choices = quoin::fit::choices_of(theme, settings);
    int tight = 0;
    double worst = 0;
    for (unsigned seed = 0; seed < 40; ++seed) {
        CAPTURE(seed);
        std::mt19937 random(seed);
        Composition composition;
        const std::size_t entries = 6 + random() % 4;
        for (std::size_t entry = 0; entry < entries; ++entry) {
            add_paragraph(composition, "nnnn", entry == 0 ? GapName::none : GapName::entry, 5);
            composition.paragraphs.back().keep_with_next = true;
            for (std::size_t bullets = 2 + random() % 3; bullets > 0; --bullets)
                add_paragraph(composition, quoin::synthetic::words(random, 1), GapName::bullet, 5);
        }
        const auto result = quoin::fit::fit(composition, theme, settings);
        if (!std::holds_alternative<Fit>(result)) continue;
        const Fit& fit = std::get<Fit>(result);
        if (fit.page_begins.size() != 3) continue;
        const double cost = quoin::fit_reference::cost_on_pages(composition, choices, fit);
        const double best = quoin::fit_reference::best_on_three_pages(composition, choices, 400);
        CHECK(cost < quoin::fit_reference::nowhere);
        worst = std::max(worst, cost - best);
        tight += cost > -1;
    }
    MESSAGE("tight " << tight << ", worst " << worst);
    CHECK(tight > 5);
    CHECK(worst < 0.1);
}

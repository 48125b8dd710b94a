// One page or two: as a text grows the number of its pages changes once, from one to two; one page
// as long as it can be borne, then two that are filled and end near alike.
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/explain.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <variant>
#include <vector>

namespace page_count_test {

namespace {

using namespace quoin;

bool is_bullet_of_main(const composition::Paragraph& paragraph) {
    return paragraph.gap == theme::GapName::bullet && paragraph.region != composition::Region::side;
}

// Of at most 40 texts, each with a bullet more than the one before: those of the sample in turn,
// behind its last but eight.
std::vector<composition::Composition> growing(const composition::Composition& whole) {
    composition::Composition text = whole;
    std::vector<composition::Paragraph> bullets;
    for (const composition::Paragraph& paragraph : whole.paragraphs)
        if (is_bullet_of_main(paragraph)) bullets.push_back(paragraph);
    const auto last = [&] {
        std::size_t found = 0;
        for (std::size_t i = 0; i < text.paragraphs.size(); ++i)
            if (is_bullet_of_main(text.paragraphs[i])) found = i;
        return text.paragraphs.begin() + static_cast<std::ptrdiff_t>(found);
    };
    for (std::size_t i = 0; i < 8 && i + 2 < bullets.size(); ++i)
        text.paragraphs.erase(last());
    std::vector<composition::Composition> all;
    for (std::size_t i = 0; i < 40 && !bullets.empty(); ++i) {
        all.push_back(text);
        text.paragraphs.insert(last() + 1, bullets[i % bullets.size()]);
    }
    return all;
}

double tightness_on_one_page(const composition::Composition& composition,
                             const stages::Typeset& set, model::Settings settings) {
    settings.pages.value = 1;
    const auto result = fit::fit(composition, set.theme, settings);
    const auto* one = std::get_if<fit::Fit>(&result);
    return one != nullptr ? one->tightness : std::numeric_limits<double>::infinity();
}

struct Counted {
    int turned = 0, two_pages = 0, uneven = 0;
};

// That two pages are none too many, nor bare, nor one of them.
void check_two_pages(const composition::Composition& text, const stages::Typeset& set,
                     const model::Settings& settings, const fit::Fit& fit, Counted& counted) {
    const double alone = tightness_on_one_page(text, set, settings);
    CHECK(alone > fit::bearable);
    const std::vector<double> full = fit::page_fullness(text, fit);
    REQUIRE(full.size() == 2);
    CHECK(full[1] > 0.5);
    if (alone <= fit::tightest) CHECK(full[0] + full[1] > 1.2);
    ++counted.two_pages;
    counted.uneven += std::abs(full[0] - full[1]) > 0.15;
}

void check_growing(const stages::Typeset& set, model::Settings settings, Counted& counted) {
    settings.pages.value = 2;
    std::size_t before = 0;
    for (const composition::Composition& text : growing(set.composition)) {
        const auto result = fit::fit(text, set.theme, settings);
        const auto* fit = std::get_if<fit::Fit>(&result);
        if (fit == nullptr) break;
        CHECK(fit->pages() >= before);
        counted.turned += before == 1 && fit->pages() == 2;
        before = fit->pages();
        if (before == 2) check_two_pages(text, set, settings, *fit, counted);
    }
}

}

TEST_CASE("a text that grows goes from one page to two once, and both are filled alike") {
    Counted counted;
    int texts = 0;
    for (const std::string& theme : every_page::themes())
        for (const auto& sample : every_page::samples()) {
            CAPTURE(theme);
            CAPTURE(sample.stem());
            const stages::Typeset set = every_page::typeset(sample, theme);
            check_growing(set, set.resume.settings, counted);
            ++texts;
        }
    MESSAGE(counted.two_pages << " on two pages, " << counted.uneven << " uneven");
    CHECK(counted.turned >= texts * 9 / 10);
    CHECK(counted.uneven * 20 <= counted.two_pages);
}

TEST_CASE("where the writer allows little, a tight page is better than two half empty") {
    // nothing but leading and gaps can give, and of dunlin little, so that two pages come as they
    // stand
    int borne = 0;
    for (const auto& sample : every_page::samples()) {
        CAPTURE(sample.stem());
        const stages::Typeset set = every_page::typeset(sample, "dunlin");
        model::Settings settings = set.resume.settings;
        settings.size.value = {10, 10};
        settings.margins.value = {0.7, 0.7};
        settings.pages.value = 2;
        for (const composition::Composition& text : growing(set.composition)) {
            const auto result = fit::fit(text, set.theme, settings);
            const auto* fit = std::get_if<fit::Fit>(&result);
            if (fit == nullptr) break;
            borne += fit->pages() == 1 && fit->tightness > fit::bearable;
        }
        Counted counted;
        check_growing(set, settings, counted);
    }
    CHECK(borne > 2);
}

TEST_CASE("what can be borne before one page more is taken") {
    struct Case {
        double fullness, tightness;
    };
    const Case cases[] = {{1, 0.6}, {0.7, 0.6}, {0.63, 0.65}, {0.56, 0.8}, {0.49, 1.05}};
    for (const Case& each : cases)
        CHECK(fit::most_bearable(each.fullness) == doctest::Approx(each.tightness));
    // no leap and no kink: the steps of small steps are small
    constexpr double step = 1e-3;
    for (double at = 0.4; at < 1; at += step) {
        const double here = fit::most_bearable(at), next = fit::most_bearable(at + step),
                     after = fit::most_bearable(at + 2 * step);
        CHECK(next <= here);
        CHECK(std::abs(after - 2 * next + here) < 30 * step * step);
    }
}

TEST_CASE("entries are not arranged so roomily that they need a page more") {
    // Every number of bullets of one entry, in a theme of two ways, set as a writer has it set.
    std::size_t before = 1;
    for (int bullets = 10; bullets < 60; bullets += 2) {
        CAPTURE(bullets);
        std::string text = "name: Ottoline Brandt\npages: 1..2\ntheme: turnstone\n\n"
                           "section: Experience\n";
        for (int i = 0; i < bullets; ++i) {
            if (i % 3 == 0)
                text += "\nrole: Field Survey Intern\nemployer: Salish Tidal Trust\n"
                        "dates: Jun 2026 - Aug 2026\n";
            text += "- Counted 212 eelgrass quadrats at 9 sites\n";
        }
        Sources sources;
        Diagnostics diagnostics;
        const auto file = sources.add("growing.resume", text, diagnostics);
        REQUIRE(file);
        const auto set =
            stages::typeset(sources, *file, {}, QUOIN_DATA_FOLDER, composed::fonts(), diagnostics);
        REQUIRE(set);
        const auto* fit = std::get_if<fit::Fit>(&set->fit);
        if (fit == nullptr) break;
        CHECK(fit->pages() >= before);
        before = fit->pages();
        if (before == 2) {
            const auto closest =
                composition::compose(set->resume, set->theme, composed::fonts(), diagnostics);
            REQUIRE(closest);
            CHECK(tightness_on_one_page(*closest, *set, set->resume.settings) > fit::bearable);
        }
    }
    CHECK(before == 2);
}

} // namespace page_count_test

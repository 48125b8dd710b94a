// The first look at every page: what is to be found in ten seconds is, by the model; and greyed
// pages have every word still.
#include "compiler/stages/glance/glance.hpp"

#include "compiler/advice/first_look.hpp"
#include "tests/every_page.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace {

using quoin::stages::Typeset;

struct Seen {
    quoin::pages::Pages pages;
    std::vector<quoin::glance::Look> looks;
};

Seen seen(const Typeset& typeset) {
    Seen seen{make_pages(typeset, fit_or_draft(typeset)), {}};
    seen.looks = quoin::glance::looks(typeset.composition, seen.pages);
    return seen;
}

double width_of(const quoin::pages::Page& page) {
    double width = 0;
    for (const auto& placed : page.runs)
        width += placed.width;
    return width;
}

}

TEST_CASE("glance: the name is first, and in ten seconds all that must be found is") {
    quoin::every_page::each([](const Typeset& typeset, const std::string&) {
        const Seen page = seen(typeset);
        REQUIRE_FALSE(page.looks.empty());
        const auto marks =
            quoin::advice::landmarks(typeset.resume, page.looks, typeset.composition);
        REQUIRE_FALSE(marks.empty());
        CHECK(marks.front().what == "the name");
        CHECK(marks.front().at == page.looks.front().at);
        for (const auto& mark : marks) {
            CAPTURE(mark.what);
            CHECK(mark.at <= quoin::glance::first_look);
        }
    });
}

TEST_CASE("glance: every look comes after the one before, by its words at 450 a minute") {
    quoin::every_page::each([](const Typeset& typeset, const std::string&) {
        const Seen page = seen(typeset);
        double at = 0, weight = page.looks.front().weight;
        for (const auto& look : page.looks) {
            at += static_cast<double>(look.words) * 60 / 450;
            CHECK(look.at == doctest::Approx(at));
            CHECK(look.weight <= weight);
            weight = look.weight;
        }
    });
}

TEST_CASE("glance: greyed pages hold the same words at the same places") {
    quoin::every_page::each([](const Typeset& typeset, const std::string&) {
        const Seen page = seen(typeset);
        const auto grey = quoin::glance::greyed(page.looks, typeset.composition, page.pages,
                                                quoin::glance::first_look);
        REQUIRE(grey.pages.size() == page.pages.pages.size());
        for (std::size_t i = 0; i < grey.pages.size(); ++i) {
            CHECK(width_of(grey.pages[i]) == doctest::Approx(width_of(page.pages.pages[i])));
            std::size_t before = 0, after = 0;
            for (const auto& placed : page.pages.pages[i].runs)
                before += placed.end - placed.begin;
            for (const auto& placed : grey.pages[i].runs)
                after += placed.end - placed.begin;
            CHECK(before == after);
        }
        const auto is_pale = [](const quoin::pages::PlacedRun& run) { return run.pale; };
        CHECK(std::ranges::any_of(grey.pages.front().runs, is_pale));
        CHECK_FALSE(std::ranges::all_of(grey.pages.front().runs, is_pale));
    });
}

// A résumé tailored to words by hand: what is left of it, and that it fits.
#include "compiler/tailoring/heights.hpp"
#include "compiler/tailoring/tailor.hpp"
#include "tests/composed.hpp"
#include "tests/fixtures/read_resume.hpp"
#include "tests/tailoring/demands.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <optional>
#include <random>
#include <string>
#include <variant>

namespace {

using namespace quoin;
using tailoring::Tailored;
using tailoring_tests::Words;

const std::filesystem::path folder = QUOIN_DATA_FOLDER;

theme::Theme theme_named(const std::string& name) {
    Sources sources;
    Diagnostics diagnostics;
    auto theme = theme::read_theme(sources, folder / "themes", name, "", {}, diagnostics);
    REQUIRE(theme);
    return *std::move(theme);
}

Tailored tailored(const model::Resume& resume, const Words& words, const theme::Theme& theme) {
    Diagnostics diagnostics;
    auto result = tailoring::tailor(resume, tailoring_tests::demand(resume, words),
                                    {.theme = theme, .folder = folder, .fonts = composed::fonts()},
                                    diagnostics);
    REQUIRE(result);
    return *std::move(result);
}

// Sections, and the first words of entries and bullets, one a line.
std::string shown(const model::Resume& resume) {
    std::string text;
    for (const model::Field& field : resume.heading)
        if (field.name == trade::FieldName::headline) text += fixtures::value_of(field) + "\n";
    for (const model::Section& section : resume.sections) {
        text += section.title.plain() + "\n";
        for (const model::Entry& entry : section.entries) {
            for (const model::Field& field : entry.fields)
                text += "  " + fixtures::value_of(field) + "\n";
            for (const model::Bullet& bullet : entry.bullets)
                text += "  - " + bullet.text.plain() + "\n";
        }
    }
    return text;
}

std::string left_of(const std::string& text, const Words& words) {
    const auto reading = fixtures::read_below_name("size: 12\nmargins: 1\n" + text);
    CAPTURE(reading.messages());
    REQUIRE(reading.resume);
    return shown(tailored(*reading.resume, words, theme_named("turnstone")).typeset.resume);
}

// An entry of so many bullets, each of some words.
std::string entry(const std::string& role, std::size_t bullets, std::mt19937& random,
                  const std::string& tags = "") {
    const char* const kinds[] = {"eelgrass", "salinity",  "QGIS",  "crew",
                                 "diving",   "datasheet", "oyster"};
    std::string text = "role: " + role + "\nemployer: Salish Tidal Trust\n";
    if (!tags.empty()) text += "for: " + tags + "\n";
    for (std::size_t b = 0; b < bullets; ++b) {
        text += "- Counted";
        for (std::size_t w = 3 + random() % 24; w > 0; --w)
            text += random() % 6 == 0 ? std::string(" ") + kinds[random() % std::size(kinds)]
                                      : " quadrats";
        text += random() % 4 == 0 ? " in 14 days\n" : "\n";
    }
    return text + "\n";
}

std::string long_resume(std::mt19937& random) {
    std::string text = "section: Education\n\nschool: Ellery State College\ndegree: Bachelor of "
                       "Science\ncourses: Benthic Ecology; Statistics; Hydrology\n\n";
    for (std::size_t s = 0; s < 2 + random() % 3; ++s) {
        text += "section: Experience\nholds: experience\n\n";
        for (std::size_t e = 0; e < 2 + random() % 5; ++e)
            text += entry("Intern", random() % 9, random, random() % 9 == 0 ? "keep" : "");
    }
    return text + "section: Skills\n\nData: QGIS, R, Excel\nField: diving, GPS\n";
}

const Words words{{"eelgrass", 9}, {"salinity", 6}, {"QGIS", 5}, {"diving", 2}, {"Excel", 1}};

}

TEST_CASE("tailoring: on one page what a posting asks for stays, in order, the rest goes") {
    std::string text = "section: Experience\n\nrole: Deckhand\n";
    for (int i = 0; i < 5; ++i)
        text += "- Scrubbed deck " + std::to_string(i) + "\n";
    text += "- Mapped eelgrass\n\n";
    for (int i = 0; i < 20; ++i)
        text += "role: Barista\n- Served guests\n- Made coffee\n\n";
    const std::string left = left_of(text, {{"eelgrass", 1}});
    CHECK(left.starts_with("Experience\n  Deckhand\n  - Mapped eelgrass\n  - Scrubbed deck"));
    CHECK(left.find("Barista") != std::string::npos);
}

TEST_CASE("tailoring: of two wordings the one that is asked for") {
    const std::string text = "headline: Bench chemistry {lab}\nheadline: Field survey {field}\n\n"
                             "section: Experience\n\nrole: Intern\n- Titrated samples {lab}\n"
                             "- Surveyed samples {!lab}\n- Wrote reports\n";
    CHECK(left_of(text, {{"survey", 1}, {"Surveyed", 1}}) ==
          "Field survey\nExperience\n  Intern\n  - Surveyed samples\n  - Wrote reports\n");
    CHECK(left_of(text, {{"Titrated", 1}}) ==
          "Bench chemistry\nExperience\n  Intern\n  - Titrated samples\n  - Wrote reports\n");
}

TEST_CASE("tailoring: the heights it chooses by are those of the page") {
    std::mt19937 random(3);
    for (const char* name : {"turnstone", "dunlin", "sanderling", "whimbrel"}) {
        const theme::Theme theme = theme_named(name);
        const auto reading = fixtures::read_below_name(long_resume(random));
        REQUIRE(reading.resume);
        tailoring::Offer offer = tailoring::offer_of(*reading.resume, {});
        Diagnostics diagnostics;
        std::optional<composition::Composition> composition;
        REQUIRE(set_heights(offer, *reading.resume, theme, [&](const model::Resume& resume) {
            return composition::compose(resume, theme, composed::fonts(), diagnostics);
        }));
        tailoring::Taken all(offer.parts.size());
        for (std::size_t p = 0; p < all.size(); ++p) { // lists whole
            const bool last = p + 1 == all.size() ||
                              offer.problem.pieces[p + 1].within != offer.problem.pieces[p].within;
            all[p] = !offer.parts[p].items || last;
        }
        composition = composition::compose(*reading.resume, theme, composed::fonts(), diagnostics);
        REQUIRE(composition);
        const double left =
            static_cast<double>(offer.problem.capacity - height_of(offer.problem, all)) /
            tailoring::per_point;
        CAPTURE(name);
        CHECK(left ==
              doctest::Approx(tailoring::room_left(*composition, theme, reading.resume->settings))
                  .epsilon(0.02));
    }
}

TEST_CASE("tailoring: what is left fits and breaks no rule, in every theme") {
    std::mt19937 random(11);
    for (const char* name : {"turnstone", "dunlin", "sanderling", "whimbrel", "oystercatcher"})
        for (int i = 0; i < 4; ++i) {
            const auto reading = fixtures::read_below_name(long_resume(random));
            REQUIRE(reading.resume);
            CAPTURE(name);
            const Tailored result = tailored(*reading.resume, words, theme_named(name));
            CHECK(std::holds_alternative<fit::Fit>(result.typeset.fit));
            CHECK(is_lawful(result.offer.problem, result.choice.taken));
            CHECK(result.choice.worth == worth_of(result.offer.problem, result.choice.taken));
            std::size_t kept = 0;
            for (const model::Section& section : result.typeset.resume.sections) {
                CHECK(!section.entries.empty());
                for (const model::Entry& one : section.entries) {
                    CHECK(one.bullets.size() <= 5);
                    kept += one.tags.keep ? 1 : 0;
                }
            }
            std::size_t asked = 0;
            for (const model::Section& section : reading.resume->sections)
                asked += static_cast<std::size_t>(std::ranges::count_if(
                    section.entries, [](const model::Entry& one) { return one.tags.keep; }));
            CHECK(kept == asked);
            CHECK(result.typeset.resume.sections.front().title.plain() == "Education");
        }
}

// The worst that the line breaker, the fit and the cheapest cuts can be given, looked for by
// changing sources a little at a time and keeping what makes more work; and the bound that all of
// them keep, by counted work. Set QUOIN_FULL to any value for the long search, which prints what it
// found.
#include "compiler/base/counted_work.hpp"
#include "compiler/stages/fit/cuts.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/fit/shorten.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <random>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace quoin::fit::worst_work_test {

namespace {

// What a source is made of, each from 0 up to below `choices`.
enum Gene {
    bullets,     // steps of so many
    words,       // in a bullet
    short_word,  // letters of every other word,
    long_word,   // and of those between
    parted_by,   // what stands between words
    letter,      // that words are made of
    figures,     // every so many words is one, which stays
    marked,      // every so many words is marked, and goes with its neighbours
    entry_every, // so many bullets
    pages,
    align,
    unevenness, // of bullets: each has so many words more than the one before
    genes
};

constexpr std::array<std::size_t, genes> choices{60, 320, 40, 80, 8, 5, 40, 12, 30, 3, 2, 9};
constexpr std::array<const char*, work_kinds> names{"places tried as a line's end", "lines begun",
                                                    "glyphs measured anew", "sums",
                                                    "places tried as a page's end"};
using Shape = std::array<std::size_t, genes>;

constexpr std::array<const char*, 8> separators{" ", "-",        "\u200A", "\u00AD",
                                                "/", " \u2013 ", ", ",     " (x) "};
constexpr std::array<const char*, 5> letters{"i", "m", "l", "o", "a\u0301"};

std::string word_of(const Shape& shape, std::size_t number) {
    if (shape[figures] > 0 && number % shape[figures] == 0) return "7";
    std::string word;
    for (std::size_t i = 0; i <= shape[number % 2 == 0 ? short_word : long_word]; ++i)
        word += letters[shape[letter]];
    return shape[marked] > 0 && number % shape[marked] == 0 ? '*' + word + '*' : word;
}

std::string source_of(const Shape& shape) {
    constexpr std::size_t most_bytes = 6000;
    std::string source = "name: Ana Reyes\npages: " + std::to_string(shape[pages] + 1) +
                         "\n\nsection: Things\nholds: experience\n";
    for (std::size_t b = 0; b <= 5 * shape[bullets] && source.size() < most_bytes; ++b) {
        if (b % (shape[entry_every] + 1) == 0) source += "\nrole: A\nemployer: B\n";
        source += "- a";
        const std::size_t count = shape[words] + b % 7 * shape[unevenness];
        for (std::size_t w = 1; w < count && source.size() < most_bytes; ++w)
            source += separators[shape[parted_by]] + word_of(shape, w);
        source += '\n';
    }
    return source;
}

struct Worked {
    std::array<std::uint64_t, work_kinds> work{};
    std::size_t bytes = 0;

    double per_byte(std::size_t kind) const {
        return static_cast<double>(work[kind]) / static_cast<double>(bytes);
    }
};

theme::Theme theme_aligned(Sources& sources, bool justified) {
    Diagnostics diagnostics;
    const auto file = sources.add("test.theme",
                                  "based-on: " QUOIN_SOURCE_FOLDER
                                  "/tests/fixtures/plain.theme\n\nstyle: bullet\nalign: " +
                                      std::string(justified ? "justified" : "left") + "\n",
                                  diagnostics);
    REQUIRE(file);
    auto theme = theme::read_theme(
        sources, *file, std::filesystem::path(QUOIN_DATA_FOLDER) / "themes", diagnostics);
    REQUIRE(theme);
    return *std::move(theme);
}

struct Laid {
    composition::Composition composition;
    theme::Theme theme;
    model::Settings settings;
};

Laid laid_out(const std::string& source, bool justified) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("test.resume", source, diagnostics);
    REQUIRE(file);
    const auto resume =
        model::build_resume(sources, *file, QUOIN_DATA_FOLDER "/themes/words", diagnostics);
    REQUIRE(resume);
    theme::Theme theme = theme_aligned(sources, justified);
    auto composition = composition::compose(*resume, theme, composed::fonts(), diagnostics);
    REQUIRE(composition);
    return {*std::move(composition), std::move(theme), resume->settings};
}

Worked work_on(const Shape& shape) {
    const std::string source = source_of(shape);
    const Laid laid = laid_out(source, shape[align] == 1);
    counted_work = {};
    if (std::holds_alternative<Overflow>(fit(laid.composition, laid.theme, laid.settings)))
        cheapest_cuts(laid.composition, laid.theme, laid.settings);
    return {counted_work, source.size()};
}

Shape changed(Shape shape, std::mt19937& random) {
    for (std::size_t changes = 1 + random() % 3; changes > 0; --changes) {
        const std::size_t gene = random() % genes;
        const bool far = random() % 3 == 0;
        const std::size_t step = far ? random() % choices[gene] : 1 + random() % 3;
        shape[gene] =
            (shape[gene] + (random() % 2 == 0 ? step : choices[gene] - step % choices[gene])) %
            choices[gene];
    }
    return shape;
}

Shape any_shape(std::mt19937& random) {
    Shape shape{};
    for (std::size_t gene = 0; gene < genes; ++gene)
        shape[gene] = random() % choices[gene];
    return shape;
}

std::string shown(const Shape& shape, const Worked& worked) {
    std::string text = std::to_string(worked.bytes) + " bytes, work by kind";
    for (const std::uint64_t work : worked.work)
        text += ' ' + std::to_string(work);
    text += "; shape";
    for (const std::size_t gene : shape)
        text += ' ' + std::to_string(gene);
    return text;
}

// The most work of a kind a byte of source that climbing from so many places finds.
double worst_found(std::size_t kind, int climbs, int steps) {
    std::mt19937 random(static_cast<unsigned>(17 + kind));
    double worst = 0;
    for (int climb = 0; climb < climbs; ++climb) {
        Shape at = any_shape(random);
        Worked here = work_on(at);
        for (int step = 0; step < steps; ++step) {
            const Shape next = changed(at, random);
            const Worked there = work_on(next);
            if (there.per_byte(kind) < here.per_byte(kind)) continue;
            at = next;
            here = there;
        }
        if (std::getenv("QUOIN_FULL") != nullptr)
            std::printf("%s: %.0f a byte; %s\n", names[kind], here.per_byte(kind),
                        shown(at, here).c_str());
        worst = std::max(worst, here.per_byte(kind));
    }
    return worst;
}

// Of the shapes tried by hand the dearest: figures among long texts, which stay, so that no run of
// words saves all the lines that are asked for.
std::string dear_to_shorten(int bullets) {
    std::string source = "name: Ana Reyes\npages: 20\n\nsection: Things\nholds: experience\n";
    for (int bullet = 0; bullet < bullets; ++bullet) {
        if (bullet % 5 == 0) source += "\nrole: A\nemployer: B\n";
        source += "- a";
        for (int word = 0; word < 290; ++word)
            source += word % 90 == 89 ? " 7" : word % 2 == 0 ? " aaaaaaaa" : " bb";
        source += '\n';
    }
    return source;
}

}

TEST_CASE("no source makes more work of line breaks, fit and cuts than so much a byte") {
    // of line ends twice what the long search has found; the others keep far below on shorter ones
    constexpr std::array<double, work_kinds> bounds{1000, 100, 20'000, 1000, 100};
    const bool full = std::getenv("QUOIN_FULL") != nullptr;
    for (std::size_t kind = 0; kind < work_kinds; ++kind) {
        CAPTURE(names[kind]);
        CHECK(worst_found(kind, full ? 6 : 1, full ? 100 : 8) < bounds[kind]);
    }
}

// The worst that was found, as long a source as the search took: each does much, and no more than
// so much.
TEST_CASE("the worst sources that were found keep the bounds") {
    struct Row {
        Work kind;
        Shape shape;
        double least, most; // a byte
    };
    const std::array rows{
        Row{Work::line_ends, {15, 318, 10, 23, 1, 1, 27, 1, 23, 2, 1, 5}, 300, 1000},
        Row{Work::active_lines, {39, 314, 10, 17, 6, 4, 1, 0, 17, 0, 1, 3}, 15, 100},
        Row{Work::removals, {15, 316, 12, 4, 2, 0, 24, 1, 13, 1, 0, 0}, 0, 20'000},
        Row{Work::page_ends, {6, 289, 30, 63, 7, 1, 8, 2, 10, 2, 1, 4}, 0, 100},
    };
    for (const Row& row : rows) {
        const double work = work_on(row.shape).per_byte(static_cast<std::size_t>(row.kind));
        CHECK(work >= row.least);
        CHECK(work < row.most);
    }
}

TEST_CASE("ways to shorten a page are tried up to a bound, and what was not tried is known") {
    int fits = 1, too_many = 128;
    while (too_many - fits > 1) {
        const int bullets = (fits + too_many) / 2;
        const Laid laid = laid_out(dear_to_shorten(bullets), false);
        const bool over =
            std::holds_alternative<Overflow>(fit(laid.composition, laid.theme, laid.settings));
        (over ? too_many : fits) = bullets;
    }
    const Laid laid = laid_out(dear_to_shorten(too_many), false);
    counted_work = {};
    const Cuts cuts = cheapest_cuts(laid.composition, laid.theme, laid.settings);
    const std::uint64_t measured = counted_work[static_cast<std::size_t>(Work::removals)];
    CHECK_FALSE(cuts.all_tried);
    CHECK(measured <= most_measured);
    CHECK(measured > most_measured / 2);
}

}

// What does not fit: how many lines too many, and cuts proved the cheapest by trying all others.
#include "compiler/stages/fit/cuts.hpp"

#include "compiler/stages/fit/cheapest.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/shorten.hpp"
#include "compiler/stages/lines/paragraph_lines.hpp"
#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <numeric>
#include <optional>
#include <random>
#include <string>
#include <variant>
#include <vector>

using quoin::composition::Composition;
using quoin::composition::Paragraph;
using quoin::composition::TextPart;
using quoin::fit::Cut;
using quoin::fit::Cuts;
using quoin::fit::Fit;
using quoin::fit::Offer;
using quoin::fit::Overflow;
using quoin::fit::PageSetting;
using quoin::model::Settings;
using quoin::synthetic::add_paragraph;
using quoin::synthetic::theme;
using quoin::theme::GapName;

namespace {

Settings settings_for(int pages) {
    Settings settings;
    settings.pages.value = pages;
    return settings;
}

PageSetting least_for(int pages) {
    return quoin::fit::least_setting(quoin::fit::choices_of(theme(), settings_for(pages)));
}

double measure_of(const PageSetting& setting) {
    return (setting.paper_width - 2 * setting.side_margin) / setting.size;
}

std::vector<quoin::fit::Shortening> shortenings_of(const Paragraph& paragraph, double measure,
                                                   int most) {
    std::size_t bytes_left = quoin::fit::most_measured;
    return quoin::fit::shortenings(paragraph, measure, most, bytes_left);
}

int too_many(const Composition& composition, int pages) {
    const auto result = quoin::fit::fit(composition, theme(), settings_for(pages));
    const auto* overflow = std::get_if<Overflow>(&result);
    return overflow ? overflow->lines_too_many : 0;
}

bool fits(const Composition& composition, int pages) {
    return std::holds_alternative<Fit>(quoin::fit::fit(composition, theme(), settings_for(pages)));
}

void let_words_go(Paragraph& paragraph) {
    paragraph.origins = {{0, quoin::fit::text_of(paragraph).size(), TextPart::words, false, {}}};
}

std::vector<std::string> split(const std::string& text) {
    std::vector<std::string> words{""};
    for (const char letter : text) {
        if (letter == ' ')
            words.emplace_back();
        else
            words.back() += letter;
    }
    return words;
}

// The text with words [from, past) left out, made anew.
Paragraph remade(const std::vector<std::string>& words, std::size_t from, std::size_t past) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        if (i < from || i >= past) text += (text.empty() ? "" : " ") + words[i];
    return quoin::synthetic::paragraph(text);
}

int lines_at(const Paragraph& paragraph, double measure) {
    return quoin::lines::MeasuredParagraph(paragraph, measure).line_count(measure);
}

// For each number of lines saved, the fewest characters over every run of words there is.
std::map<int, std::size_t> all_runs_tried(const std::string& text, double measure) {
    const std::vector<std::string> words = split(text);
    const int lines = lines_at(remade(words, 0, 0), measure);
    std::map<int, std::size_t> fewest;
    for (std::size_t from = 1; from < words.size(); ++from) {
        std::size_t characters = 0;
        for (std::size_t past = from + 1; past <= words.size(); ++past) {
            characters += 1 + words[past - 1].size();
            const int saved = lines - lines_at(remade(words, from, past), measure);
            for (int each = 1; each <= saved; ++each) {
                const auto [at, added] = fewest.try_emplace(each, characters);
                at->second = std::min(at->second, characters);
            }
        }
    }
    return fewest;
}

// A page of entries with bullets that may be shortened; `bullets` for each entry.
Composition resume_of_bullets(std::mt19937& random, const std::vector<int>& bullets) {
    Composition composition;
    add_paragraph(composition, "nnnn nnnn", GapName::none, 2);
    std::uint32_t entry = 0;
    for (const int count : bullets) {
        ++entry;
        add_paragraph(composition, quoin::synthetic::words(random, 5), GapName::entry);
        composition.paragraphs.back().keep_with_next = true;
        composition.paragraphs.back().entry = entry;
        for (int i = 0; i < count; ++i) {
            add_paragraph(composition, quoin::synthetic::words(random, 8 + random() % 18),
                          GapName::bullet, i % 3 == 2 ? 1.1 : 1);
            Paragraph& bullet = composition.paragraphs.back();
            bullet.indent = 1;
            bullet.entry = entry;
            bullet.bullet = static_cast<std::uint32_t>(i) + 1;
            let_words_go(bullet);
        }
    }
    return composition;
}

Composition with(const Composition& composition, const std::vector<Cut>& cuts) {
    Composition left = composition;
    std::vector<bool> gone(composition.paragraphs.size());
    for (const Cut& cut : cuts) {
        if (cut.kind != Cut::Kind::words) {
            std::fill_n(gone.begin() + cut.paragraph, cut.paragraphs, true);
            continue;
        }
        Paragraph& paragraph = left.paragraphs[cut.paragraph];
        const std::string text = quoin::fit::text_of(paragraph);
        const std::size_t at = text.find(' ' + cut.words);
        REQUIRE(at != std::string::npos);
        paragraph = quoin::fit::without(paragraph, {at, at + 1 + cut.words.size()});
    }
    std::vector<Paragraph> kept;
    for (std::size_t i = 0; i < gone.size(); ++i)
        if (!gone[i]) kept.push_back(left.paragraphs[i]);
    left.paragraphs = kept;
    return left;
}

std::size_t characters_of(const std::vector<Cut>& cuts) {
    return std::accumulate(cuts.begin(), cuts.end(), std::size_t{0},
                           [](std::size_t sum, const Cut& cut) { return sum + cut.characters; });
}

struct Way { // one thing that may be done to one bullet
    Cut cut;
    double height = 0;
};

// Everything that may be done to each bullet by itself.
std::vector<std::vector<Way>> ways_of(const Composition& composition) {
    const PageSetting least = least_for(1);
    std::vector<std::vector<Way>> ways;
    for (std::uint32_t p = 0; p < composition.paragraphs.size(); ++p) {
        const Paragraph& paragraph = composition.paragraphs[p];
        if (paragraph.bullet == 0) continue;
        const std::string text = quoin::fit::text_of(paragraph);
        const double line = least.leading * least.size * paragraph.size;
        auto& here = ways.emplace_back();
        const int lines = lines_at(paragraph, measure_of(least));
        const auto add = [&](Cut::Kind kind, int saved, std::size_t characters, double height) {
            Cut cut;
            cut.kind = kind;
            cut.paragraph = p;
            cut.lines = saved;
            cut.characters = characters;
            here.push_back({cut, height});
        };
        for (const quoin::fit::Shortening& each :
             shortenings_of(paragraph, measure_of(least), lines))
            add(Cut::Kind::words, each.lines, each.characters, each.lines * line);
        if (paragraph.bullet > 1)
            add(Cut::Kind::bullet, lines, text.size(),
                lines * line + least.gaps[std::size_t(GapName::bullet)] * least.size);
    }
    return ways;
}

// The fewest characters that take `need` points off, every choice tried.
std::size_t fewest_for(const std::vector<std::vector<Way>>& ways, std::size_t from, double need) {
    constexpr std::size_t never = 1U << 30U;
    if (need <= 0) return 0;
    if (from == ways.size()) return never;
    std::size_t fewest = fewest_for(ways, from + 1, need);
    for (const Way& way : ways[from])
        fewest =
            std::min(fewest, way.cut.characters + fewest_for(ways, from + 1, need - way.height));
    return fewest;
}

double height_too_much(const Composition& composition) { // on one page, no rules
    const PageSetting least = least_for(1);
    double height = 0;
    for (const Paragraph& paragraph : composition.paragraphs) {
        const int lines = lines_at(paragraph, measure_of(least));
        const bool first = &paragraph == &composition.paragraphs.front();
        height += first
                      ? paragraph.ascent * least.size
                      : (least.leading * paragraph.size + least.gaps[std::size_t(paragraph.gap)]) *
                            least.size;
        height += (lines - 1) * least.leading * paragraph.size * least.size;
    }
    height += composition.paragraphs.back().descent * least.size;
    return height - (least.paper_height - least.top_margin - least.bottom_margin) - 1e-6;
}

}

TEST_CASE(
    "lines too many: with as many lines of the text's size fewer it fits, with one fewer not") {
    for (const int pages : {1, 2, 3}) {
        for (unsigned seed = 0; seed < 12; ++seed) {
            CAPTURE(pages);
            CAPTURE(seed);
            std::mt19937 random(seed);
            Composition composition = quoin::synthetic::resume(seed, 3, 5);
            while (fits(composition, pages)) // headings, entries and bullets: unlike heights
                quoin::synthetic::add_section(composition, random, 1 + random() % 5);
            // Lines of the text's size, and no gap, to be taken out again one by one.
            const int spare = 12 + static_cast<int>(seed);
            for (int i = 0; i < spare; ++i)
                add_paragraph(composition, "nnnn nnnn", GapName::none);
            const int lines = too_many(composition, pages);
            REQUIRE(lines > 0);
            Composition shorter = composition;
            int taken = 0;
            while (taken < spare && !fits(shorter, pages)) {
                CHECK(too_many(shorter, pages) == lines - taken);
                shorter.paragraphs.pop_back();
                ++taken;
            }
            if (taken < spare) CHECK(taken == lines);
        }
    }
}

TEST_CASE("one line too many, to the point") {
    for (int lines = 1; lines < 120; ++lines) {
        Composition composition;
        for (int i = 0; i < lines; ++i)
            add_paragraph(composition, "nnnn", GapName::none);
        const PageSetting least = least_for(1);
        int held = 1; // counted out by hand
        double left =
            least.paper_height - least.top_margin - least.bottom_margin - (0.7 + 0.2) * least.size;
        for (; left >= least.leading * least.size; ++held)
            left -= least.leading * least.size;
        CHECK(too_many(composition, 1) == std::max(0, lines - held));
    }
}

TEST_CASE("shortenings: no run of fewer characters saves as many lines") {
    std::mt19937 random(7);
    int several = 0;
    for (int round = 0; round < 150; ++round) {
        CAPTURE(round);
        const std::string text = quoin::synthetic::words(random, 5 + random() % 25);
        const double measure = 12 + static_cast<double>(random() % 20);
        Paragraph paragraph = quoin::synthetic::paragraph(text);
        let_words_go(paragraph);
        const auto fewest = all_runs_tried(text, measure);
        const auto found = shortenings_of(paragraph, measure, 100);
        CHECK(found.size() == fewest.size());
        for (const quoin::fit::Shortening& each : found) {
            const auto at = fewest.find(each.lines);
            REQUIRE(at != fewest.end());
            CHECK(each.characters == at->second);
        }
        several += found.size() > 1;
    }
    CHECK(several > 30);
}

TEST_CASE("what may go from a text") {
    struct Case {
        std::string text;
        std::vector<std::string> runs;
    };
    const Case cases[] = {
        {"one", {}},
        {"one two", {" two"}},
        {"one two three", {" two", " two three", " three"}},
        {"one (two three) four", {" (two three)", " (two three) four", " four"}},
        {"one 2 three four", {" three", " three four", " four"}}, // figures stay
        {"one two~three", {" two\u00A0three"}},                   // no line may end there
    };
    for (const Case& c : cases) {
        CAPTURE(c.text);
        Paragraph paragraph = quoin::synthetic::paragraph(c.text);
        let_words_go(paragraph);
        std::vector<std::string> runs;
        for (const quoin::fit::TextRange range : quoin::fit::removable_runs(paragraph))
            runs.push_back(
                quoin::fit::text_of(paragraph).substr(range.begin, range.end - range.begin));
        CHECK(runs == c.runs);
        paragraph.origins.front().marked = true;
        CHECK(quoin::fit::removable_runs(paragraph).empty());
        paragraph.origins.front() = {0, c.text.size(), TextPart::fixed, false, {}};
        CHECK(quoin::fit::removable_runs(paragraph).empty());
    }
}

TEST_CASE("items of a list go whole, each with the separator before it") {
    Paragraph paragraph = quoin::synthetic::paragraph("Lab: pH meter, R, two words");
    paragraph.origins = {
        {0, 3, TextPart::fixed, false, {}},  {3, 5, TextPart::fixed, false, {}},
        {5, 13, TextPart::item, false, {}},  {13, 15, TextPart::separator, false, {}},
        {15, 16, TextPart::item, false, {}}, {16, 18, TextPart::separator, false, {}},
        {18, 27, TextPart::item, false, {}}};
    std::vector<std::string> left;
    for (const quoin::fit::TextRange range : quoin::fit::removable_runs(paragraph))
        left.push_back(quoin::fit::text_of(quoin::fit::without(paragraph, range)));
    CHECK(left == std::vector<std::string>{"Lab: pH meter, two words", "Lab: pH meter",
                                           "Lab: pH meter, R"});
}

TEST_CASE("the cheapest offers, against every choice there is") {
    std::mt19937 random(3);
    for (int round = 0; round < 400; ++round) {
        CAPTURE(round);
        std::vector<Offer> offers;
        const std::size_t groups = 1 + random() % 5;
        for (std::size_t group = 0; group < groups; ++group)
            for (unsigned i = 0; i <= random() % 3; ++i)
                offers.push_back(
                    {group, std::int64_t(1 + random() % 30), std::int64_t(1 + random() % 20)});
        const auto need = static_cast<std::int64_t>(random() % 70);
        std::optional<std::int64_t> least;
        for (std::uint32_t set = 0; set < (1U << offers.size()); ++set) {
            std::int64_t worth = 0, cost = 0;
            std::map<std::size_t, int> of_group;
            for (std::size_t i = 0; i < offers.size(); ++i) {
                if ((set >> i & 1U) == 0) continue;
                worth += offers[i].worth;
                cost += offers[i].cost;
                ++of_group[offers[i].group];
            }
            const bool legal = std::all_of(of_group.begin(), of_group.end(),
                                           [](const auto& each) { return each.second == 1; });
            if (legal && worth >= need) least = std::min(least.value_or(cost), cost);
        }
        const auto found = quoin::fit::cheapest(offers, need);
        CHECK(found.has_value() == least.has_value());
        if (!found) continue;
        std::int64_t worth = 0, cost = 0;
        for (const std::size_t index : *found) {
            worth += offers[index].worth;
            cost += offers[index].cost;
        }
        CHECK(worth >= need);
        CHECK(cost == least);
    }
}

TEST_CASE("cuts: they make it fit, and no other set of as few characters does") {
    int several = 0;
    for (unsigned seed = 0; seed < 40; ++seed) {
        CAPTURE(seed);
        std::mt19937 random(seed);
        Composition composition = resume_of_bullets(random, {3, 2, 3});
        const int fill = 80; // lines that stay, so that few bullets are left to choose among
        for (int i = 0; i < fill && too_many(composition, 1) < 1 + int(seed % 5); ++i)
            composition.paragraphs.insert(composition.paragraphs.begin() + 1,
                                          quoin::synthetic::paragraph("nnnn nnnn nnnn"));
        const Cuts cuts = quoin::fit::cheapest_cuts(composition, theme(), settings_for(1));
        CHECK(cuts.pieces.empty());
        REQUIRE(cuts.enough);
        CHECK(fits(with(composition, cuts.words), 1));
        CHECK(characters_of(cuts.words) ==
              fewest_for(ways_of(composition), 0, height_too_much(composition)));
        several += cuts.words.size() > 2;
        for (std::size_t i = 0; i < cuts.words.size(); ++i) { // none is needless
            std::vector<Cut> fewer = cuts.words;
            fewer.erase(fewer.begin() + std::ptrdiff_t(i));
            CHECK_FALSE(fits(with(composition, fewer), 1));
        }
    }
    CHECK(several > 8);
}

TEST_CASE("cuts on two and three pages make it fit") {
    for (unsigned seed = 0; seed < 12; ++seed) {
        CAPTURE(seed);
        const int pages = 2 + int(seed % 2);
        std::mt19937 random(seed);
        Composition composition = resume_of_bullets(random, {4, 5, 4});
        while (too_many(composition, pages) < 1 + int(seed % 6)) {
            const Composition more = resume_of_bullets(random, {2 + int(random() % 4)});
            const std::uint32_t entries = composition.paragraphs.back().entry;
            for (std::size_t i = 1; i < more.paragraphs.size(); ++i) {
                composition.paragraphs.push_back(more.paragraphs[i]);
                composition.paragraphs.back().entry += entries;
            }
        }
        const Cuts cuts = quoin::fit::cheapest_cuts(composition, theme(), settings_for(pages));
        REQUIRE(cuts.enough);
        CHECK(fits(with(composition, cuts.words), pages));
    }
}

TEST_CASE("bullets beyond five are offered before words, the last first, no more than needed") {
    std::mt19937 random(11);
    Composition composition = resume_of_bullets(random, {8, 3});
    const auto too_long_by = [&](int lines) {
        Composition filled = composition;
        while (too_many(filled, 1) < lines)
            filled.paragraphs.insert(filled.paragraphs.begin() + 1,
                                     quoin::synthetic::paragraph("nnnn nnnn nnnn"));
        return quoin::fit::cheapest_cuts(filled, theme(), settings_for(1));
    };
    const Cuts one = too_long_by(1);
    REQUIRE(one.pieces.size() == 1);
    CHECK(one.pieces.front().kind == Cut::Kind::bullet);
    CHECK(one.either); // words by themselves are enough too
    CHECK(characters_of(one.words) < one.pieces.front().characters);

    const Cuts many = too_long_by(10);
    CHECK(many.pieces.size() == 3); // bullets 6, 7 and 8
    CHECK_FALSE(many.either);
    CHECK(many.enough);
    CHECK_FALSE(many.words.empty());
}

TEST_CASE("too long by far: no words to save, and no long search") {
    std::mt19937 random(1);
    const Composition composition = resume_of_bullets(random, std::vector<int>(60, 5));
    const Cuts cuts = quoin::fit::cheapest_cuts(composition, theme(), settings_for(1));
    CHECK_FALSE(cuts.enough);
    CHECK(cuts.words.empty());
}

// Optimum-fit breaking against the sample paragraph of its paper, and against every breaking there
// is of small paragraphs.
#include "compiler/stages/lines/break_lines.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace {

using quoin::lines::Break;
using quoin::lines::Breaking;
using quoin::lines::BreakingRules;
using quoin::lines::Item;

Item box(double width) {
    return {Item::Kind::box, width, 0, 0, 0, false};
}

Item glue(double width, double stretch, double shrink) {
    return {Item::Kind::glue, width, stretch, shrink, 0, false};
}

Item penalty(double width, double penalty, bool flagged) {
    return {Item::Kind::penalty, width, 0, 0, penalty, flagged};
}

// The sample of D. E. Knuth and M. F. Plass, "Breaking Paragraphs into Lines" (1981), from a tale
// of the brothers Grimm; `|` is a hyphen that may be set.
const std::string sample =
    "In olden times when wish|ing still helped one, there lived a king whose daugh|ters were all "
    "beau|ti|ful; and the young|est was so beau|ti|ful that the sun it|self, which has seen so "
    "much, was aston|ished when|ever it shone in her face. Close by the king's castle lay a great "
    "dark for|est, and un|der an old lime-tree in the for|est was a well, and when the day was "
    "very warm, the king's child went out into the for|est and sat down by the side of the cool "
    "foun|tain; and when she was bored she took a golden ball, and threw it up on high and caught "
    "it; and this ball was her favor|ite play|thing.";

// Its type, in units of 1/18 em.
double letter_width(char letter) {
    static const std::map<char, double> widths{
        {'a', 9},  {'b', 10}, {'c', 8},  {'d', 10}, {'e', 8}, {'f', 6},  {'g', 9},
        {'h', 10}, {'i', 5},  {'j', 6},  {'k', 10}, {'l', 5}, {'m', 15}, {'n', 10},
        {'o', 9},  {'p', 10}, {'q', 10}, {'r', 7},  {'s', 7}, {'t', 7},  {'u', 10},
        {'v', 9},  {'w', 13}, {'x', 10}, {'y', 10}, {'z', 8}, {'C', 13}, {'I', 6},
        {'-', 6},  {',', 5},  {';', 5},  {'.', 5},  {'\'', 5}};
    return widths.at(letter);
}

Item space_after(char letter) {
    switch (letter) {
    case ',':
        return glue(6, 4, 2);
    case ';':
        return glue(6, 4, 1);
    case '.':
        return glue(8, 6, 1);
    default:
        return glue(6, 3, 2);
    }
}

struct Sample {
    std::vector<Item> items{box(18)};
    std::vector<std::string> text{""}; // before each item's end
};

Sample sample_paragraph() {
    Sample result;
    std::string so_far;
    const auto push = [&](const Item& item) {
        result.items.push_back(item);
        result.text.push_back(so_far);
    };
    for (std::size_t i = 0; i < sample.size(); ++i) {
        if (sample[i] == ' ') {
            push(space_after(sample[i - 1]));
            so_far += ' ';
        } else if (sample[i] == '|') {
            push(penalty(letter_width('-'), 50, true));
        } else {
            so_far += sample[i];
            push(box(letter_width(sample[i])));
            if (sample[i] == '-') push(penalty(0, 50, true));
        }
    }
    push(penalty(0, quoin::lines::infinite_penalty, false));
    push(glue(0, 1000, 0));
    push(penalty(0, -quoin::lines::infinite_penalty, true));
    return result;
}

std::vector<std::string> last_words(const Sample& paragraph, const Breaking& breaking) {
    std::vector<std::string> words;
    for (const Break& end : breaking.breaks) {
        std::string word = paragraph.text[end.item];
        word = word.substr(word.rfind(' ') + 1);
        if (paragraph.items[end.item].width > 0 &&
            paragraph.items[end.item].kind == Item::Kind::penalty)
            word += '-';
        words.push_back(word);
    }
    return words;
}

struct SampleCase {
    double measure;
    BreakingRules rules;
    double demerits;
    std::vector<double> ratios;
    std::vector<std::string> ends;
};

}

TEST_CASE("the sample paragraph breaks as printed") {
    // Ratios and ends of lines: Knuth & Plass, figures for 390 and 500 units. Totals: every
    // sequence of its 130 legal breaks searched depth first.
    const std::vector<SampleCase> cases{
        {390,
         {},
         31066.432,
         {.857, .000, .280, 1.000, .067, -.278, .536, -.167, .700, -.176, .357, .049},
         {"one,", "beau-", "the", "aston-", "the", "an", "when", "out", "the", "a", "caught",
          "plaything."}},
        {500,
         {},
         3668.543,
         {.774, .179, .629, .545, .000, .079, .282, .294, .575, .353},
         {"a", "was", "was", "king's", "the", "king's", "the", "ball,", "her", "plaything."}},
        // No demerits for hyphens in a row nor for unlike neighbours: other lines come out.
        {390,
         {2, 0, 0, 0},
         28920.898,
         {.857, 0, .28, -.5, -.235, .607, .5, 1.12, .7, -.176, .357, .049},
         {}},
    };
    const Sample paragraph = sample_paragraph();
    std::size_t legal = 0;
    for (std::size_t i = 1; i < paragraph.items.size(); ++i) {
        const Item& item = paragraph.items[i];
        legal +=
            item.kind == Item::Kind::penalty
                ? item.penalty < quoin::lines::infinite_penalty
                : item.kind == Item::Kind::glue && paragraph.items[i - 1].kind == Item::Kind::box;
    }
    CHECK(legal == 130);
    for (const SampleCase& expected : cases) {
        CAPTURE(expected.measure);
        const Breaking breaking =
            quoin::lines::break_justified(paragraph.items, expected.measure, expected.rules);
        CHECK(breaking.demerits == doctest::Approx(expected.demerits).epsilon(1e-7));
        REQUIRE(breaking.breaks.size() == expected.ratios.size());
        for (std::size_t i = 0; i < expected.ratios.size(); ++i)
            CHECK(std::abs(breaking.breaks[i].ratio - expected.ratios[i]) <= .0005001);
        if (!expected.ends.empty()) CHECK(last_words(paragraph, breaking) == expected.ends);
    }
}

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

std::vector<std::size_t> legal_breaks(const std::vector<Item>& items) {
    std::vector<std::size_t> legal;
    for (std::size_t i = 0; i + 1 < items.size(); ++i)
        if (items[i].kind == Item::Kind::penalty ? items[i].penalty < quoin::lines::infinite_penalty
                                                 : i > 0 && items[i].kind == Item::Kind::glue &&
                                                       items[i - 1].kind == Item::Kind::box)
            legal.push_back(i);
    return legal;
}

double ratio_of(const std::vector<Item>& items, std::size_t begin, std::size_t end,
                double measure) {
    double width = 0, stretch = 0, shrink = 0;
    std::size_t i = begin;
    while (i < end && items[i].kind != Item::Kind::box)
        ++i;
    for (; i < end; ++i) {
        if (items[i].kind == Item::Kind::penalty) continue;
        width += items[i].width;
        stretch += items[i].stretch;
        shrink += items[i].shrink;
    }
    if (items[end].kind == Item::Kind::penalty) width += items[end].width;
    if (width < measure) return stretch > 0 ? (measure - width) / stretch : infinity;
    if (width > measure) return shrink > 0 ? (measure - width) / shrink : -infinity;
    return 0;
}

int fitness(double ratio) {
    return ratio < -.5 ? 0 : ratio <= .5 ? 1 : ratio <= 1 ? 2 : 3;
}

// Total demerits of one sequence of breaks; infinite if a line does not fit.
double total_demerits(const std::vector<Item>& items, const std::vector<std::size_t>& breaks,
                      double measure, const BreakingRules& rules) {
    double total = 0;
    std::size_t begin = 0;
    int last_fitness = 1;
    bool last_flagged = false;
    for (const std::size_t end : breaks) {
        const double ratio = ratio_of(items, begin, end, measure);
        if (ratio < -1 || ratio > rules.tolerance) return infinity;
        const double beta = 100 * std::pow(std::abs(ratio), 3);
        const double pi = items[end].kind == Item::Kind::penalty ? items[end].penalty : 0;
        if (pi >= 0)
            total += std::pow(1 + beta + pi, 2);
        else if (pi > -quoin::lines::infinite_penalty)
            total += std::pow(1 + beta, 2) - pi * pi;
        else
            total += std::pow(1 + beta, 2);
        const bool flagged = items[end].kind == Item::Kind::penalty && items[end].flagged;
        if (flagged && last_flagged) total += rules.flagged_demerits;
        if (std::abs(fitness(ratio) - last_fitness) > 1) total += rules.fitness_demerits;
        last_fitness = fitness(ratio);
        last_flagged = flagged;
        begin = end;
    }
    return total;
}

// The least total over all 2^n sequences; of exactly `rules.lines` lines if that is not 0.
double least_demerits(const std::vector<Item>& items, double measure, const BreakingRules& rules) {
    const std::vector<std::size_t> legal = legal_breaks(items);
    double least = infinity;
    for (std::size_t chosen = 0; chosen < std::size_t{1} << legal.size(); ++chosen) {
        std::vector<std::size_t> breaks;
        for (std::size_t i = 0; i < legal.size(); ++i)
            if ((chosen >> i & 1) != 0) breaks.push_back(legal[i]);
        breaks.push_back(items.size() - 1);
        if (rules.lines == 0 || breaks.size() == rules.lines)
            least = std::min(least, total_demerits(items, breaks, measure, rules));
    }
    return least;
}

std::vector<Item> random_paragraph(std::mt19937& random) {
    const auto up_to = [&](unsigned most) { return static_cast<int>(random() % (most + 1)); };
    std::vector<Item> items;
    const int breaks = 3 + up_to(9);
    for (int i = 0; i < breaks; ++i) {
        items.push_back(box(3 + up_to(20)));
        if (up_to(3) == 0)
            items.push_back(penalty(up_to(6), up_to(4) * 25.0 - 25, up_to(1) == 1));
        else
            items.push_back(glue(3 + up_to(4), 1 + up_to(6), up_to(3)));
    }
    items.push_back(box(5));
    items.push_back(penalty(0, quoin::lines::infinite_penalty, false));
    items.push_back(glue(0, 1000, 0));
    items.push_back(penalty(0, -quoin::lines::infinite_penalty, true));
    return items;
}

}

TEST_CASE("small paragraphs: as few demerits as the best of all breakings") {
    std::mt19937 random(1981);
    int feasible = 0;
    for (int round = 0; round < 400; ++round) {
        const std::vector<Item> items = random_paragraph(random);
        const double measure = 30 + static_cast<double>(random() % 60);
        BreakingRules rules;
        rules.tolerance = 1 + static_cast<double>(random() % 6);
        rules.lines = random() % 3 == 0 ? 1 + random() % 5 : 0;
        const double least = least_demerits(items, measure, rules);
        const Breaking breaking = quoin::lines::break_justified(items, measure, rules);
        CAPTURE(round);
        CHECK(breaking.breaks.empty() == (least == infinity));
        if (breaking.breaks.empty()) continue;
        ++feasible;
        std::vector<std::size_t> ends;
        for (const Break& end : breaking.breaks)
            ends.push_back(end.item);
        CHECK(breaking.demerits == doctest::Approx(least));
        CHECK(total_demerits(items, ends, measure, rules) == doctest::Approx(least));
    }
    CHECK(feasible > 100);
}

TEST_CASE("no feasible breaking, none given") {
    const std::vector<Item> too_wide{box(50), penalty(0, -quoin::lines::infinite_penalty, true)};
    CHECK(quoin::lines::break_justified(too_wide, 40, {}).breaks.empty());
    CHECK(quoin::lines::break_justified({}, 40, {}).breaks.empty());
}

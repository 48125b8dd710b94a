// Lines of a paragraph against every breaking there is: as few lines, and of those the evenest.
#include "compiler/stages/lines/paragraph_lines.hpp"

#include "tests/synthetic.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace paragraph_lines_test {

using quoin::composition::Paragraph;
using quoin::composition::Run;
using quoin::fonts::Glyph;
using quoin::lines::Line;
using quoin::lines::MeasuredParagraph;
using quoin::synthetic::add_run;
using quoin::synthetic::face;
using quoin::synthetic::hyphen_glyph;
using quoin::synthetic::paragraph;
using quoin::synthetic::words;
using quoin::theme::Align;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// All glyphs in a row: what a line is made of, with no regard for runs.
struct Flat {
    std::vector<double> advances;
    std::vector<double> trackings;
    std::vector<bool> spaces;
    std::vector<std::size_t> run_begins;
};

Flat flatten(const Paragraph& paragraph) {
    Flat flat;
    for (std::size_t r = 0; r < paragraph.runs.size(); ++r) {
        flat.run_begins.push_back(flat.advances.size());
        if (r < paragraph.label_runs) continue;
        const Run& run = paragraph.runs[r];
        for (const Glyph& glyph : run.glyphs) {
            flat.advances.push_back(
                run.size * (glyph.advance / double(run.face->units_per_em()) + run.tracking));
            flat.trackings.push_back(run.size * run.tracking);
            flat.spaces.push_back(quoin::lines::is_space(run, glyph));
        }
    }
    return flat;
}

double hyphen_em(const Paragraph& paragraph, std::size_t run) {
    return paragraph.runs[run].size *
           hb_font_get_glyph_h_advance(face().hb_font(), hyphen_glyph()) / face().units_per_em();
}

struct End {
    std::size_t at = 0;
    double hyphen = 0;
    double penalty = 0;
    std::size_t left_out = 0;
};

std::vector<End> possible_ends(const Paragraph& paragraph, const Flat& flat) {
    std::vector<End> ends;
    for (const quoin::composition::BreakPoint& point : paragraph.breaks)
        ends.push_back({flat.run_begins[point.run] + point.glyph,
                        point.hyphen ? hyphen_em(paragraph, point.run) : 0, point.penalty,
                        point.left_out});
    ends.push_back({flat.advances.size(), 0, 0, 0});
    return ends;
}

double natural_width(const Flat& flat, std::size_t begin, std::size_t end) {
    while (end > begin && flat.spaces[end - 1])
        --end;
    double width = end > begin ? -flat.trackings[end - 1] : 0;
    for (std::size_t i = begin; i < end; ++i)
        width += flat.advances[i];
    return width;
}

bool one_word(const Flat& flat, std::size_t begin) {
    return std::find(flat.spaces.begin() + static_cast<std::ptrdiff_t>(begin), flat.spaces.end(),
                     true) == flat.spaces.end();
}

struct Cost {
    std::size_t lines = 0;
    double cost = 0;

    bool operator<(const Cost& other) const {
        return lines != other.lines ? lines < other.lines : cost < other.cost;
    }
};

double narrowness(double room) {
    return std::sqrt(std::max(1.0, 40 / room));
}

// The cost that the header states; infinite if a line is too wide.
Cost cost_of(const Flat& flat, const std::vector<End>& ends, double room) {
    Cost total{ends.size(), 0};
    std::size_t begin = 0;
    for (const End& end : ends) {
        const double width = natural_width(flat, begin, end.at - end.left_out) + end.hyphen;
        if (width > room + 1e-9) total.cost = infinity;
        if (end.at < flat.advances.size())
            total.cost += 100 * std::pow((room - width) / room, 2) + end.penalty / 10;
        else if (begin > 0 && width < room / 4 && one_word(flat, begin))
            total.cost += 40;
        else if (begin > 0)
            total.cost += 12 * std::max(0.0, 1 - width / (room / 4 * narrowness(room)));
        begin = end.at;
    }
    return total;
}

Cost least_cost(const Flat& flat, const std::vector<End>& possible, double room) {
    Cost least{std::numeric_limits<std::size_t>::max(), infinity};
    const std::size_t breaks = possible.size() - 1;
    for (std::size_t chosen = 0; chosen < std::size_t{1} << breaks; ++chosen) {
        std::vector<End> ends;
        for (std::size_t i = 0; i < breaks; ++i)
            if ((chosen >> i & 1) != 0) ends.push_back(possible[i]);
        ends.push_back(possible.back());
        const Cost cost = cost_of(flat, ends, room);
        if (cost.cost < infinity && cost < least) least = cost;
    }
    return least;
}

std::size_t flat_index(const Flat& flat, Line::Position at) {
    return at.run < flat.run_begins.size() ? flat.run_begins[at.run] + at.glyph
                                           : flat.advances.size();
}

// The possible end that a line has: the next line begins there.
End end_of(const Flat& flat, const std::vector<End>& possible, const std::vector<Line>& lines,
           std::size_t line) {
    const std::size_t next =
        line + 1 < lines.size() ? flat_index(flat, lines[line + 1].begin) : flat.advances.size();
    const auto end = std::ranges::find(possible, next, &End::at);
    return end != possible.end() ? *end : End{next, 0, 0, 0}; // within an overlong word
}

// Every glyph once and in order, but for what a line's end leaves out; the widths as stated.
void check_whole(const Paragraph& paragraph, const std::vector<Line>& lines) {
    const Flat flat = flatten(paragraph);
    const std::vector<End> possible = possible_ends(paragraph, flat);
    std::size_t at = 0;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Line& line = lines[i];
        CHECK(flat_index(flat, line.begin) == at);
        const std::size_t end = flat_index(flat, line.end);
        CHECK(end > at);
        const double hyphen = line.hyphen ? hyphen_em(paragraph, line.end.run) : 0;
        CHECK(line.width == doctest::Approx(natural_width(flat, at, end) + hyphen));
        const End chosen = end_of(flat, possible, lines, i);
        CHECK(end + chosen.left_out == chosen.at);
        at = chosen.at;
    }
    CHECK(at == flat.advances.size());
}

std::vector<End> ends_of(const Flat& flat, const std::vector<End>& possible,
                         const std::vector<Line>& lines) {
    std::vector<End> ends;
    for (std::size_t line = 0; line < lines.size(); ++line)
        ends.push_back(end_of(flat, possible, lines, line));
    return ends;
}

// Now and then a break leaves out some of what stands between it and the one before, as it does a
// separator.
void leave_out_some(Paragraph& paragraph, std::mt19937& random) {
    std::uint32_t before = 0;
    for (quoin::composition::BreakPoint& point : paragraph.breaks) {
        if (random() % 3 == 0 && point.glyph > before + 2)
            point.left_out = static_cast<std::uint32_t>(1 + random() % (point.glyph - before - 2));
        before = point.glyph;
    }
}

}

TEST_CASE("ragged lines: none better among all breakings of small paragraphs") {
    std::mt19937 random(7);
    for (int round = 0; round < 300; ++round) {
        Paragraph text = paragraph(words(random, 1 + random() % 9, true));
        if (text.breaks.size() > 12) text.breaks.resize(12);
        text.indent = round % 3 == 0 ? 1.3 : 0;
        if (round % 2 == 0) leave_out_some(text, random);
        const double measure = 9 + 0.1 * static_cast<double>(random() % 80);
        const Flat flat = flatten(text);
        const std::vector<End> possible = possible_ends(text, flat);
        const Cost least = least_cost(flat, possible, measure - text.indent);
        if (least.cost == infinity) continue; // a word is wider than the measure
        CAPTURE(round);
        const MeasuredParagraph measured(text, 9);
        const std::vector<Line> lines = measured.lines(measure);
        check_whole(text, lines);
        CHECK(lines.size() == least.lines);
        CHECK(measured.line_count(measure) == int(least.lines));
        CHECK(cost_of(flat, ends_of(flat, possible, lines), measure - text.indent).cost ==
              doctest::Approx(least.cost));
    }
}

TEST_CASE("an overlong word is broken, not lost and not let off the page") {
    const std::vector<std::string> texts{
        std::string(200, 'w'),
        "see " + std::string(90, 'x') + " there",
        "a " + std::string(40, 'q') + " b " + std::string(70, 'r'),
        std::string(30, 'a') + "~~~~~~~~" + std::string(30, 'b'),
    };
    for (const std::string& text : texts) {
        CAPTURE(text);
        Paragraph source = paragraph(text);
        for (const Align align : {Align::left, Align::justified}) {
            source.align = align;
            const MeasuredParagraph measured(source, 10);
            int last = std::numeric_limits<int>::max();
            for (double measure = 10; measure < 60; measure += 0.37) {
                const std::vector<Line> lines = measured.lines(measure);
                check_whole(source, lines);
                for (const Line& line : lines)
                    CHECK(line.width <= measure);
                CHECK(int(lines.size()) == measured.line_count(measure));
                CHECK(int(lines.size()) <= last);
                last = int(lines.size());
            }
        }
    }
}

TEST_CASE("an overlong word keeps its ligatures whole") {
    Paragraph source = paragraph(std::string(60, 'f'));
    std::vector<Glyph>& glyphs = source.runs[0].glyphs;
    for (std::size_t i = 0; i + 1 < glyphs.size(); i += 2) { // one cluster of two glyphs
        glyphs[i].text_length = 2;
        glyphs[i + 1].text_begin = glyphs[i].text_begin;
    }
    for (const Line& line : MeasuredParagraph(source, 8).lines(8.1))
        CHECK(line.end.glyph % 2 == 0);
}

TEST_CASE(
    "justified lines fill the measure, but for the last, and stretch no space by over a third, "
    "or all are ragged") {
    std::mt19937 random(3);
    int filled = 0;
    for (int round = 0; round < 240; ++round) {
        Paragraph source = paragraph(words(random, 40 + random() % 40, round % 2 == 0));
        source.align = Align::justified;
        const double measure = 25 + 0.1 * static_cast<double>(random() % 150);
        const bool beyond = round % 3 == 0; // the column goes on
        if (beyond) source.most_room = measure;
        const MeasuredParagraph measured(source, 25);
        const std::vector<Line> lines = measured.lines(beyond ? measure + 10 : measure);
        CAPTURE(round);
        check_whole(source, lines);
        CHECK(int(lines.size()) == measured.line_count(beyond ? measure + 10 : measure));
        const Flat flat = flatten(source);
        const bool ragged = std::all_of(lines.begin(), lines.end(),
                                        [](const Line& line) { return line.word_space == 0; });
        double filled_to = 0;
        for (std::size_t i = 0; i + 1 < lines.size() && !ragged; ++i) {
            std::size_t end = flat_index(flat, lines[i].end);
            while (flat.spaces[end - 1])
                --end;
            double spaces = 0, added = 0;
            for (std::size_t g = flat_index(flat, lines[i].begin); g < end; ++g)
                if (flat.spaces[g]) {
                    spaces += flat.advances[g];
                    added += lines[i].word_space;
                }
            CHECK(added <= spaces / 3 + 1e-9);
            if (i == 0) filled_to = lines[i].width + added;
            CHECK(lines[i].width + added == doctest::Approx(filled_to));
            ++filled;
        }
        CHECK((ragged || filled_to == doctest::Approx(measure) ||
               (beyond && filled_to < measure && filled_to > 0.89 * measure)));
        CHECK(lines.back().width + lines.back().word_space <= measure + 1e-9);
    }
    CHECK(filled > 100);
}

// Ragged is better than a last line of one short word.
TEST_CASE("of a justified paragraph no lone short word is on the last line, where ragged lines "
          "have none") {
    std::mt19937 random(11);
    int ragged = 0;
    for (int round = 0; round < 400; ++round) {
        Paragraph source = paragraph(words(random, 12 + random() % 30, false));
        const double measure = 20 + 0.1 * static_cast<double>(random() % 200);
        const Flat flat = flatten(source);
        const auto runt = [&](const std::vector<Line>& lines) {
            return lines.size() > 1 && lines.back().width < measure / 4 &&
                   one_word(flat, flat_index(flat, lines.back().begin));
        };
        const bool avoidable = !runt(MeasuredParagraph(source, 20).lines(measure));
        source.align = Align::justified;
        const std::vector<Line> lines = MeasuredParagraph(source, 20).lines(measure);
        CAPTURE(round);
        if (avoidable) CHECK_FALSE(runt(lines));
        ragged += lines.size() > 1 && lines.front().word_space == 0;
    }
    CHECK(ragged > 0);
    CHECK(ragged < 400);
}

TEST_CASE("the most room is that of several lines: one line may be as wide as the column") {
    Paragraph source = paragraph("nnnn nnnn nn nnnn nn nnnn nnnn nn");
    source.most_room = 6;
    const double all = MeasuredParagraph(source, 100).lines(100).front().width;
    REQUIRE(all > source.most_room);
    const MeasuredParagraph measured(source, 5);
    CHECK(measured.line_count(all + 0.01) == 1);
    CHECK(measured.lines(all + 0.01).size() == 1);
    for (const Line& line : measured.lines(all - 0.01))
        CHECK(line.width <= source.most_room);
    source.in_margin = true; // a heading, beside which other lines stand
    CHECK(MeasuredParagraph(source, 5).line_count(all + 0.01) > 1);
}

TEST_CASE("a lone short word is not left on the last line") {
    const Paragraph source = paragraph("nnnn nnnn nn nnnn nn n");
    const MeasuredParagraph measured(source, 8);
    for (double measure = 8; measure < 12; measure += 0.1) {
        const std::vector<Line> lines = measured.lines(measure);
        if (lines.size() < 2) continue;
        CHECK(lines.back().width > measure / 4);
    }
}

TEST_CASE("a label is no part of the lines") {
    Paragraph source;
    add_run(source).text = "- ";
    source.runs[0].glyphs.resize(2);
    source.label_runs = 1;
    const Paragraph text = paragraph("aaa bbb");
    source.runs.push_back(text.runs[0]);
    source.hyphen_glyphs.push_back(hyphen_glyph());
    source.breaks.push_back({1, 4, 0, false});
    const std::vector<Line> lines = MeasuredParagraph(source, 3).lines(3);
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].begin.run == 1);
    CHECK(lines[0].begin.glyph == 0);
    CHECK(lines[0].end.glyph == 4);
    CHECK(lines[1].begin.glyph == 4);
}

TEST_CASE("a paragraph without glyphs is one empty line") {
    const Paragraph empty;
    const std::vector<Line> lines = MeasuredParagraph(empty, 10).lines(10);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].width == 0);
}

} // namespace paragraph_lines_test

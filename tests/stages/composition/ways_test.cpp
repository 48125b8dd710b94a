// Dates have one place on a page: every entry of more than a line has them in the line of its
// title, or at its right edge, or every one opens the line below with them; and they never stand
// alone.
#include "tests/every_page.hpp"

#include <doctest/doctest.h>

#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

using namespace quoin;

const std::regex dates_alone("(\\w+\u00A0)?(\\d\\d/)?\\d{4}(\u00A0–\u00A0\\S+)?\\s*");
const std::regex dates_at_end(".* · (\\w+\u00A0)?(\\d\\d/)?\\d{4}(\u00A0–\u00A0\\S+)?( · .*)?");
const std::regex dates_at_begin("(\\w+\u00A0)?(\\d\\d/)?\\d{4}(\u00A0–\u00A0\\S+)?( · .*)?");

std::string text_of(const composition::Paragraph& paragraph, const lines::Line& line) {
    std::string text;
    for (std::uint32_t r = line.begin.run; r < paragraph.runs.size() && r <= line.end.run; ++r) {
        const composition::Run& run = paragraph.runs[r];
        const auto byte = [&](std::uint32_t glyph) {
            return glyph < run.glyphs.size() ? run.glyphs[glyph].text_begin : run.text.size();
        };
        const std::size_t from = r == line.begin.run ? byte(line.begin.glyph) : 0;
        const std::size_t to = r == line.end.run ? byte(line.end.glyph) : run.text.size();
        text += run.text.substr(from, to - from);
    }
    return text;
}

bool heads_bullets(const composition::Composition& composition, std::size_t p) {
    const composition::Paragraph& title = composition.paragraphs[p];
    if (title.style != theme::StyleName::title || !title.keep_with_next) return false;
    for (std::size_t i = p + 1; i < composition.paragraphs.size(); ++i)
        if (composition.paragraphs[i].style != theme::StyleName::line)
            return composition.paragraphs[i].style == theme::StyleName::bullet;
    return false;
}

}

TEST_CASE("dates stand alike on every page, and never alone") {
    std::set<std::string> ways;
    every_page::each([&](const stages::Typeset& set, const std::string&) {
        const fit::Fit fit = stages::fit_or_draft(set);
        int in_line = 0, at_edge = 0, below = 0;
        for (std::size_t p = 0; p < fit.lines.size(); ++p) {
            const composition::Paragraph& title = set.composition.paragraphs[p];
            if (!heads_bullets(set.composition, p)) continue;
            const std::string text = composed::text_of(title);
            CAPTURE(text);
            at_edge += title.fill_run.has_value();
            in_line += std::regex_match(text, dates_at_end);
            const std::string next = composed::text_of(set.composition.paragraphs[p + 1]);
            below += std::regex_match(next, dates_at_begin);
            if (fit.lines[p].size() > 1 && title.region != composition::Region::side)
                CHECK_FALSE(std::regex_match(text_of(title, fit.lines[p].back()), dates_alone));
        }
        CHECK((in_line > 0) + (at_edge > 0) + (below > 0) == 1);
        ways.insert(in_line > 0 ? "in line" : at_edge > 0 ? "at the edge" : "below");
    });
    CHECK(ways.size() == 3);
}

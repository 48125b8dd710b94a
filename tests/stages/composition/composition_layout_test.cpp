// What a composition says of layout: where lines may end, how things line up, gaps, what keeps
// together.
#include "compiler/stages/composition/composition.hpp"

#include "compiler/stages/composition/line_ends.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace {

using quoin::composed::compose;
using quoin::composed::entry;
using quoin::composed::example;
using quoin::composed::text_of;
using quoin::composition::Composition;
using quoin::composition::Paragraph;
using quoin::composition::Run;
using namespace std::string_literals;

}

// Common practice: a line does not end on a word that leans on the next where another end costs
// little; penalties as Knuth and Plass have them.
TEST_CASE("how gladly a line ends") {
    const auto ends = [](std::string_view text, quoin::theme::StyleName style, bool english) {
        std::string out;
        for (const quoin::composition::LineEnd& end :
             quoin::composition::line_ends({text, {}, {}, style, english}))
            out += fmt::format("{}:{} ", end.offset, end.penalty);
        return out;
    };
    const auto contact_ends = [](std::string_view text) {
        std::vector<std::size_t> literal;
        for (std::size_t at = text.find(" ·"); at != text.npos; at = text.find(" ·", at + 1))
            literal.insert(literal.end(), {at, at + std::string_view(" · ").size()});
        std::string out;
        for (const quoin::composition::LineEnd& end : quoin::composition::line_ends(
                 {text, {}, literal, quoin::theme::StyleName::contact, true}))
            out += fmt::format("{}:{} ", end.offset, end.penalty);
        return out;
    };
    using enum quoin::theme::StyleName;
    const auto comma_ends = [](std::string_view text) {
        std::string out;
        for (const quoin::composition::LineEnd& end :
             quoin::composition::line_ends({text, {}, {}, line, true, {}, true}))
            out += fmt::format("{}:{} ", end.offset, end.penalty);
        return out;
    };
    CHECK(ends("one of many", bullet, true) == "4:0 7:40 ");
    CHECK(ends("one of many", bullet, false) == "4:0 7:0 ");
    CHECK(ends("The sea", bullet, true) == "4:40 ");
    CHECK(ends("Ellery State ferries", bullet, true) == "7:60 13:0 ");
    CHECK(ends("“Ángel Ó Dálaigh”, mate", bullet, true) == "10:60 13:60 26:0 ");
    CHECK(ends("9 sites, 212 quadrats", bullet, true) == "2:60 9:0 13:90 ");
    CHECK(ends("GPA 3.62 · Fellow of Note; Prize (2026)", line, true) ==
          "4:150 12:0 19:150 22:190 28:0 ");
    CHECK(ends("Portuguese (conversational), Spanish (native)", line, true) == "11:400 29:0 ");
    CHECK(ends("tidal- and river-fed", bullet, true) == "11:40 ");
    CHECK(ends("taken from the sea", bullet, true) == "6:0 11:40 15:40 ");
    CHECK(ends("a, Dublin Core, b", line, true) == "3:0 10:90 16:0 ");
    CHECK(ends("in Service. Has run on; it, too, 88% alive", bullet, true) ==
          "3:40 12:0 16:60 20:0 24:0 28:0 33:0 37:30 ");
    CHECK(comma_ends("Tools: scissor lift, meter") == "7:0 15:120 21:0 ");
    CHECK(ends("well-kept boats", bullet, true) == "10:0 ");
    CHECK(ends("mapping/sampling boats", bullet, true) == "8:120 17:0 ");
    CHECK(ends("a salt-marsh-and-mudflat-ish bay", bullet, true) ==
          "2:40 7:120 13:120 17:120 25:120 29:0 ");
    CHECK(ends("Port Ellery", contact, true) == "5:1060 ");
    CHECK(ends("Port Ellery", title, true) == "5:460 ");
    CHECK(contact_ends("Ana · Bo · Cy · Di") == "7:0 13:0 19:600 "); // none alone on a second line
    CHECK(contact_ends("Ana · Bo · Cy") == "7:0 13:0 ");             // one has to be on one
    CHECK(ends("C++ and C/C++", bullet, true) == "4:0 8:40 ");
    CHECK(ends("dots · dashes – x", bullet, true) == "8:0 19:0 ");
}

// The pattern's own separator parts nothing at a line's end; the writer's stays.
TEST_CASE("what a line's end leaves out") {
    const auto left_out = [](std::string_view text, std::vector<std::size_t> literals) {
        std::string out;
        for (const quoin::composition::LineEnd& end : quoin::composition::line_ends(
                 {text, {}, std::move(literals), quoin::theme::StyleName::line, true}))
            out += fmt::format("{}:{} ", end.offset, end.left_out);
        return out;
    };
    CHECK(left_out("WA · Jun", {2, 6}) == "6:3 ");
    CHECK(left_out("WA | Jun", {2, 5}) == "5:2 ");
    CHECK(left_out("WA · Jun", {}) == "6:0 ");
    CHECK(left_out("WA, Jun", {2, 4}) == "4:0 ");
    CHECK(left_out("WA – Jun", {2, 7}) == "7:0 ");
    CHECK(left_out("· Jun", {0, 3}) == "3:0 "); // nothing stands before it
    CHECK(left_out("a·b c", {1, 3}) == "5:0 ");
}

TEST_CASE("break points lie between glyphs, in order, never within a ligature or a date") {
    const std::string markup =
        entry("experience", "role: Office *affi*nity officer\nemployer: Ellery /Ferries/\n"
                            "dates: Jun 2025 - Aug 2026\n- Filed official and final "
                            "well-kept reports");
    const Composition composition = compose(markup);
    for (const Paragraph& paragraph : composition.paragraphs) {
        std::pair<std::uint32_t, std::uint32_t> before{paragraph.label_runs, 0};
        for (const quoin::composition::BreakPoint& point : paragraph.breaks) {
            CHECK(before < std::pair{point.run, point.glyph});
            before = {point.run, point.glyph};
            REQUIRE(point.run < paragraph.runs.size());
            CHECK(point.glyph <= paragraph.runs[point.run].glyphs.size());
        }
    }
    const Paragraph& title = composition.paragraphs.at(2);
    CHECK(title.breaks.size() == 4); // after Office, affinity, officer, Ellery: not before dates
    CHECK(text_of(title).ends_with(" · Jun\u00A02025\u00A0–\u00A0Aug\u00A02026"));

    const Paragraph& bullet = composition.paragraphs.at(3);
    CHECK(text_of(bullet) == "Filed official and final well-kept reports");
}

namespace {

// Bytes of the text where a line may end.
std::set<std::size_t> ends_in(const Paragraph& paragraph) {
    std::set<std::size_t> ends;
    for (const quoin::composition::BreakPoint& point : paragraph.breaks) {
        std::size_t byte = 0;
        for (std::uint32_t run = 0; run < point.run; ++run)
            byte += paragraph.runs[run].text.size();
        const Run& run = paragraph.runs[point.run];
        ends.insert(byte + (point.glyph < run.glyphs.size() ? run.glyphs[point.glyph].text_begin
                                                            : run.text.size()));
    }
    return ends;
}

// Of the one paragraph that holds `word`: whether a line may end before it and after it.
std::pair<bool, bool> ends_beside(const std::string& word, const Composition& composition) {
    std::pair<bool, bool> ends;
    std::size_t found = 0;
    for (const Paragraph& paragraph : composition.paragraphs) {
        const std::size_t at = text_of(paragraph).find(word);
        if (at == std::string::npos) continue;
        const std::set<std::size_t> all = ends_in(paragraph);
        ends = {all.contains(at), all.contains(at + word.size())};
        ++found;
    }
    CHECK(found == 1);
    return ends;
}

}

TEST_CASE("a line may end before a word of the pattern's own, and not after it") {
    const struct {
        std::string kind, fields, word;
    } cases[] = {
        {"education", "school: Ellery\ngpa: 3.5\nhonors: Dean's List", "Honors: "},
        {"projects", "project: Kelp\ncourse: Design\nwith: team of 3", "with "},
    };
    for (const auto& one : cases) {
        CAPTURE(one.word);
        CHECK(ends_beside(one.word, compose(entry(one.kind, one.fields))) ==
              std::pair(true, false));
    }
}

// A line of its own would hold half of what is one span of time; a narrow column is too narrow.
TEST_CASE(
    "the date on which a credential expires stands with the one before it, in a wide column") {
    const std::string credential =
        entry("credentials", "credential: Rescue Diver\ndates: Aug 2025\nexpires: Aug 2027");
    CHECK(ends_beside("expires ", compose(credential)) == std::pair(false, false));
    CHECK(ends_beside("expires ",
                      compose(credential, "columns: two\nside-width: 0.3\n"
                                          "column-gap: 2\nside-sections: credentials\n")) ==
          std::pair(true, false));
}

TEST_CASE("bullets line up") {
    const Composition composition =
        compose(entry("experience", "role: Mate\n- One\n-- Two"), "bullet-indent: 0.5\n");
    const Paragraph& outer = composition.paragraphs.at(3);
    const Paragraph& inner = composition.paragraphs.at(4);
    CHECK(text_of(outer, true) == "• One");
    CHECK(text_of(inner, true) == "– Two");
    CHECK(outer.label_runs == 1);
    CHECK(outer.indent == doctest::Approx(0.5 + 0.8));
    CHECK(outer.hang == doctest::Approx(0.8));
    CHECK(inner.indent - inner.hang == doctest::Approx(outer.indent));
    // a hang too small for the sign and its space gives way
    const Paragraph tight =
        compose(entry("experience", "role: Mate\n- One"), "bullet: •••\nbullet-hang: 0.4\n")
            .paragraphs.at(3);
    CHECK(tight.hang > 0.4);
}

TEST_CASE("gaps and what keeps together") {
    const Composition composition =
        compose("name: Ana Reyes\nheadline: Sailor\nphone: 360-555-0100\n\nsection: Experience\n\n"
                "role: Mate\nnote: Seasonal\n- One\n- Two\n\nrole: Deckhand\n\nrole: Cook\n\n"
                "section: Empty\n\nsection: Skills\n\nBoats: dinghy\nKnots: bowline\n");
    std::string out;
    for (const Paragraph& paragraph : composition.paragraphs)
        out += fmt::format("{} {}{}\n", static_cast<int>(paragraph.gap), text_of(paragraph),
                           paragraph.keep_with_next ? " +" : "");
    // none header contact section heading entry line bullet
    CHECK(out == R"(0 Ana Reyes
1 Sailor
2 360-555-0100
3 Experience +
4 Mate +
6 Seasonal +
7 One
7 Two
5 Deckhand
6 Cook
3 Skills +
4 Boats: dinghy
6 Knots: bowline
)");
    REQUIRE(composition.outlines.size() == 2);
    CHECK(composition.outlines[1].title == "Skills");
    CHECK(text_of(composition.paragraphs[composition.outlines[1].paragraph]) == "Skills");
    CHECK(composition.title == "Ana Reyes, résumé");
    CHECK(composition.author == "Ana Reyes");
    CHECK(composition.language == "en-US");
}

TEST_CASE("a running head, for whatever pages there come to be") {
    const Composition composition = compose(example);
    const Paragraph& head = composition.running_head;
    REQUIRE(head.runs.size() == 2);
    CHECK(head.runs[0].text == "Ottoline Brandt · page ");
    CHECK(head.runs[1].text == "0123456789");
    CHECK(head.runs[1].glyphs.size() == 10);
    CHECK(head.breaks.empty());
}

TEST_CASE("text is never set under 10 pt") {
    const std::string theme = "size: 12\n\nstyle: text\nsize: 0.84\n";
    CHECK(compose(entry("prose", "text: a"), theme).paragraphs.at(2).size == doctest::Approx(0.84));
    CHECK(compose("size: 10\n" + entry("prose", "text: a"), theme).paragraphs.at(2).size == 1);
}

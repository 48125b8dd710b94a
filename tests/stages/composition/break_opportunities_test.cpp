// Where lines may end: Annex #14 against the published test file, and the exceptions case by case.

#include "compiler/stages/composition/break_opportunities.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace break_opportunities_test {

namespace {

void append_utf8(std::string& text, unsigned code) {
    const auto put = [&](unsigned byte) { text.push_back(static_cast<char>(byte)); };
    if (code < 0x80) {
        put(code);
    } else if (code < 0x800) {
        put(0xC0 | code >> 6);
        put(0x80 | (code & 0x3F));
    } else if (code < 0x10000) {
        put(0xE0 | code >> 12);
        put(0x80 | (code >> 6 & 0x3F));
        put(0x80 | (code & 0x3F));
    } else {
        put(0xF0 | code >> 18);
        put(0x80 | (code >> 12 & 0x3F));
        put(0x80 | (code >> 6 & 0x3F));
        put(0x80 | (code & 0x3F));
    }
}

struct Published {
    std::string line; // `× 0061 × 0020 ÷ 0062 ÷`
    std::string text;
    std::vector<std::size_t> offsets;
};

// LineBreakTest.txt of the Unicode Character Database: `÷` where a line may end, `×` where not.
std::vector<Published> published_tests() {
    std::ifstream file("/usr/share/unicode/auxiliary/LineBreakTest.txt");
    std::vector<Published> tests;
    for (std::string line; std::getline(file, line);) {
        line = line.substr(0, line.find('#'));
        line.erase(line.find_last_not_of(" \t") + 1);
        if (line.empty()) continue;
        Published test{line, {}, {}};
        std::istringstream words(line);
        for (std::string word; words >> word;) {
            unsigned code = 0;
            if (word == "÷")
                test.offsets.push_back(test.text.size());
            else if (word != "×") {
                std::from_chars(word.data(), word.data() + word.size(), code, 16);
                append_utf8(test.text, code);
            }
        }
        test.offsets.pop_back(); // the end of the text
        tests.push_back(std::move(test));
    }
    return tests;
}

// ICU 72 differs from the file of its own generation in two known ways, and in these lines alone.
const std::vector<std::string> hyphen_at_start_keeps_letter = {
    "× 002D ÷ 0023 ÷",  "× 002D × 0308 ÷ 0023 ÷",  "× 002D ÷ 00A7 ÷", "× 002D × 0308 ÷ 00A7 ÷",
    "× 002D ÷ 50005 ÷", "× 002D × 0308 ÷ 50005 ÷", "× 002D ÷ 0E01 ÷", "× 002D × 0308 ÷ 0E01 ÷",
};
const std::vector<std::string> stop_keeps_figure = {
    "× 002C ÷ 0030 ÷",
    "× 002C × 0308 ÷ 0030 ÷",
    "× 0065 × 0071 × 0075 × 0061 × 006C × 0073 × 0020 × 002E ÷ 0033 × 0035 × 0020 ÷ 0063 × 0065 × "
    "006E × 0074 × 0073 ÷",
    "× 0061 × 002E ÷ 0032 × 0020 ÷",
    "× 0061 × 002E ÷ 0032 × 0020 ÷ 0915 ÷",
    "× 0061 × 002E ÷ 0032 × 0020 ÷ 672C ÷",
    "× 0061 × 002E ÷ 0032 × 3000 ÷ 672C ÷",
    "× 0061 × 002E ÷ 0032 × 3000 ÷ 307E ÷",
    "× 0061 × 002E ÷ 0032 × 3000 ÷ 0033 ÷",
    "× 0041 × 002E ÷ 0031 × 0020 ÷ BABB ÷",
    "× BD24 ÷ C5B4 × 002E × 0020 ÷ 0041 × 002E ÷ 0032 × 0020 ÷ BCFC ÷",
    "× BD10 ÷ C694 × 002E × 0020 ÷ 0041 × 002E ÷ 0033 × 0020 ÷ BABB ÷",
    "× C694 × 002E × 0020 ÷ 0041 × 002E ÷ 0034 × 0020 ÷ BABB ÷",
    "× 0061 × 002E ÷ 0032 × 3000 ÷ 300C ÷",
};

std::string marked(std::string_view text, const std::vector<std::size_t>& offsets) {
    std::string result(text);
    for (auto offset = offsets.rbegin(); offset != offsets.rend(); ++offset)
        result.insert(*offset, "|");
    return result;
}

// `|` marks every opportunity. What keeps together is common practice of the trade.
constexpr std::array cases{
    // as Annex #14 has it
    "Counted |212 |eelgrass |quadrats",
    "state-|of-|the-|art",
    "a |half-|day |trip",
    "Pacific–|Atlantic",
    "20 |hours",
    "(see |above) |and |below",
    "a\u00A0b |c",
    "soft\u00AD|hyphen",
    // programming languages and plus signs
    "wrote |C++ |and |C |code",
    "wrote |C/C++, |F# |and |C#.",
    "in |C++/Python",
    "the |A+ |grade",
    "in .NET |code",
    // slashes
    "and/or |24/7 |CI/CD |TCP/IP",
    "design/|research |HTML/CSS |read/|write",
    "survey/|writing |étés/|étés |été/étés",
    "3.62/4.00",
    "3.62 / 4.00 |overall",
    // money and figures
    "$1.2M |raised",
    "$1.2M–$1.5M |budget",
    "18%–25% |less",
    "1,200 |plots",
    // dates
    "Jun 2026 – |Aug 2026",
    "Sept. 2026 – |present",
    "(May 12, 2026) |and |on |12 May 2026",
    "Summer 2026 |and |Fall 2025, |then |fall |back",
    "Fall |foliage |May |queen",
    "2019–2021 |and |12–15",
    "2019–present",
    "Jun–|Aug",
    "in |May, |twelve |sites",
    // phone numbers: E.123 notation, and that of North America
    "call |(360) 555-0142 |or |write",
    "call |+1 360 555 0142, |or |write",
    "call |+44 20 7946 0958 |now",
    "call |360 555 0142 |now",
    "call |+1 (360) 555-0142 |now",
    "in |(b) |2026",
    // addresses
    "to |ottoline-brandt@mail.ellery-state.example |now",
    "to |(o-b@ellerystate.example), |now",
    "at |https://ellery-state.example/|bio/|eel-grass?year=26&site=b-c |now",
    "at |otto-brandt.example/|eel-grass |now",
    "at |www.otto-brandt.example |now",
    "a |Node.js-|based |tool",
    // hyphens beside one letter or a figure
    "by |e-mail, |A-level, |T-shirt, |3-D, |a |12-week |course",
    "co-|op |X-ray |self-|taught |built-|in",
    "an |é-zone |and |a |zone-é",
    // dashes keep to the word before
    "surveys – |and |maps — |and |notes",
    "surveys—|and |maps",
    "Aug - |Sep |x -- |y",
    // names
    "J. R. Brandt |and |Ottoline |J. Brandt",
    "É. Brandt |and |vitamin |c. |then",
    "with |Dr. Brandt |and |(Prof. Okafor) |at |St. Orrin",
    // figures and what they count
    "No. 5 |and |(p. 12) |and |pp. 12–15",
    "said |No. |Then",
    "18 % |of |5 km, |300 mL, |at |12 °C |(5 km/h)",
    "5 |kmx |5 |miles |in |12 |in |2026",
    "at |9 a.m. |and |5 PM, |Mondays",
    "km |and |mL",
};

bool starts_character(std::string_view text, std::size_t offset) {
    return (static_cast<unsigned char>(text[offset]) & 0xC0) != 0x80;
}

}

TEST_SUITE("break opportunities") {
    TEST_CASE("a date range as it is printed is never broken") {
        // Every form of `dates-as`, its spaces U+00A0 and its dash U+2013.
        for (const char* range :
             {"Jun\u00A02026\u00A0–\u00A0Aug\u00A02026",
              "June\u00A02026\u00A0–\u00A0August\u00A02026", "06/2026\u00A0–\u00A008/2026",
              "2026-06\u00A0–\u00A02026-08", "Jun\u00A02026\u00A0–\u00A0Present",
              "Summer\u00A02026\u00A0–\u00A0Fall\u00A02026", "2024\u00A0–\u00A02026",
              "May\u00A02027\u00A0(expected)"}) {
            CAPTURE(range);
            CHECK(quoin::composition::break_opportunities(range).empty());
            const std::string in_line = "Intern · " + std::string(range) + " · Astoria";
            const std::size_t begin = in_line.find(range);
            for (const std::size_t at : quoin::composition::break_opportunities(in_line))
                CHECK((at <= begin || at > begin + std::string(range).size()));
        }
    }

    TEST_CASE("Annex #14: every line of LineBreakTest.txt 15.0.0 but the 22 known ones") {
        const std::vector<Published> tests = published_tests();
        REQUIRE(tests.size() == 7654);
        std::vector<std::string> different;
        for (const Published& test : tests)
            if (quoin::composition::uax14_opportunities(test.text) != test.offsets)
                different.push_back(test.line);
        std::vector<std::string> known = hyphen_at_start_keeps_letter;
        known.insert(known.end(), stop_keeps_figure.begin(), stop_keeps_figure.end());
        CHECK(known.size() == 22);
        CHECK(different == known);
    }

    TEST_CASE("exceptions for what is read as one sign") {
        for (const std::string_view expected : cases) {
            std::string text(expected);
            std::erase(text, '|');
            CHECK(marked(text, quoin::composition::break_opportunities(text)) == expected);
        }
    }

    TEST_CASE("an exception takes away opportunities only, wherever in a text it stands") {
        std::string text;
        std::string expected;
        for (const std::string_view one : cases) {
            expected.append(one).append(" |so |");
            text.append(one).append(" so ");
        }
        std::erase(text, '|');
        expected.resize(expected.size() - 1);
        CHECK(marked(text, quoin::composition::break_opportunities(text)) == expected);
        const auto all = quoin::composition::uax14_opportunities(text);
        const auto kept = quoin::composition::break_opportunities(text);
        CHECK(std::ranges::includes(all, kept));
    }

    TEST_CASE("texts without words, and malformed ones") {
        for (const std::string_view text :
             {std::string_view(), std::string_view(" "), std::string_view("   \t  "),
              std::string_view(" a  b "), std::string_view("\xFF\xFE-\x80/\xC3"),
              std::string_view("\xE2\x80"), std::string_view("\0-\0", 3), std::string_view("-"),
              std::string_view("/"), std::string_view("+"), std::string_view("@"),
              std::string_view("a\n–b\n- c")}) {
            CAPTURE(text);
            for (const std::size_t offset : quoin::composition::break_opportunities(text)) {
                CHECK(offset > 0);
                CHECK(offset < text.size());
            }
        }
        CHECK(marked(" a  b ", quoin::composition::break_opportunities(" a  b ")) == " |a  |b ");
        CHECK(marked("Jun\n2026", quoin::composition::break_opportunities("Jun\n2026")) ==
              "Jun\n|2026");
    }

    TEST_CASE("long runs of what rules look at end in good time, on character bounds") {
        for (const std::string_view unit :
             {"é/", "word/", "a-", "1-", "漢", "+", "a@", "x.", "12 ", "J. ", "(360) ", "—", "°"}) {
            std::string text;
            while (text.size() < 200'000)
                text += unit;
            const auto offsets = quoin::composition::break_opportunities(text);
            CHECK(std::ranges::is_sorted(offsets));
            CHECK(std::ranges::all_of(
                offsets, [&](std::size_t offset) { return starts_character(text, offset); }));
        }
    }
}

} // namespace break_opportunities_test

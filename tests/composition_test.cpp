// What a résumé and a theme become: structure, text, runs and the places where lines may end.
#include "compiler/composition/composition.hpp"

#include "compiler/composition/line_ends.hpp"
#include "compiler/model/vocabulary.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace {

using quoin::Composition;
using quoin::Paragraph;
using quoin::Run;
using quoin::StructureType;
using quoin::composed::compose;
using quoin::composed::example;
using quoin::composed::try_compose;
using namespace std::string_literals;

std::string text_of(const Paragraph& paragraph, bool with_label = false) {
    std::string text;
    for (std::size_t run = with_label ? 0 : paragraph.label_runs; run < paragraph.runs.size();
         ++run)
        text += paragraph.runs[run].text;
    return text;
}

std::string with_visible_spaces(std::string text) { // `~` for U+00A0
    for (std::size_t at = 0; (at = text.find("\u00A0", at)) != std::string::npos;)
        text.replace(at, 2, "~");
    return text;
}

std::string_view name_of(StructureType type) {
    constexpr std::string_view names[] = {"Document", "Sect", "H1",  "H2",    "H3",   "P",
                                          "L",        "LI",   "Lbl", "LBody", "Link", "Span"};
    return names[static_cast<std::size_t>(type)];
}

// The structure tree with its text, a line an element.
std::string dump(const Composition& composition) {
    std::map<std::uint32_t, std::string> texts;
    for (const Paragraph& paragraph : composition.paragraphs)
        for (const Run& run : paragraph.runs)
            texts[run.element] += with_visible_spaces(run.text);
    std::string out;
    std::vector<std::size_t> depths;
    for (std::uint32_t index = 0; index < composition.elements.size(); ++index) {
        const quoin::Element& element = composition.elements[index];
        depths.push_back(index == 0 ? 0 : depths[element.parent] + 1);
        out += std::string(2 * depths.back(), ' ') + std::string(name_of(element.type));
        if (texts.contains(index)) out += " \"" + texts[index] + "\"";
        if (!element.uri.empty()) out += " <" + element.uri + "> (" + element.contents + ")";
        out += '\n';
    }
    return out;
}

// A résumé of one entry's lines, under a section that holds `kind`.
std::string entry(const std::string& kind, const std::string& lines) {
    return "name: Ana Reyes\n\nsection: Things\nholds: " + kind + "\n\n" + lines + "\n";
}

// The runs of a paragraph's text, each with its style: `b`, `i`, `u` before it.
std::string runs_of(const Paragraph& paragraph) {
    std::string out;
    for (std::size_t index = paragraph.label_runs; index < paragraph.runs.size(); ++index) {
        const Run& run = paragraph.runs[index];
        const std::string file = run.face->file().stem().string();
        out += run.underline ? "u" : "";
        out += file.ends_with("_RB")    ? "b"
               : file.ends_with("_RI")  ? "i"
               : file.ends_with("_RBI") ? "bi"
                                        : "";
        out += "'" + run.text + "'";
    }
    return out;
}

}

TEST_CASE("the example's structure") {
    CHECK(dump(compose(example)) ==
          R"~(Document
  H1 "Ottoline Brandt"
  P "Marine biology student, field survey and data skills"
  P "Port Ellery, WA ·  ·  · "
    Link "(360) 555-0142" <tel:+13605550142> (Phone Ottoline Brandt: (360) 555-0142)
    Link "ottoline.brandt@ellerystate.example" <mailto:ottoline.brandt@ellerystate.example> (Email Ottoline Brandt: ottoline.brandt@ellerystate.example)
    Link "ottolinebrandt.example" <https://ottolinebrandt.example> (Web page: ottolinebrandt.example)
  Sect
    H2 "Education"
    H3 "Ellery State College, Port Ellery, WA"
    P "Bachelor of Science in Marine Biology, Minor in Statistics · May~2027~(expected)"
    P "GPA 3.62 / 4.00 · Honors: President’s List (2 terms); Dean’s List (4 terms)"
    P "Relevant courses: Benthic Ecology; GIS for Field Science; Applied Regression"
  Sect
    H2 "Relevant Experience"
    H3 "Field Survey Intern, Salish Tidal Trust, Anacortes, WA · Jun~2026~–~Aug~2026"
    L
      LI
        Lbl "• "
        LBody
          P "Counted 212 eelgrass quadrats at 9 sites and cut entry time 18% with a barcoded datasheet"
      LI
        Lbl "• "
        LBody
          P "Trained 4 volunteers in GPS and quadrat placement"
  Sect
    H2 "Skills"
    P "Laboratory: pH meter, titration, analytical balance"
    P "Languages: Portuguese (professional), Hindi (conversational)"
)~");
}

// Allowed children: PDF Association, "Tagged PDF Best Practice Guide: Syntax" 1.0 (2019).
TEST_CASE("structure elements hold only what they may, and no heading level is skipped") {
    using enum StructureType;
    const std::map<StructureType, std::set<StructureType>> allowed = {
        {document, {sect, p, h1}},
        {sect, {h2, h3, p, l}},
        {h1, {link}},
        {h2, {link}},
        {h3, {link}},
        {p, {link}},
        {l, {li}},
        {li, {lbl, lbody}},
        {lbl, {}},
        {lbody, {p, l}},
        {link, {}},
        {span, {}},
    };
    const std::string markup = example + R"(
section: Projects

project: Tide tables
with: Ana Reyes
dates: 2025
link: Portfolio <https://tides.example/>
- <https://tides.example/harmonics> gave the *harmonic* part
-- inner one
-- inner two
- outer two

section: Activities
holds: activities

- a bullet with nothing above it
)";
    const Composition composition = compose(markup);
    int level = 0;
    for (std::uint32_t index = 1; index < composition.elements.size(); ++index) {
        const quoin::Element& element = composition.elements[index];
        CHECK(element.parent < index);
        CHECK(allowed.at(composition.elements[element.parent].type).contains(element.type));
        if (element.type < h1 || element.type > h3) continue;
        const int own = static_cast<int>(element.type) - static_cast<int>(h1) + 1;
        CHECK(own <= level + 1);
        level = own;
    }
    const std::string structure = dump(composition);
    CHECK(structure.find(R"~(        LBody
          P " gave the harmonic part"
            Link "tides.example/harmonics" <https://tides.example/harmonics> (Web page: tides.example/harmonics)
          L
            LI
              Lbl "– "
              LBody
                P "inner one"
            LI
              Lbl "– "
              LBody
                P "inner two"
      LI
        Lbl "• "
        LBody
          P "outer two"
)~") != std::string::npos);
    CHECK(
        structure.find(
            R"~(Link "Portfolio" <https://tides.example/> (Web page Portfolio: tides.example/))~") !=
        std::string::npos);
}

TEST_CASE("what patterns make of fields") {
    const std::vector<std::pair<std::string, std::vector<std::string>>> cases = {
        {entry("experience", "role: Deckhand\ndates: Summer 2026"),
         {"Deckhand · Summer\u00A02026"}},
        {entry("experience", "employer: Ellery Ferries\nplace: Port Ellery\ndates: 2025"),
         {"Ellery Ferries, Port Ellery · 2025"}},
        {entry("experience", "dates: 2024\nrole: Deckhand"), {"Deckhand · 2024"}},
        {entry("experience", "role: Deckhand\nemployer: Ellery Ferries\ndates: 2025\n- One\n"
                             "role: Mate\ndates: 2026\n- Two"),
         {"Deckhand, Ellery Ferries · 2025", "One", "Mate · 2026", "Two"}},
        {entry("education", "degree: Bachelor of Arts\nmajor: History"),
         {"Bachelor of Arts, Major in History"}},
        {entry("education", "school: Ellery State College\nmajor: History\nhonors: Dean's List"),
         {"Ellery State College", "Major in History", "Honors: Dean’s List"}},
        {entry("skills", "Laboratory: pH meter, titration"), {"Laboratory: pH meter, titration"}},
        {entry("publications", "publication: \"On Eelgrass\"\nlink: a.example\nlink: b.example"),
         {"“On Eelgrass” · a.example · b.example"}},
        {entry("credentials", "credential: First Aid\nissuer: Ellery Health\nexpires: 2027"),
         {"First Aid, Ellery Health · expires 2027"}},
        {entry("prose", "text: One.\ntext: Two."), {"One., Two."}},
    };
    for (const auto& row : cases) {
        const auto& [markup, expected] = row;
        CAPTURE(row.first);
        const Composition composition = compose(markup);
        std::vector<std::string> texts;
        for (std::size_t index = 2; index < composition.paragraphs.size(); ++index)
            texts.push_back(text_of(composition.paragraphs[index]));
        CHECK(texts == expected);
    }
}

TEST_CASE("left-over separators are dropped, a pattern's own words stay") {
    const std::pair<const char*, const char*> cases[] = {
        {"{publication}[, {dates}][, {link}]", "2026, a.example"},
        {"[{publication}][ · {dates}][ · {link}]", "2026 · a.example"},
        {"– [{publication}][, {dates}][, {link}]", "– 2026, a.example"},
        {"*In:* – [{publication}][, {dates}][, {link}]", "In: – 2026, a.example"},
        {"{publication}[ ([{dates}][, {link}])]", "(2026, a.example)"},
        {"{dates}[ ([{publication}][, at {link}]).]", "2026 (at a.example)."},
        {"{dates}, {link} [{publication}]", "2026, a.example"},
    };
    for (const auto& row : cases) {
        CAPTURE(row.first);
        const std::string theme = "form: publications\ntitle: "s + row.first + "\n";
        CHECK(text_of(compose(entry("publications", "dates: 2026\nlink: a.example"), theme)
                          .paragraphs.at(2)) == row.second);
    }
}

TEST_CASE("a title is a heading only where more follows it") {
    const auto type = [](const std::string& lines) {
        const Composition composition = compose(entry("experience", lines));
        return name_of(composition.elements[composition.paragraphs.at(2).element].type);
    };
    CHECK(type("role: Deckhand") == "P");
    CHECK(type("role: Deckhand\n- Sailed") == "H3");
    CHECK(type("role: Deckhand\nnote: In the summer") == "H3");
    CHECK(type("role: Deckhand\nrole: Mate") == "H3");
}

// A word of its own for every field that the markup knows.
TEST_CASE("every word of the source comes out once") {
    std::map<std::string, int> words; // how often each came out
    int year = 1950;
    const auto value_for = [&](const quoin::Word& field, const std::string& kind) {
        std::string word = kind + "x" + std::string(field.label);
        std::string value = word;
        if (field.value == quoin::ValueKind::dates) value = word = std::to_string(year++);
        if (field.value == quoin::ValueKind::email) value = word += "@ellerystate.example";
        if (field.value == quoin::ValueKind::link) value = word += ".example";
        if (field.value == quoin::ValueKind::phone) value = word = "360-555-0101";
        words[word] = 0;
        return value;
    };
    std::string markup;
    const auto add_fields = [&](const auto& takes, const std::string& kind) {
        for (const quoin::Word& field : quoin::vocabulary())
            if (std::holds_alternative<quoin::FieldName>(field.means) && takes(field))
                markup += fmt::format("{}: {}\n", field.label, value_for(field, kind));
    };
    add_fields([](const quoin::Word& field) { return field.heading; }, "heading");
    for (const std::string_view name : quoin::holds_names()) {
        const std::string kind(name);
        const quoin::Holds holds = *quoin::holds_named(name);
        markup += fmt::format("\nsection: {0}xsection\nholds: {0}\n\n", kind);
        words[kind + "xsection"] = 0;
        add_fields([&](const quoin::Word& field) { return field.kinds.has(holds); }, kind);
        if (quoin::has_groups(holds)) {
            markup += "One: " + kind + "xone\nTwo: " + kind + "xtwo\n";
            words[kind + "xone"] = words[kind + "xtwo"] = 0;
        }
        if (quoin::has_bullets(holds)) {
            markup += "- " + kind + "xbullet\n-- " + kind + "xinner\n";
            words[kind + "xbullet"] = words[kind + "xinner"] = 0;
        }
    }
    CAPTURE(markup);
    for (const Paragraph& paragraph : compose(markup).paragraphs) {
        std::istringstream text(text_of(paragraph));
        for (std::string word; text >> word;) {
            while (!word.empty() && std::string_view(",;:").find(word.back()) != std::string::npos)
                word.pop_back();
            if (const auto known = words.find(word); known != words.end()) ++known->second;
        }
    }
    CHECK(words.size() > 60);
    for (const auto& row : words) {
        const auto& [word, times] = row;
        CAPTURE(row.first);
        CHECK(times == 1);
    }
}

TEST_CASE("marks choose the face") {
    const std::pair<const char*, const char*> cases[] = {
        {"- plain *strong* /emphasis/ _under_", "'plain 'b'strong'' 'i'emphasis'' 'u'under'"},
        {"- */both/*", "bi'both'"},
        {"role: Mate\nemployer: The /Heron/, a boat\n- x", "b'Mate'', 'i'The ''Heron'i', a boat'"},
        {"role: First *Mate*\n- x", "b'First Mate'"},
    };
    for (const auto& row : cases) {
        const auto& [lines, expected] = row;
        CAPTURE(row.first);
        CHECK(runs_of(compose(entry("experience", lines)).paragraphs.at(2)) == expected);
    }
    CHECK(runs_of(compose(entry("prose", "text: a *b*"), "style: text\nweight: bold\n")
                      .paragraphs.at(2)) == "b'a b'");
}

TEST_CASE("pieces of like looks are one run, so that ligatures cross their seams") {
    const Composition composition = compose(entry("prose", "text: o\\ffi\\ce"));
    const Paragraph& paragraph = composition.paragraphs.at(2);
    REQUIRE(paragraph.runs.size() == 1);
    CHECK(paragraph.runs[0].text == "office");
    CHECK(paragraph.runs[0].glyphs.size() < 6);
}

TEST_CASE("capitals and small capitals") {
    const std::string markup = entry("prose", "text: Straße\\ 5");
    CHECK(text_of(compose(markup, "style: text\ncaps: all\n").paragraphs.at(2)) ==
          "STRASSE\u00A05");
    const auto plain = compose(markup).paragraphs.at(2);
    const auto small = compose(markup, "style: text\ncaps: small\n").paragraphs.at(2);
    CHECK(text_of(small) == text_of(plain));
    CHECK(small.runs[0].glyphs[0].id == plain.runs[0].glyphs[0].id);
    CHECK(small.runs[0].glyphs[1].id != plain.runs[0].glyphs[1].id);
}

// U+2C6D is in Gentium and not in Libertine (HarfBuzz on the files of Debian 12); an ideograph is
// in none of the theme's families.
TEST_CASE("a character that the family lacks comes from the next, and in none is an error") {
    const Composition composition = compose(entry("prose", "text: a\u2C6Db"));
    const Paragraph& paragraph = composition.paragraphs.at(2);
    REQUIRE(paragraph.runs.size() == 3);
    CHECK(paragraph.runs[1].text == "\u2C6D");
    CHECK(paragraph.runs[1].face->file().filename() == "GentiumPlus-Regular.ttf");

    const auto result = try_compose(entry("prose", "text: the letter \u6F22 and \u6F22, *\u5B57*"));
    CHECK_FALSE(result.composition);
    REQUIRE(result.diagnostics.all().size() == 2);
    const quoin::Diagnostic& fault = result.diagnostics.all().front();
    CHECK(fault.text == "no font of theme 'test' has the character '\u6F22' (U+6F22)");
    CHECK(fault.place == quoin::Place{0, 6, 18, 3});
}

TEST_CASE("an unknown family is reported at the theme's line") {
    const auto result = try_compose(example, "family: Libertin\n");
    CHECK_FALSE(result.composition);
    const quoin::Diagnostic& fault = result.diagnostics.all().front();
    CHECK(fault.place.line == 3);
    CHECK(fault.text.starts_with("theme 'test' asks for the font family 'Libertin', which is not "
                                 "known; expected one of 'Libertine', "));
    CHECK(fault.text.ends_with("; did you mean 'Libertine'?"));
}

// Common practice: a line does not end on a word that leans on the next where another end costs
// little; penalties as Knuth and Plass have them.
TEST_CASE("how gladly a line ends") {
    const auto ends = [](std::string_view text, quoin::StyleName style, bool english) {
        std::string out;
        for (const quoin::LineEnd& end : quoin::line_ends({text, {}, {}, style, english}))
            out += fmt::format("{}:{} ", end.offset, end.penalty);
        return out;
    };
    using enum quoin::StyleName;
    CHECK(ends("one of many", bullet, true) == "4:0 7:40 ");
    CHECK(ends("one of many", bullet, false) == "4:0 7:0 ");
    CHECK(ends("The sea", bullet, true) == "4:40 ");
    CHECK(ends("Ellery State ferries", bullet, true) == "7:60 13:0 ");
    CHECK(ends("“Ángel Ó Dálaigh”, mate", bullet, true) == "10:60 13:60 25:0 ");
    CHECK(ends("9 sites, 212 quadrats", bullet, true) == "2:40 9:0 13:40 ");
    CHECK(ends("GPA 3.62 · Fellow of Note; Prize (2026)", line, true) ==
          "4:160 17:100 24:140 28:0 34:100 ");
    CHECK(ends("a, Dublin Core, b", line, true) == "3:40 10:60 16:0 ");
    CHECK(ends("well-kept boats", bullet, true) == "5:120 10:0 ");
    CHECK(ends("Port Ellery", contact, true) == "5:1000 ");
    CHECK(ends("Port Ellery", title, true) == "5:60 ");
    CHECK(ends("C++ and C/C++", bullet, true) == "4:0 8:40 ");
    CHECK(ends("dots · dashes – x", bullet, true) == "8:0 19:0 ");
}

TEST_CASE("break points lie between glyphs, in order, never within a ligature or a date") {
    const std::string markup = entry(
        "experience", "role: Office *affi*nity officer\nemployer: Ellery /Ferries/\n"
                      "dates: Jun 2025 - Aug 2026\n- Filed off\u00ADi\u00ADcial and fi\u00ADnal "
                      "well-kept re\u00ADports");
    const Composition composition = compose(markup);
    for (const Paragraph& paragraph : composition.paragraphs) {
        std::pair<std::uint32_t, std::uint32_t> before{paragraph.label_runs, 0};
        for (const quoin::BreakPoint& point : paragraph.breaks) {
            CHECK(before < std::pair{point.run, point.glyph});
            before = {point.run, point.glyph};
            REQUIRE(point.run < paragraph.runs.size());
            CHECK(point.glyph <= paragraph.runs[point.run].glyphs.size());
        }
    }
    const Paragraph& title = composition.paragraphs.at(2);
    CHECK(title.breaks.size() == 5); // after Office, affinity, officer, Ellery, Ferries
    CHECK(text_of(title).ends_with(" · Jun\u00A02025\u00A0–\u00A0Aug\u00A02026"));

    const Paragraph& bullet = composition.paragraphs.at(3);
    CHECK(text_of(bullet) == "Filed official and final well-kept reports");
    REQUIRE(bullet.hyphen_glyphs.size() == bullet.runs.size());
    std::vector<std::string> before_hyphens;
    for (const quoin::BreakPoint& point : bullet.breaks) {
        const Run& run = bullet.runs[point.run];
        if (point.hyphen)
            before_hyphens.push_back(run.text.substr(0, run.glyphs[point.glyph].text_begin));
    }
    // "ffi" and "fi" are ligatures in Libertine
    CHECK(before_hyphens == std::vector{"Filed offi"s, "Filed official and fi"s,
                                        "Filed official and final well-kept re"s});
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

TEST_CASE("a running head where there may be more than one page") {
    CHECK(compose(example).running_head.runs.empty());
    const Composition composition = compose("pages: 2\n" + example);
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

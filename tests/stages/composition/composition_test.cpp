// What a résumé and a theme become: structure, text, runs and the places where lines may end.
#include "compiler/stages/composition/composition.hpp"

#include "compiler/stages/composition/line_ends.hpp"
#include "compiler/stages/theme/icons.hpp"
#include "compiler/trade/vocabulary.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
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
using quoin::composed::try_compose;
using quoin::composition::Composition;
using quoin::composition::Paragraph;
using quoin::composition::Run;
using quoin::composition::StructureType;
using namespace std::string_literals;

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
        const quoin::composition::Element& element = composition.elements[index];
        depths.push_back(index == 0 ? 0 : depths[element.parent] + 1);
        out += std::string(2 * depths.back(), ' ') + std::string(name_of(element.type));
        if (texts.contains(index)) out += " \"" + texts[index] + "\"";
        if (!element.uri.empty()) out += " <" + element.uri + "> (" + element.contents + ")";
        out += '\n';
    }
    return out;
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

TEST_CASE("composition: a theme may say how wide the space between words is") {
    const auto widths = [](const std::string& theme) {
        std::set<double> found; // em of the line's size
        for (const Paragraph& paragraph :
             compose(entry("prose", "text: Two words and *two more*, by\\ a hair"), theme)
                 .paragraphs)
            for (const Run& run : paragraph.runs)
                for (const quoin::fonts::Glyph& glyph : run.glyphs)
                    if (std::isspace(static_cast<unsigned char>(run.text[glyph.text_begin])) != 0 ||
                        run.text.compare(glyph.text_begin, 2, "\u00A0") == 0)
                        found.insert(std::round(1000.0 * glyph.advance / run.face->units_per_em()) /
                                     1000);
        return found;
    };
    CHECK(widths("word-space: 0.23") == std::set{0.23});
    CHECK(!widths("").contains(0.23));
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
        const quoin::composition::Element& element = composition.elements[index];
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
        {entry("publications", "publication: On Eelgrass\nvenue: /Tide Notes/\ndates: Apr 2026"),
         {"On Eelgrass, Tide Notes · Apr\u00A02026"}},
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
        {"{award}[, {dates}][, {by}]", "2026, a.example"},
        {"[{award}][ · {dates}][ · {by}]", "2026 · a.example"},
        {"– [{award}][, {dates}][, {by}]", "– 2026, a.example"},
        {"*In:* – [{award}][, {dates}][, {by}]", "In: – 2026, a.example"},
        {"{award}[ ([{dates}][, {by}])]", "(2026, a.example)"},
        {"{dates}[ ([{award}][, at {by}]).]", "2026 (at a.example)."},
        {"{dates}, {by} [{award}]", "2026, a.example"},
    };
    for (const auto& row : cases) {
        CAPTURE(row.first);
        const std::string theme = "form: honors\ntitle: "s + row.first + "\n";
        CHECK(text_of(
                  compose(entry("honors", "dates: 2026\nby: a.example"), theme).paragraphs.at(2)) ==
              row.second);
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
    const auto value_for = [&](const quoin::trade::Word& field, const std::string& kind) {
        std::string word = kind + "x" + std::string(field.label);
        std::string value = word;
        if (field.value == quoin::trade::ValueKind::dates) value = word = std::to_string(year++);
        if (field.value == quoin::trade::ValueKind::email) value = word += "@ellerystate.example";
        if (field.value == quoin::trade::ValueKind::link) value = word += ".example";
        if (field.value == quoin::trade::ValueKind::phone) value = word = "360-555-0101";
        words[word] = 0;
        return value;
    };
    std::string markup;
    const auto add_fields = [&](const auto& takes, const std::string& kind) {
        for (const quoin::trade::Word& field : quoin::trade::vocabulary())
            if (std::holds_alternative<quoin::trade::FieldName>(field.means) && takes(field))
                markup += fmt::format("{}: {}\n", field.label, value_for(field, kind));
    };
    add_fields([](const quoin::trade::Word& field) { return field.heading; }, "heading");
    for (const std::string_view name : quoin::trade::names_of<quoin::trade::Holds>()) {
        const std::string kind(name);
        const quoin::trade::Holds holds = *quoin::trade::named<quoin::trade::Holds>(name);
        markup += fmt::format("\nsection: {0}xsection\nholds: {0}\n\n", kind);
        words[kind + "xsection"] = 0;
        add_fields([&](const quoin::trade::Word& field) { return field.kinds.has(holds); }, kind);
        if (quoin::trade::has_groups(holds)) {
            markup += "One: " + kind + "xone\nTwo: " + kind + "xtwo\n";
            words[kind + "xone"] = words[kind + "xtwo"] = 0;
        }
        if (quoin::trade::has_bullets(holds)) {
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
TEST_CASE("a word that the family cannot set comes from the next, and from none is an error") {
    const Composition composition = compose(entry("prose", "text: of a\u2C6Db too"));
    const Paragraph& paragraph = composition.paragraphs.at(2);
    REQUIRE(paragraph.runs.size() == 3);
    CHECK(paragraph.runs[1].text == "a\u2C6Db");
    CHECK(paragraph.runs[1].face->file().filename() == "GentiumPlus-Regular.ttf");

    const auto result = try_compose(entry("prose", "text: the letter \u6F22 and \u6F22, *\u5B57*"));
    CHECK_FALSE(result.composition);
    REQUIRE(result.diagnostics.all().size() == 2);
    const quoin::Diagnostic& fault = result.diagnostics.all().front();
    CHECK(fault.text == "no font of theme 'test' has Han letters, as in '\u6F22': name a font file "
                        "that has them in "
                        "the theme's 'family-file', or write the words in Latin letters");
    CHECK(fault.place == quoin::Place{0, 6, 18, 3});
}

TEST_CASE("a run of letters that no face has is one error, which names their script") {
    const struct {
        std::string text;
        const char* message;
        quoin::Place place;
    } cases[] = {
        {"a \u5F90\u5C0F\u660E \u6F22\u5B57 b",
         "no font of theme 'test' has Han letters, as in '\u5F90\u5C0F\u660E \u6F22\u5B57': name a "
         "font file that has them in the theme's 'family-file', or write the words in Latin "
         "letters",
         {0, 6, 9, 16}},
        {"\u5C71\u306E",
         "no font of theme 'test' has Han and Hiragana letters, as in '\u5C71\u306E': name a font "
         "file "
         "that has them in the theme's 'family-file', or write the words in Latin letters",
         {0, 6, 7, 6}},
        {"x \U0001F980\U0001F980",
         "no font of theme 'test' has the sign '\U0001F980\U0001F980' (U+1F980): leave it out, or "
         "say "
         "it in words",
         {0, 6, 9, 8}},
    };
    for (const auto& each : cases) {
        CAPTURE(each.text);
        const auto result = try_compose(entry("prose", "text: " + each.text));
        CHECK_FALSE(result.composition);
        REQUIRE(result.diagnostics.all().size() == 1);
        CHECK(result.diagnostics.all().front().text == each.message);
        CHECK(result.diagnostics.all().front().place == each.place);
    }
}

TEST_CASE("a font file that a theme names is tried last, and must be there") {
    CHECK(try_compose(entry("prose", "text: \u05D0"),
                      "family-file: opentype/linux-libertine/LinLibertine_R.otf\n")
              .composition);
    const auto result = try_compose(example, "family-file: truetype/no.ttf\n");
    CHECK_FALSE(result.composition);
    CHECK(result.diagnostics.all().front().text ==
          "there is no font file '/usr/share/fonts/truetype/no.ttf': expected a path, or one below "
          "/usr/share/fonts such as 'truetype/noto/NotoSansArabic-Regular.ttf'");
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

TEST_CASE("right-to-left words stand, and those that would change places are an error") {
    const std::string theme = "fallback: Libertine\n"; // it has Hebrew letters
    for (const std::string text : {"Hebrew (עב), Dutch א or ב", "אב גד", "אב גד, בית", "אב-גד",
                                   "אב and גד", "אב 12 and גד"}) {
        CAPTURE(text);
        CHECK(try_compose(entry("prose", "text: " + text), theme).composition);
    }
    for (const std::string text : {"אב 12 גד", "אב (גד)", "אב *גד*"}) {
        CAPTURE(text);
        const auto result = try_compose(entry("prose", "text: " + text), theme);
        CHECK_FALSE(result.composition);
        REQUIRE(result.diagnostics.all().size() == 1);
        CHECK(result.diagnostics.all().front().place.column == 7 + text.find("ג"));
        CHECK(result.diagnostics.all().front().text ==
              "from 'ג' (U+05D2) on, words that are read from right to left would stand in the "
              "wrong order: write them in Latin letters");
    }
}

TEST_CASE("of two columns the main one is read first, each with its share of the measure") {
    const std::string theme = "columns: two\nside-width: 0.25\ncolumn-gap: 2\n"
                              "side-sections: skills\n";
    const std::string markup = "name: Ana Reyes\nemail: a@ellerystate.example\n\n"
                               "section: Skills\n\nField: nets\n\n"
                               "section: Tides\nholds: prose\ncolumn: side\n\ntext: All.\n\n"
                               "section: Work\nholds: prose\n\ntext: Much.\n";
    const Composition composition = compose(markup, theme);
    std::vector<std::string> texts;
    for (const Paragraph& paragraph : composition.paragraphs)
        texts.push_back(text_of(paragraph));
    CHECK(texts == std::vector{"Ana Reyes"s, "a@ellerystate.example"s, "Work"s, "Much."s, "Skills"s,
                               "Field: nets"s, "Tides"s, "All."s});
    const auto& name = composition.paragraphs[0];
    const auto& main = composition.paragraphs[2];
    const auto& side = composition.paragraphs[4];
    CHECK(name.region == quoin::composition::Region::whole);
    CHECK(name.span.width(42) == 42);
    CHECK(main.region == quoin::composition::Region::main);
    CHECK(main.span.width(42) == doctest::Approx(30)); // three quarters of 42 - 2
    CHECK(main.span.begin(42) == 0);
    CHECK(side.region == quoin::composition::Region::side);
    CHECK(side.span.width(42) == doctest::Approx(10));
    CHECK(side.span.begin(42) == doctest::Approx(32));
    const auto left = compose(markup, theme + "side: left\n");
    CHECK(left.paragraphs[4].span.begin(42) == 0);
    CHECK(left.paragraphs[2].span.begin(42) == doctest::Approx(12));
    CHECK(text_of(left.paragraphs[2]) == "Work");

    // with nothing at the side, or in a theme of one column, all goes across the page
    for (const Paragraph& paragraph : compose(markup).paragraphs)
        CHECK(paragraph.region == quoin::composition::Region::whole);
    for (const Paragraph& paragraph : compose(entry("prose", "text: Much."), theme).paragraphs)
        CHECK(paragraph.region == quoin::composition::Region::whole);
}

TEST_CASE("on lines one below the other, icons of every width leave their texts one left edge") {
    const auto composition = compose("name: Ana Reyes\nphone: 555-0100\nemail: a@b.example\n"
                                     "\nsection: Skills\nTools: saw\n",
                                     "icons: drawn\n\nform: heading\nname: {name}\n"
                                     "headline: [{pronouns}][{headline}][{address}][{link}]\n"
                                     "contact-each: {phone-icon}{phone}\n"
                                     "contact-each: {email-icon}{email}\n");
    REQUIRE(composition.icons.size() == 2);
    std::vector<std::int32_t> advances;
    for (const Paragraph& paragraph : composition.paragraphs)
        if (!paragraph.runs.empty() && paragraph.runs.front().icon)
            advances.push_back(paragraph.runs.front().glyphs.front().advance);
    REQUIRE(advances.size() == 2);
    CHECK(advances[0] == advances[1]);
    CHECK(quoin::theme::width_of(composition.icons[0].path).left == 20); // as it is drawn
}

TEST_CASE("an icon is drawn over a space as wide as it and its gap, joined to its text") {
    const std::string theme = "icons: drawn\nicon-gap: 0.5\naccent: #123456\n\n"
                              "style: contact\nicon-colour: accent\n\n"
                              "form: heading\nname: {name}\nheadline: [{pronouns}][{headline}]\n"
                              "contact: [{address}][ {email-icon}{email}][ {phone}][ {link}]\n";
    const Composition composition = compose("name: Ana Reyes\naddress: Port Ellery\n"
                                            "email: a@ellerystate.example\n",
                                            theme);
    const Paragraph& contact = composition.paragraphs.at(1);
    CHECK(text_of(contact) == "Port Ellery \u00A0a@ellerystate.example");
    REQUIRE(composition.icons.size() == 1);
    CHECK(composition.icons[0].colour == quoin::theme::Colour{0x12, 0x34, 0x56});
    CHECK_FALSE(composition.icons[0].path.empty());
    REQUIRE(contact.runs.size() == 3);
    const quoin::composition::Run& icon = contact.runs[1];
    CHECK(icon.icon == 0u);
    CHECK(icon.text == "\u00A0");
    const double units = icon.face->units_per_em();
    const double drawn = quoin::composition::icon_side * icon.face->cap_height() / units * 0.84;
    CHECK(icon.glyphs[0].advance / units == doctest::Approx(drawn + 0.5).epsilon(0.001));
    CHECK(composition.icons[0].path.front().at[0] == 0); // in line with what stands under it
    for (const quoin::composition::BreakPoint& point : contact.breaks)
        CHECK_FALSE((point.run == 1 && point.glyph == 1)); // an icon never ends a line
}

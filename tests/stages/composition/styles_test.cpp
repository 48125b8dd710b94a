// What a theme says of one style or one field alone: its family, its letters, its indent; a long
// name on one line; contact lines one below another, under one rule.
#include "compiler/stages/composition/theme_faces.hpp"
#include "tests/composed.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace {

using namespace quoin;
using composed::compose;
using theme::StyleName;

std::vector<const composition::Paragraph*> in_style(const composition::Composition& composition,
                                                    StyleName style) {
    std::vector<const composition::Paragraph*> found;
    for (const composition::Paragraph& paragraph : composition.paragraphs)
        if (paragraph.style == style) found.push_back(&paragraph);
    REQUIRE_FALSE(found.empty());
    return found;
}

std::string font_of(const composition::Composition& composition, StyleName style) {
    return in_style(composition, style).front()->runs.back().face->file().stem().string();
}

double width_of(const composition::Paragraph& paragraph) { // em of the text
    double width = 0;
    for (const composition::Run& run : paragraph.runs)
        for (const fonts::Glyph& glyph : run.glyphs)
            width += run.size * glyph.advance / run.face->units_per_em();
    return width;
}

// The glyphs of a paragraph's last `count` characters, which have one each.
std::vector<std::uint32_t> last_glyphs(const composition::Paragraph& paragraph, std::size_t count) {
    std::vector<std::uint32_t> ids;
    for (const composition::Run& run : paragraph.runs)
        for (const fonts::Glyph& glyph : run.glyphs)
            ids.push_back(glyph.id);
    return {ids.end() - static_cast<std::ptrdiff_t>(count), ids.end()};
}

const std::string heading = "form: heading\nname: {name}\nheadline: [{pronouns}][ · {headline}]\n"
                            "contact: {address}\ncontact: {phone}\ncontact: {email}\n"
                            "contact-each: {link}\n";

}

TEST_CASE("a style has a family of its own, and the others keep the theme's") {
    const auto plain = compose(composed::example);
    const auto own = compose(composed::example, "style: section\nfamily: Lato");
    CHECK(font_of(own, StyleName::section) == "Lato-Bold");
    CHECK(font_of(own, StyleName::bullet) == font_of(plain, StyleName::bullet));
    CHECK(font_of(plain, StyleName::section) == "LinLibertine_RB");
}

TEST_CASE("what the fonts of a theme lack is an error at its place") {
    const std::pair<const char*, const char*> cases[] = {
        {"style: section\nfamily: Latto", "4:9: theme 'test' asks for the font family 'Latto', "},
        {"style: section\nfamily: Lato\ncaps: small",
         "5:7: style 'section' asks for small capitals, and the font 'Lato-Bold' has none: "},
        {"family: Charis\n\nstyle: line\nfigures: oldstyle",
         "6:10: style 'line' asks for old-style figures, and the font 'CharisSIL-Regular' has "},
        {"family: Caladea\n\nfield: dates\nfigures: oldstyle",
         "6:10: field 'dates' asks for old-style figures, and the font 'Caladea-Regular' has "},
        {"family: Vollkorn\n\nstyle: headline\nslant: italic\ncaps: small",
         "7:7: style 'headline' asks for small capitals, and the font 'Vollkorn-Italic' has "},
        {"family: Vollkorn\n\nfield: employer\ncaps: small", // which forms set in italics
         "6:7: field 'employer' asks for small capitals, and the font 'Vollkorn-Italic' has "},
    };
    for (const auto& row : cases) {
        CAPTURE(row.first);
        const auto result = composed::try_compose(composed::example, row.first);
        CHECK_FALSE(result.composition);
        REQUIRE(result.diagnostics.all().size() == 1);
        const Diagnostic& fault = result.diagnostics.all().front();
        const std::string said = std::to_string(fault.place.line) + ':' +
                                 std::to_string(fault.place.column) + ": " + fault.text;
        CHECK(said.substr(0, std::string(row.second).size()) == row.second);
    }
}

TEST_CASE("a family of a theme's own that lacks what the theme inherits is told at the family") {
    Sources sources;
    Diagnostics diagnostics;
    const auto file =
        sources.add("own.theme", "based-on: whimbrel\nfamily: Caladea\n", diagnostics);
    REQUIRE(file);
    const auto own = theme::read_theme(sources, *file, QUOIN_DATA_FOLDER "/themes", diagnostics);
    REQUIRE(own);
    const composition::ThemeFaces faces(*own, composed::fonts(), diagnostics);
    REQUIRE(diagnostics.has_errors()); // old-style figures
    for (const Diagnostic& fault : diagnostics.all()) {
        CHECK(fault.place.file == *file);
        CHECK(fault.place.line == 2);
    }
}

TEST_CASE("a field has letters of its own, in whatever style it is set") {
    const std::string markup = composed::entry("honors", "award: Medal\nby: County\ndates: 2026");
    const auto year = [&](const std::string& theme) {
        return last_glyphs(compose(markup, theme).paragraphs.back(), 4);
    };
    CHECK(year("field: dates\nfigures: oldstyle") == year("style: title\nfigures: oldstyle"));
    CHECK(year("field: dates\nfigures: oldstyle") != year(""));
    CHECK(year("field: award\nfigures: oldstyle") == year(""));
    const auto capitals = compose(markup, "field: by\ncaps: all");
    CHECK(composed::text_of(capitals.paragraphs.back()) == "Medal, COUNTY · 2026");
}

TEST_CASE("ligatures are a style's to leave out") {
    const std::string markup = composed::entry("honors", "award: Office\nby: fine\ndates: 2026");
    const auto glyphs = [&](const std::string& theme) {
        std::size_t count = 0;
        const auto composition = compose(markup, theme);
        for (const composition::Run& run : composition.paragraphs.back().runs)
            count += run.glyphs.size();
        return count;
    };
    CHECK(glyphs("style: title\nligatures: no") == std::string("Office, fine * 2026").size());
    CHECK(glyphs("") < glyphs("field: award\nligatures: no"));
    CHECK(glyphs("field: award\nligatures: no") < glyphs("style: title\nligatures: no"));
}

TEST_CASE("a style's indent sets all its lines in, and those of no other") {
    const auto plain = compose(composed::example);
    const auto set_in = compose(composed::example, "style: line\nindent: 1.5");
    for (const StyleName style : {StyleName::title, StyleName::line, StyleName::bullet})
        CHECK(in_style(set_in, style).front()->indent - in_style(plain, style).front()->indent ==
              doctest::Approx(style == StyleName::line ? 1.5 : 0));
}

TEST_CASE("a long name shrinks to one line, within its range") {
    const std::string rest = "\n\nsection: Honors\n\naward: Medal\n";
    // the widest margins and the largest text, on letter paper
    const double narrowest = (612 - 2 * 72) / 12.0;
    const struct {
        std::string name;
        double least, size; // 0: wherever one line ends
    } cases[] = {
        {"Ana Reyes", 1.4, 2.4},
        {"Ondine Wilhelmina Halvorsen-Achterberg", 1.4, 0},
        {"Ondine Wilhelmina Halvorsen-Achterberg", 2.3, 2.4}, // it would not do
        {"Ondine Wilhelmina Halvorsen-Achterberg Featherstonehaugh of Port Ellery", 1.4, 2.4},
    };
    for (const auto& one : cases) {
        CAPTURE(one.name);
        const auto composition =
            compose("name: " + one.name + rest,
                    "style: name\nleast-size: " + std::to_string(one.least).substr(0, 3));
        const composition::Paragraph& name = composition.paragraphs.front();
        if (one.size > 0) {
            CHECK(name.size == doctest::Approx(one.size));
            continue;
        }
        CHECK(name.size < 2.4);
        CHECK(name.size > one.least);
        CHECK(width_of(name) == doctest::Approx(narrowest));
    }
}

TEST_CASE("contact details one a line, every link too, under one rule") {
    const std::string markup = "name: Ana Reyes\naddress: Port Ellery, WA\nphone: (360) 555-0142\n"
                               "email: ana.reyes@ellerystate.example\nlink: reyes.example\n"
                               "link: maps.reyes.example\n\nsection: Honors\n\naward: Medal\n";
    const auto composition = compose(markup, "style: contact\nrule: below\n\n" + heading);
    const auto lines = in_style(composition, StyleName::contact);
    std::vector<std::string> texts;
    for (const composition::Paragraph* line : lines) {
        texts.push_back(composed::text_of(*line));
        CHECK((line->rule == theme::RuleAt::below) == (line == lines.back()));
    }
    CHECK(texts == std::vector<std::string>{"Port Ellery, WA", "(360) 555-0142",
                                            "ana.reyes@ellerystate.example", "reyes.example",
                                            "maps.reyes.example"});
    const auto above = compose(markup, "style: contact\nrule: above\n\n" + heading);
    const auto under = in_style(above, StyleName::contact);
    for (const composition::Paragraph* line : under)
        CHECK((line->rule == theme::RuleAt::above) == (line == under.front()));
}

// Theme files: what is read, what is refused and where, and that no field can be lost.
#include "compiler/stages/theme/theme.hpp"

#include "compiler/stages/theme/forms.hpp"
#include "compiler/stages/theme/pattern.hpp"
#include "compiler/stages/theme/values.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/stat.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace {

namespace files = std::filesystem;
using namespace std::string_literals;

const files::path themes = files::path(QUOIN_DATA_FOLDER) / "themes";

struct Result {
    std::optional<quoin::theme::Theme> theme;
    std::vector<std::string> faults; // "line:column: text"
};

Result read(const std::string& text) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto file = sources.add("test.theme", text, diagnostics);
    REQUIRE(file);
    Result result{quoin::theme::read_theme(sources, *file, themes, diagnostics), {}};
    diagnostics.sort();
    for (const quoin::Diagnostic& fault : diagnostics.all())
        result.faults.push_back(
            fmt::format("{}:{}: {}", fault.place.line, fault.place.column, fault.text));
    return result;
}

// Lines on top of the house theme, from line 3 on.
Result change(const std::string& lines) {
    return read("based-on: turnstone\n\n" + lines + "\n");
}

std::string first_fault(const std::string& lines) {
    const Result result = change(lines);
    CHECK(result.theme.has_value() == result.faults.empty());
    return result.faults.empty() ? "none" : result.faults.front();
}

class Folder { // of theme files, gone with the test
public:
    Folder() {
        std::string name = (files::temp_directory_path() / "quoin-themes-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        path_ = name;
    }
    ~Folder() { files::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    void write(const std::string& name, const std::string& text) const {
        std::ofstream(path_ / name) << text;
    }
    const files::path& path() const { return path_; }

private:
    files::path path_;
};

std::vector<std::string> faults_of(const files::path& folder, const std::string& name) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto theme =
        quoin::theme::read_theme(sources, folder, name, folder, {7, 3, 2, 1}, diagnostics);
    CHECK_FALSE(theme);
    std::vector<std::string> faults;
    for (const quoin::Diagnostic& fault : diagnostics.all())
        faults.push_back(fault.text);
    return faults;
}

// A pattern printed again: marks as letters before each piece, groups in brackets.
std::string dump(const std::vector<quoin::theme::PatternPiece>& pieces) {
    std::string text;
    for (const quoin::theme::PatternPiece& piece : pieces) {
        const std::string marks =
            (piece.marks.strong ? "b"s : ""s) + (piece.marks.emphasis ? "i" : "");
        switch (piece.kind) {
        case quoin::theme::PatternPiece::Kind::literal:
            text += marks + "'" + piece.literal + "'";
            break;
        case quoin::theme::PatternPiece::Kind::field:
            text += marks + "{" + std::string(quoin::trade::label_of(piece.field)) + "}";
            break;
        case quoin::theme::PatternPiece::Kind::label:
            text += marks + "{label}";
            break;
        case quoin::theme::PatternPiece::Kind::page:
            text += marks + "{page}";
            break;
        case quoin::theme::PatternPiece::Kind::word:
            text += marks + "<" + piece.literal + "-word>";
            break;
        case quoin::theme::PatternPiece::Kind::icon:
            text += "<" + piece.literal + ">";
            break;
        case quoin::theme::PatternPiece::Kind::fill:
            text += "<->";
            break;
        case quoin::theme::PatternPiece::Kind::group:
            text += "[" + dump(piece.group) + "]";
            break;
        }
    }
    return text;
}

}

TEST_CASE("the house theme is read without a fault") {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto theme =
        quoin::theme::read_theme(sources, themes, quoin::theme::house_theme, "", {}, diagnostics);
    REQUIRE(theme);
    CHECK(diagnostics.all().empty());
    CHECK(theme->name == "turnstone");
    CHECK_FALSE(theme->use.empty());
    CHECK_FALSE(theme->family.empty());
    CHECK_FALSE(theme->fallback.empty());
    CHECK(theme->size.least >= 10);
    CHECK(theme->size.most <= 12);
    CHECK(theme->side_margin.least >= 36); // half an inch
    CHECK(theme->side_margin.most <= 72);
    CHECK(theme->forms.size() == quoin::trade::names_of<quoin::trade::Holds>().size());
    CHECK(theme->files == std::vector{themes / "turnstone.theme"});
}

TEST_CASE("every theme that comes with quoin is read without a fault") {
    const auto names = quoin::theme::theme_names(themes);
    CHECK(names == std::vector{"dunlin"s, "godwit"s, "oystercatcher"s, "sanderling"s, "turnstone"s,
                               "whimbrel"s});
    for (const std::string& name : names) {
        CAPTURE(name);
        quoin::Sources sources;
        quoin::Diagnostics diagnostics;
        const auto theme = quoin::theme::read_theme(sources, themes, name, "", {}, diagnostics);
        REQUIRE(theme);
        CHECK(diagnostics.all().empty());
        CHECK(theme->name == name);
        CHECK_FALSE(theme->use.empty());
    }
}

TEST_CASE("a theme changes what the one it is based on says, and keeps the rest") {
    const Result result = change("size: 10.5\nbullet: -\nstyle: name\nalign: left\n\nform: "
                                 "honors\nline: {award}\nline: {dates}\nline: {by}");
    REQUIRE(result.theme);
    const quoin::theme::Theme& theme = *result.theme;
    CHECK(theme.name == "test");
    CHECK(theme.size.least == 10.5);
    CHECK(theme.size.most == 10.5);
    CHECK(theme.bullet == "-");
    CHECK(theme.style(quoin::theme::StyleName::name).align == quoin::theme::Align::left);
    CHECK(theme.style(quoin::theme::StyleName::name).size > 1.5);
    CHECK(theme.forms.at(quoin::trade::Holds::honors).lines.size() == 3);
    CHECK_FALSE(theme.family.empty());
}

TEST_CASE("sanderling: a dash is a dash alone, no bullet of either level") {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    const auto theme = quoin::theme::read_theme(sources, themes, "sanderling", "", {}, diagnostics);
    REQUIRE(theme);
    CHECK(theme->bullet == "•");
    CHECK(theme->inner_bullet == "·");
}

TEST_CASE("an accent stands for a colour wherever one is asked for, in whatever order") {
    const Result first = change("style: section\ncolour: accent\nrule-colour: accent\n\n"
                                "style: contact\nicon-colour: accent\n\naccent: #123456");
    REQUIRE(first.theme);
    const quoin::theme::Colour accent{0x12, 0x34, 0x56};
    CHECK(first.theme->style(quoin::theme::StyleName::section).colour == accent);
    CHECK(first.theme->style(quoin::theme::StyleName::section).rule_colour == accent);
    CHECK(first.theme->style(quoin::theme::StyleName::contact).icon_colour == accent);

    const std::string page = "size: 11\nside-margin: 1\ntop-margin: 1\nbottom-margin: 1\n";
    const Result none =
        read("family: Charis\nleading: 1.2\n" + page + "\nstyle: title\ncolour: accent");
    REQUIRE_FALSE(none.theme);
    CHECK(none.faults.back() ==
          "9:9: style 'title' is set in the theme's accent, and theme 'test' has no 'accent'");
}

// The letters of SVG 1.1 path data, section 8.3.
TEST_CASE("icons") {
    const std::string form = "icons: drawn\n\nform: heading\nname: {name}\n"
                             "contact: [{wave-icon}{address}][{phone}][{email}][{link}]\n"
                             "headline: [{pronouns}][{headline}]\n";
    const Result drawn = change(form + "\nicon: wave\npath: M 0 50 C 25,0 75,100 100,50 L 50 100 Z"
                                       "\npath: M 1 2 L 3 4.5 Z");
    REQUIRE(drawn.theme);
    const quoin::theme::Path& path = drawn.theme->icons.at("wave");
    using Kind = quoin::theme::PathStep::Kind;
    REQUIRE(path.size() == 7);
    CHECK(path[0].kind == Kind::move);
    CHECK(path[1].kind == Kind::curve);
    CHECK(path[1].at == std::array<double, 6>{25, 0, 75, 100, 100, 50});
    CHECK(path[3].kind == Kind::close);
    CHECK(path[5].kind == Kind::line);
    CHECK(path[5].at[1] == 4.5);
    CHECK(drawn.theme->icons.contains("phone")); // of those all themes share

    const Result none = change("icons: none" + form.substr(form.find('\n')));
    REQUIRE(none.theme); // what is not drawn need not be there
    CHECK(dump(none.theme->heading.lines[1].pieces) == "[{address}][{phone}][{email}][{link}]");

    const std::pair<std::string, const char*> cases[] = {
        {form, "there is no icon 'wave': expected one of address, email, link, phone, or a block "
               "'icon: wave' with its path"},
        {"icon: wave\npath: L 10 10 Z",
         "expected an outline such as 'M 10 10 L 90 10 L 90 90 Z', found 'L 10 10 Z'"},
        {"icon: wave\npath: M 10 10 L 20 20",
         "expected 'Z' to end the outline, or 'L' or 'C' to go on with it, found the end of the "
         "line"},
        {"icon: wave\npath: M 10 10 L 20 x Z", "expected a number from 0 to 100, found 'x Z'"},
        {"icon: wave\npath: M 10 10 L 200 20 Z",
         "an icon is drawn in a square of 100 by 100, and this path goes beyond it"},
        {"icon: wave\npath: M 1 1 L 2 2 Z 3",
         "expected a further outline, which opens with 'M', found '3'"},
        {"icon: wave\npaths: M 1 1 L 2 2 Z",
         "there is no setting 'paths' of an icon: expected path; did you mean 'path'?"},
        {"icon: Wave 2", "an icon cannot be called 'Wave 2': expected letters a to z and hyphens"},
    };
    for (const auto& row : cases) {
        CAPTURE(row.first);
        const std::string fault = first_fault(row.first);
        CHECK(fault.substr(fault.find(' ') + 1) == row.second);
    }
}

TEST_CASE("themes.md has a row for each setting that is a number or one of two words") {
    std::ifstream in(std::string{QUOIN_SOURCE_FOLDER} + "/grammar/themes.md");
    const std::string page{std::istreambuf_iterator<char>(in), {}};
    for (const auto& row : quoin::theme::number_settings) {
        CAPTURE(row.label);
        const std::size_t at = page.find(fmt::format("\n| `{}` | ", row.label));
        REQUIRE(at != std::string::npos);
        const std::string bounds = fmt::format("{:g} to {:g}", row.bounds.least, row.bounds.most);
        CHECK(page.substr(at + 1, page.find('\n', at + 1) - at).find(bounds) != std::string::npos);
    }
    for (const auto& row : quoin::theme::either_settings) {
        CAPTURE(row.label);
        const auto stands = [&](std::string_view one, std::string_view other) {
            return page.find(fmt::format("\n| `{}` | `{}` or `{}`: ", row.label, one, other)) !=
                   std::string::npos;
        };
        CHECK((stands(row.words[0], row.words[1]) || stands(row.words[1], row.words[0])));
    }
}

TEST_CASE("settings that are accepted") {
    const std::string cases[] = {
        "size: 10",
        "size: 12 (10..12)",
        "size: 11 ( 10.5 .. 11.5 )",
        "side-margin: 0.5",
        "side-margin: 1 (0.5..1)",
        "leading: 1.2 (1.2..1.45)",
        "entry-gap: 0",
        "family: Charis",
        "fallback: Gentium Book , Charis",
        "hyphenate: yes",
        "hang-punctuation: no",
        "accent: #8a3b12",
        "body-indent: 2",
        "columns: two\nside: left\nside-width: 0.33\ncolumn-gap: 2",
        "side-sections: skills, languages",
        "side-sections: none",
        "numbered: publications, honors",
        "numbered: none",
        "headings: margin\nbody-indent: 7\ncolumn-gap: 1.5\n\nstyle: section\nsize: 1.1",
        "skill-columns: three",
        "skill-columns: two\nbody-indent: 9",
        "style: section\nrule-length: full",
        "style: section\nrule-length: 2.2",
        "style: line\nturn-over: 1.4",
        "style: contact\nicon-colour: #595959",
        "style: name\nleast-size: 1.7\nfamily: Lato",
        "style: line\nindent: 1\nligatures: no",
        "field: dates\nfigures: oldstyle\nligatures: no\n\nfield: gpa\ncaps: all",
        "style: name\ntracking: 0.0833",
        "style: name\ncolour: #767676",
        "style: name\nrule-colour: #FFFFFF",
        "size: 12\n\nstyle: line\nsize: 0.84",
        "# a remark\nuse: two\n  lines",
    };
    for (const std::string& lines : cases) {
        CAPTURE(lines);
        CHECK(first_fault(lines) == "none");
    }
}

TEST_CASE("settings that are refused, with the place and the mend") {
    const std::pair<const char*, const char*> cases[] = {
        {"size: 9.5", "3:7: 'size' of 9.5 pt is outside 10 to 12"},
        {"size: 12.5", "3:7: 'size' of 12.5 pt is outside 10 to 12"},
        {"size: 11 (9..12)", "3:7: 'size' of 9 pt is outside 10 to 12"},
        {"size: 11 (11.5..12)",
         "3:7: 'size' prefers 11, which is outside its own bounds 11.5 to 12"},
        {"size: large", "3:7: expected a number such as 10.8, found 'large'"},
        {"size: 11 pt", "3:10: expected nothing after the value, found 'pt'"},
        {"size: 11 (10-12)",
         "3:13: expected '..' between the bounds, as in '10.8 (10..12)', found '-12)'"},
        {"size: 11 (", "3:11: expected the least value, as in '10.8 (10..12)', found the end of "
                       "the line"},
        {"size: 11 (10..",
         "3:15: expected the greatest value, as in '10.8 (10..12)', found the end of the line"},
        {"size: 11 (10..12", "3:17: expected ')' after the bounds, found the end of the line"},
        {"side-margin: 0.4", "3:14: 'side-margin' of 0.4 inch is outside 0.5 to 1"},
        {"bottom-margin: 1.1", "3:16: 'bottom-margin' of 1.1 inch is outside 0.5 to 1"},
        {"leading: 2", "3:10: 'leading' of 2 times a line's size is outside 1.1 to 1.5"},
        {"size: 11\nsize: 12", "4:1: 'size' is given twice"},
        {"hyphenate: maybe", "3:12: 'hyphenate' cannot be 'maybe': expected one of no, yes"},
        {"style: titel", "3:8: 'style' cannot be 'titel': expected one of text, name, headline, "
                         "contact, section, title, line, bullet, running-head; did you mean "
                         "'title'?"},
        {"style: name\ncolor: #000000",
         "4:1: there is no setting 'color' of a style: expected one of size, least-size, indent, "
         "tracking, rule-thickness, rule-gap, turn-over, most-measure, weight, slant, caps, "
         "figures, ligatures, align, rule, family, colour, "
         "rule-colour, icon-colour, rule-length; did you mean 'colour'?"},
        {"style: name\nweight: heavy",
         "4:9: 'weight' cannot be 'heavy': expected one of regular, bold"},
        {"style: name\nalign: center", "4:8: 'align' cannot be 'center': expected one of left, "
                                       "centre, right, justified; did you mean 'centre'?"},
        {"style: name\ntracking: 0.1", "4:11: 'tracking' of 0.1 em is outside 0 to 0.0833"},
        {"style: name\ncolour: black", "4:9: expected a colour such as #1a2b3c, found 'black'"},
        {"style: name\ncolour: #12345",
         "4:10: expected six hexadecimal digits, as in #1a2b3c, found '12345'"},
        {"style: name\ncolour: #777777",
         "4:9: '#777777' has a contrast of 4.48:1 on white, and text needs 4.5:1 to be read by "
         "all: choose a darker colour"},
        {"accent: #949494",
         "3:9: '#949494' has a contrast of 3.03:1 on white, and text needs 4.5:1 to be read by "
         "all: choose a darker colour"},
        {"style: name\nrule-length: 0", "4:14: 'rule-length' of 0 em is outside 0.5 to 60"},
        {"columns: three", "3:10: 'columns' cannot be 'three': expected one of one, two"},
        {"side-width: 0.6", "3:13: 'side-width' of 0.6 of the columns' width is outside 0.2 to "
                            "0.5"},
        {"side-sections: skill",
         "3:16: no section holds 'skill': expected some of education, experience, projects, "
         "activities, skills, honors, credentials, languages, publications, prose, other, or "
         "none; did you mean 'skills'?"},
        {"headings: margin\nbody-indent: 5\n\nstyle: section\nsize: 1",
         "3:11: a body-indent of 5 em is too narrow for headings in the margin: expected 6 em at "
         "least"},
        {"headings: margin\nbody-indent: 8\ncolumns: two\n\nstyle: section\nsize: 1",
         "3:11: a page of two columns has no margin for headings: expected 'headings: above' or "
         "'columns: one'"},
        {"headings: margin\nbody-indent: 8\n\nstyle: section\nsize: 1.2",
         "7:7: style 'section' is 1.2 times the text, and the lines of a heading in the margin "
         "stand level with the text's: expected a size of at most 1.1"},
        {"headings: margin\nbody-indent: 8\n\nstyle: section\nsize: 1\nrule: below",
         "8:7: a heading in the margin has no rule below: expected 'rule: above' or 'rule: none'"},
        {"headings: margin\nbody-indent: 8\n\nstyle: section\nsize: 1\nalign: centre",
         "8:8: a heading in the margin cannot be set 'centre': expected 'align: left' or 'align: "
         "right'"},
        {"skill-columns: two\ncolumns: two",
         "3:16: a page of two columns has no room for columns of skills: expected "
         "'skill-columns: one' or 'columns: one'"},
        {"skill-columns: three\nbody-indent: 8",
         "3:16: a column of skills may be as narrow as 8.54 em, and needs 10: expected fewer "
         "'skill-columns', or less 'body-indent' or 'column-gap'"},
        {"skill-columns: four",
         "3:16: 'skill-columns' cannot be 'four': expected one of one, two, three"},
        {"style: line\nsize: 0.9",
         "4:7: style 'line' would be set at 9 pt, and the least is 10 pt: make its size at least "
         "1"},
        {"style: name\n\nstyle: name", "5:1: 'style: name' is given twice"},
        {"form: hobbies", "3:7: 'form' cannot be 'hobbies': expected one of heading, education, "
                          "experience, projects, activities, skills, honors, credentials, "
                          "languages, publications, prose, other"},
        {"form: prose\nlines: {text}",
         "4:1: there is no line 'lines' in form 'prose': expected "
         "one of title, line, text, further, further-line; did you mean "
         "'line'?"},
        {"- bullet", "3:1: expected 'label: value' in a theme, found a bullet"},
        {"section: Education",
         "3:1: a theme has no sections: expected 'style: NAME', 'field: NAME', 'form: NAME' "
         "or 'icon: NAME'"},
    };
    for (const auto& row : cases) {
        const auto& [lines, fault] = row;
        CAPTURE(row.first);
        CHECK(first_fault(lines) == fault);
    }
}

TEST_CASE("an unknown setting is named with the nearest") {
    const std::string fault = first_fault("entry gap: 1\nsection-gaps: 1");
    CHECK(
        fault.starts_with("4:1: there is no setting 'section-gaps' of a theme: expected one of "));
    CHECK(fault.ends_with("; did you mean 'section-gap'?"));
}

TEST_CASE("every fault of a file is reported in one run, and none that follows from another") {
    const struct {
        const char* lines;
        std::vector<std::string> places;
    } cases[] = {
        {"size: 9\nside-margin: x\n\nstyle: name\nweight: heavy", {"3:7", "4:14", "7:9"}},
        {"size: 9\n\nstyle: line\nsize: 0.8\n\nform: honors\ntitle: {award}{by}",
         {"3:7", "6:7", "9:8"}},
        {"form: honors\ntitle: {awrd}\n\nform: prose\ntext: {text}{text}", {"4:9", "7:7"}},
        {"field: datse\ncaps: small\n\nstyle: text\ncaps: tiny", {"3:8", "7:7"}},
    };
    for (const auto& one : cases) {
        CAPTURE(one.lines);
        std::vector<std::string> places;
        for (const std::string& fault : change(one.lines).faults)
            places.push_back(fault.substr(0, fault.find(": ")));
        CHECK(places == one.places);
    }
}

TEST_CASE("a fault that is inherited is told in the file that made it") {
    const Folder folder;
    folder.write("low.theme", "based-on: " + (themes / "turnstone.theme").string() +
                                  "\n\nsize: 11\n\nstyle: line\nsize: 0.95\n");
    folder.write("upon.theme", "based-on: ./low.theme\n\nbullet: -\n");
    folder.write("smaller.theme", "based-on: ./low.theme\n\nsize: 10.2\n");
    folder.write("form.theme", "based-on: ./low.theme\n\nform: honors\ntitle: {award}\n");
    folder.write("under.theme", "based-on: ./form.theme\n");
    const auto told = [&](const std::string& name) {
        quoin::Sources sources;
        quoin::Diagnostics diagnostics;
        quoin::theme::read_theme(sources, folder.path(), name, folder.path(), {}, diagnostics);
        std::vector<std::string> where;
        for (const quoin::Diagnostic& fault : diagnostics.all())
            where.push_back(fmt::format(
                "{}:{}", sources.file(fault.place.file).path.stem().string(), fault.place.line));
        return where;
    };
    CHECK(told("upon") == std::vector<std::string>{});
    CHECK(told("smaller") == std::vector{"smaller:3"s}); // 0.95 of 11 pt was well
    CHECK(told("under") == std::vector{"form:4"s, "form:4"s});
}

TEST_CASE("a theme of its own says all that is needed") {
    const Result result = read("theme: bare\n");
    REQUIRE_FALSE(result.theme);
    CHECK(result.faults.size() == 7 + quoin::trade::names_of<quoin::trade::Holds>().size());
    CHECK(result.faults.front() == "0:0: theme 'bare' has no 'family'");
}

TEST_CASE("patterns") {
    const std::pair<const char*, const char*> cases[] = {
        {"{role}", "{role}"},
        {"*{role}*[, {place}]", "b{role}[', '{place}]"},
        {"*{role}, /{employer}/*", "b{role}b', 'bi{employer}"},
        {"/{employer}*!*/", "i{employer}bi'!'"},
        {"\\[{role}\\] and\\/or", "'['{role}'] and/or'"},
        {"[ ([{role}][, {place}])]", "[' ('[{role}][', '{place}]')']"},
        {"é {dates} – x", "'é '{dates}' – x'"},
        {"*{role}*, {place} {fill} {dates}", "b{role}', '{place}' '<->' '{dates}"},
    };
    const quoin::theme::PatternName names[] = {
        {"role", quoin::theme::PatternPiece::Kind::field, quoin::trade::FieldName::role},
        {"employer", quoin::theme::PatternPiece::Kind::field, quoin::trade::FieldName::employer},
        {"place", quoin::theme::PatternPiece::Kind::field, quoin::trade::FieldName::place},
        {"dates", quoin::theme::PatternPiece::Kind::field, quoin::trade::FieldName::dates},
    };
    for (const auto& row : cases) {
        const auto& [pattern, expected] = row;
        CAPTURE(row.first);
        quoin::syntax::Value value{{{pattern, {0, 1, 1, 0}}}};
        quoin::Diagnostics diagnostics;
        const auto pieces = quoin::theme::read_pattern(value, names, diagnostics);
        REQUIRE(pieces);
        CHECK(dump(*pieces) == expected);
    }
}

TEST_CASE("patterns that are refused") {
    const std::pair<const char*, const char*> cases[] = {
        {"line: {txt}", "4:8: there is no field 'txt' here: expected one of text; did you mean "
                        "'text'?"},
        {"line: {text", "4:12: expected '}' after the field's name, found the end of the line"},
        {"line: {Text}", "4:8: expected a field's name, as in '{role}', found 'Text}'"},
        {"line: {}", "4:8: expected a field's name, as in '{role}', found '}'"},
        {"line: [{text}", "4:14: expected ']' to end the group, found the end of the line"},
        {"line: *{text}", "4:14: expected '*' to end the strong text, found the end of the line"},
        {"line: /{text}", "4:14: expected '/' to end the emphasis, found the end of the line; a "
                          "'/' to be printed is written '\\/'"},
        {"line: *[{text}*]", "4:15: expected ']' to end the group, found '*]'"},
        {"line: {text}]", "4:13: expected the pattern to go on, found ']'; a sign to be printed is "
                          "written after '\\', and groups nest two deep at most"},
        {"line: [[[{text}]]]", "4:9: expected ']' to end the group, found '[{text}]]]'"},
        {"line: {text}\\", "4:14: expected a character after '\\', found the end of the line"},
        {"line: one\n  {txt}", "5:4: there is no field 'txt' here: expected one of text; did you "
                               "mean 'text'?"},
        {"line: [{text} {fill}]",
         "4:16: '{fill}' is misplaced: expected it once in a line, outside of groups and marks"},
        {"line: {text} *{fill}*",
         "4:16: '{fill}' is misplaced: expected it once in a line, outside of groups and marks"},
        {"line: {text} {fill} a {fill}",
         "4:24: '{fill}' is misplaced: expected it once in a line, outside of groups and marks"},
        {"line: {text} {fill} a\n\nstyle: line\nalign: centre",
         "4:7: '{fill}' sends text to the right edge, and style 'line' is set 'centre': expected "
         "'align: left'"},
        {"line: {page}", "4:8: there is no field 'page' here: expected one of text"},
    };
    for (const auto& row : cases) {
        const auto& [lines, fault] = row;
        CAPTURE(row.first);
        CHECK(first_fault("form: prose\n"s + lines) == fault);
    }
}

TEST_CASE("a form gives every field one place of its own") {
    const std::pair<const char*, const char*> cases[] = {
        {"title: {award}\nline: [{dates}][, {by}]", "none"},
        {"title: {award}[ ([{dates}][, {by}])]", "none"},
        {"title: {award}[, {dates}]",
         "4:8: form 'honors' does not print 'by': every field needs its place"},
        {"title: {award}[, {dates}]\nline: {by}[, {dates}]",
         "5:7: form 'honors' prints 'dates' twice"},
        {"title: {award}[, {dates} {by}]", "4:8: 'by' would be lost where 'dates' has no "
                                           "value: give each a group of its own"},
        {"title: {award}[, {dates}[ {by}]]",
         "4:8: 'by' would be lost where 'dates' has no value: give each a group of its own"},
    };
    for (const auto& row : cases) {
        const auto& [lines, fault] = row;
        CAPTURE(row.first);
        CHECK(first_fault("form: honors\n"s + lines) == fault);
    }
    CHECK(first_fault("form: skills\nline: {group}") ==
          "4:7: form 'skills' does not print 'label': every field needs its place");
    CHECK(first_fault("form: experience\ntitle: {role}{employer}{place}{dates}{note}\n"
                      "further: {role}{employer}{place}{dates}") ==
          "4:8: form 'experience' for further positions does not print 'note': every field needs "
          "its place");
    CHECK(first_fault("form: heading\nname: "
                      "{name}{pronouns}{headline}{address}{phone}{email}{link}\n"
                      "running-head: {page} {name}") ==
          "5:15: '{page}' is followed by something: expected it at the end");
    CHECK(first_fault("form: heading\nname: {name}{pronouns}{headline}{address}{phone}{email}\n"
                      "contact-each: [{link}]") ==
          "5:15: 'contact-each' is set once for each value of a field: expected one field in it, "
          "outside of groups");
    CHECK(first_fault("form: heading\nname: "
                      "{name}{pronouns}{headline}{address}{phone}{email}{link}\n"
                      "running-head: {name} {fill} {page}") ==
          "5:15: a running head has no '{fill}': expected its pieces side by side");
}

// Web Content Accessibility Guidelines 2.1, section 1.4.3, and "relative luminance": the ratios on
// white, computed apart.
TEST_CASE("contrast on white") {
    const std::pair<quoin::theme::Colour, double> cases[] = {
        {{0, 0, 0}, 21.00},          {{0x59, 0x59, 0x59}, 7.005}, {{0x76, 0x76, 0x76}, 4.542},
        {{0x77, 0x77, 0x77}, 4.478}, {{0x94, 0x94, 0x94}, 3.034}, {{0xFF, 0, 0}, 3.998},
        {{0, 0, 0xFF}, 8.593},       {{0xFF, 0xFF, 0xFF}, 1.0},
    };
    for (const auto& [colour, ratio] : cases)
        CHECK(std::abs(quoin::theme::contrast_on_white(colour) - ratio) < 0.001);
}

TEST_CASE("themes are found by name or path, and a circle is told whole") {
    const Folder folder;
    folder.write("one.theme", "based-on: two\n");
    folder.write("two.theme", "based-on: three\n");
    folder.write("three.theme", "based-on: one\n");
    folder.write("own.theme", "based-on: ./own.theme\n");
    folder.write("lost.theme", "based-on: nowhere.theme\n");
    CHECK(faults_of(folder.path(), "one") ==
          std::vector{"a theme cannot be based on itself: one -> two -> three -> one"s});
    CHECK(faults_of(folder.path(), "own") ==
          std::vector{"a theme cannot be based on itself: own -> own"s});
    CHECK(faults_of(folder.path(), "lost") ==
          std::vector{"there is no theme file 'nowhere.theme'"s});
    CHECK(faults_of(folder.path(), "tow") ==
          std::vector{"there is no theme 'tow': expected one of lost, one, own, three, two, or a "
                      "path to a theme file; did you mean 'two'?"s});
    CHECK(faults_of(folder.path(), "./tow") == std::vector{"there is no theme file './tow'"s});
}

TEST_CASE("a theme is a regular file by the name of one, and its bases are not without end") {
    const Folder folder;
    const auto refusal = [](std::string_view name) {
        return std::vector{
            fmt::format("'{}' is not a theme: expected a regular file whose own name "
                        "ends in '.theme'",
                        name)};
    };
    folder.write("secret", "a line that is not shown\n");
    REQUIRE(::mkfifo((folder.path() / "pipe.theme").c_str(), 0600) == 0);
    std::filesystem::create_symlink("secret", folder.path() / "planted.theme");
    std::filesystem::create_directory(folder.path() / "folder.theme");
    folder.write("lower.theme", "based-on: ./pipe.theme\n");
    for (const char* name : {"./secret", "./pipe.theme", "./planted.theme", "./folder.theme"})
        CHECK(faults_of(folder.path(), name) == refusal(name));
    CHECK(faults_of(folder.path(), "/dev/zero") == refusal("/dev/zero"));
    CHECK(faults_of(folder.path(), "lower") == refusal("./pipe.theme"));
    for (int i = 1; i <= 5000; ++i)
        folder.write(fmt::format("t{}.theme", i), fmt::format("based-on: ./t{}.theme\n", i + 1));
    CHECK(faults_of(folder.path(), "t1") ==
          std::vector{"more than 16 themes, each based on the next; base it on one of them that "
                      "stands further on"s});
}

TEST_CASE("ways: a form may have each of its own, and each prints every field") {
    const std::string begin = "based-on: turnstone\n\nform: honors\n";
    const struct {
        std::string lines, fault;
    } cases[] = {
        {"way: dates in line\ntitle: [{award}][, {by}][ · {dates}]\n"
         "way: dates below\ntitle: [{award}][, {by}]\nline: {dates}",
         ""},
        {"title: [{award}][, {by}][ · {dates}]", ""},
        {"title: [{award}][, {by}]\nway: dates in line\nline: {dates}",
         "4:8: form 'honors', 'dates below', does not print 'dates': every field needs its place"},
        {"way: dates above\ntitle: [{award}][, {by}][ · {dates}]",
         "4:6: 'way' cannot be 'dates above': expected one of dates in line, dates below"},
    };
    for (const auto& one : cases) {
        CAPTURE(one.lines);
        const Result result = read(begin + one.lines + "\n");
        CHECK((result.faults.empty() ? "" : result.faults.front()) == one.fault);
    }
}

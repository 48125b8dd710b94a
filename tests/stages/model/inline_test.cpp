// Inline text: marks, links, escapes, quotes and dashes, and the places of what was read.
#include "compiler/stages/model/text.hpp"

#include "compiler/base/source.hpp"
#include "grammar/inline.hpp"
#include "tests/fixtures/tries.hpp"

#include <doctest/doctest.h>
#include <tao/pegtl/contrib/analyze.hpp>

#include <algorithm>
#include <random>
#include <string>
#include <string_view>

namespace inline_test {

using quoin::Diagnostics;
using quoin::Place;
using quoin::model::Text;
using quoin::syntax::Value;

namespace {

constexpr std::uint32_t first_column = 8; // as after `- ` or a label

// Each line of `text` becomes a slice, on lines 3, 4, … of the file.
Value value_of(std::string_view text) {
    Value value;
    std::uint32_t line = 3;
    while (true) {
        const auto end = std::min(text.find('\n'), text.size());
        const auto length = static_cast<std::uint32_t>(end);
        value.slices.push_back(
            {std::string{text.substr(0, end)}, {0, line++, first_column, length}});
        if (end == text.size()) return value;
        text.remove_prefix(end + 1);
    }
}

// Spans with the same marks and link in one pair of braces: `{se https://x|text}`.
std::string dump(const Text& text) {
    std::string result;
    std::string open;
    for (const quoin::model::Span& span : text.spans) {
        std::string head;
        if (span.marks.strong) head += 's';
        if (span.marks.emphasis) head += 'e';
        if (span.marks.underline) head += 'u';
        if (span.link) head += (head.empty() ? "" : " ") + text.links.at(*span.link);
        if (head != open && !open.empty()) result += '}';
        if (head != open && !head.empty()) result += '{' + head + '|';
        open = head;
        result += span.text;
    }
    return open.empty() ? result : result + '}';
}

std::string read(std::string_view typed) {
    Diagnostics diagnostics;
    return dump(quoin::model::read_text(value_of(typed), diagnostics));
}

std::string faults(const Diagnostics& diagnostics) {
    std::string result;
    for (const auto& fault : diagnostics.all())
        result += (result.empty() ? "" : " | ") + std::to_string(fault.place.line) + ":" +
                  std::to_string(fault.place.column) + "+" + std::to_string(fault.place.length) +
                  (fault.severity == quoin::Severity::error ? " error: " : " warning: ") +
                  fault.text;
    return result;
}

std::string faults_of(std::string_view typed) {
    Diagnostics diagnostics;
    quoin::model::read_text(value_of(typed), diagnostics);
    return faults(diagnostics);
}

struct Case {
    std::string_view typed;
    std::string_view read;
};

}

TEST_CASE("the inline grammar has no loop without progress") {
    CHECK(tao::pegtl::analyze<quoin::grammar::inline_text::text>() == 0);
    CHECK(tao::pegtl::analyze<quoin::grammar::inline_text::known_address>() == 0);
    CHECK(tao::pegtl::analyze<quoin::grammar::inline_text::labelled_link>() == 0);
    CHECK(tao::pegtl::analyze<quoin::grammar::inline_text::bare_web>() == 0);
}

TEST_CASE("marks open and close where the markup says") {
    const Case cases[] = {
        {"*text*", "{s|text}"},
        {"/text/", "{e|text}"},
        {"_text_", "{u|text}"},
        {"cut time *18%* with", "cut time {s|18%} with"},
        {"/Title of a Work/, 2026", "{e|Title of a Work}, 2026"},
        {"(*a*) [/b/] \"_c_\" '*d*'", "({s|a}) [{e|b}] “{u|c}” ‘{s|d}’"},
        {"*a*. *b*, *c*; *d*: *e*! *f*?", "{s|a}. {s|b}, {s|c}; {s|d}: {s|e}! {s|f}?"},
        {"*a*--*b*", "{s|a}\u00A0– {s|b}"},
        {"–*a*– —/b/—", "–{s|a}– —{e|b}—"},
        {"*a b*", "{s|a b}"},
        {"*a\nb* c", "{s|a b} c"},
        {"*a /b/ c*", "{s|a }{se|b}{s| c}"},
        {"*/a/*", "{se|a}"},
        {"/*_a_*/.", "{seu|a}."},
        {"*\"a\"*", "{s|“a”}"},
        {"3.62/4.00 and/or snake_case 2*3", "3.62/4.00 and/or snake_case 2*3"},
        {"2 * 3 a / b", "2 * 3 a / b"},
        {"pre-/post-test", "pre-/post-test"},
        {"/Vibrio/-free", "{e|Vibrio}-free"},
        {"*.NET* core", "{s|.NET} core"},
        {"TCP/IP, CI/CD, km/h", "TCP/IP, CI/CD, km/h"},
        {"a* b* c", "a* b* c"},
        {"(a)/(b)", "(a)/(b)"},
        {"__init__ and //", "__init__ and //"},
        {"", ""},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
    }
    for (const auto& one : cases)
        CHECK_MESSAGE(faults_of(one.typed) == "", one.typed);
}

TEST_CASE("what a typewriter lacks is set as printers have it") {
    const Case cases[] = {
        {"held at -40 °C", "held at −40 °C"},
        {"(-5 to -2 m)", "(−5 to −2 m)"},
        {"-3-5", "−3–5"},
        {"COVID-19, 3-D, mid-1990s", "COVID-19, 3-D, mid-1990s"},
        {"Calculus I-III", "Calculus I–III"},
        {"Adult Health I-II.", "Adult Health I–II."},
        {"Type III-I, XX-XY, I-VI-X", "Type III-I, XX-XY, I-VI-X"},
        {"I-V curves and parts I-V", "I-V curves and parts I–V"},
        {"2019-2021, 2019-21", "2019–2021, 2019–21"},
        {"and so on... then", "and so on… then"},
        {"[...] as", "[…] as"},
        {"f(...args) .../x", "f(...args) .../x"},
        {"two  words   here", "two words here"},
        {"*a*  b\n  c", "{s|a} b c"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
        CHECK(faults_of(one.typed) == "");
    }
}

TEST_CASE("a mark left open is reported and stays as typed") {
    const Case cases[] = {
        {"a *b c", "3:10+1"},
        {"/a *b/ c", "3:11+1"},
        {"*a *b*", "3:8+1"},
        {"a\n/b", "4:8+1"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        const std::string text = faults_of(one.typed);
        CHECK(text.starts_with(std::string{one.read} + " warning: "));
        CHECK(text.find(" | ") == std::string::npos);
    }
    CHECK(read("a *b c") == "a *b c");
    CHECK(read("/a *b/ c") == "{e|a *b} c");
    CHECK(read("*a *b*") == "*a {s|b}");
    CHECK(
        faults_of("a *b") ==
        "3:10+1 warning: '*' opens a mark that nothing closes on this line, so it is set as typed; "
        "close it before a space or a closing sign, or write '\\' before it");
    CHECK(read("**a**") == "**a**");
    CHECK(faults_of("**a**").starts_with("3:8+2 warning: '**' is no mark"));
}

TEST_CASE("a backslash takes the meaning of the next character away") {
    const Case cases[] = {
        {"\\*a\\*", "*a*"},           {"a\\ b", "a\u00A0b"},
        {"a\\\nb", "a\u00A0b"},       {"\\\\", "\\"},
        {"\\\"a\\\"", "\"a\""},       {"\\<https://a.example>", "<https://a.example>"},
        {"\\é \\{lab\\}", "é {lab}"}, {"12\\-15 a\\--b", "12-15 a--b"},
        {"*a*\\ b", "{s|a}\u00A0b"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
        CHECK(faults_of(one.typed) == "");
    }
    CHECK(read("a\\") == "a\\");
    CHECK(faults_of("a\\").starts_with("3:9+1 warning: expected a character after '\\'"));
}

// The signs are those of US practice (common practice): double outside, single inside.
TEST_CASE("straight quotes become typographic") {
    const Case cases[] = {
        {"\"a b\"", "“a b”"},
        {"say \"a,\" then", "say “a,” then"},
        {"(\"a\")", "(“a”)"},
        {"\"a 'b' c\"", "“a ‘b’ c”"},
        {"\"'a' b\"", "“‘a’ b”"},
        {"\"a 'b'\"", "“a ‘b’”"},
        {"'a \"b\"'", "‘a “b”’"},
        {"don't, Brandt's, terms'", "don’t, Brandt’s, terms’"},
        {"President's List", "President’s List"},
        {"students' and teachers' work", "students’ and teachers’ work"},
        {"'90s and '26", "’90s and ’26"},
        {"the 1990's", "the 1990’s"},
        {"rock 'n' roll, rock'n'roll", "rock ’n’ roll, rock’n’roll"},
        {"'til 'twas", "’til ’twas"},
        {"5'10\" tall, 6' 2\"", "5'10\" tall, 6' 2\""},
        {"a 12\" pipe", "a 12\" pipe"},
        {"\"Class of 2026\"", "“Class of 2026”"},
        {"'bout time", "’bout time"},
        {"O'Neill-'s", "O’Neill-’s"},
        {"pre-\"x\" --\"y\"", "pre-“x” --“y”"},
        {"“typed” ‘already’", "“typed” ‘already’"},
        {"\"", "\""},
        {"a \" b", "a \" b"},
        {"''", "’’"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
    }
}

TEST_CASE("dashes") {
    const Case cases[] = {
        {"word--word", "word\u00A0– word"},
        {"word -- word", "word\u00A0– word"},
        {"a\n-- b", "a\u00A0– b"},
        {"12-15", "12–15"},
        {"2019-2021", "2019–2021"},
        {"2019 - 2021", "2019 – 2021"},
        {"2019--2021", "2019–2021"},
        {"(3-5)", "(3–5)"},
        {"$10-15, $1.2M-$1.5M, 10%-15%", "$10–15, $1.2M–$1.5M, 10%–15%"},
        {"1,000-1,500", "1,000–1,500"},
        {"9:00-5:30", "9:00–5:30"},
        {"10-15-minute walks", "10–15-minute walks"},
        {"*12-15* sites", "{s|12–15} sites"},
        {"360-555-0142", "360-555-0142"},
        {"(360) 555-0142", "(360) 555-0142"},
        {"+1 360-555-0142", "+1 360-555-0142"},
        {"360 555-1142", "360 555-1142"},
        {"555-0142", "555-0142"},
        {"2026-06-01", "2026-06-01"},
        {"2026-06", "2026-06"},
        {"978-3-16-148410-0", "978-3-16-148410-0"}, // an ISBN
        {"COVID-19, B-12, F-16A, 3-D", "COVID-19, B-12, F-16A, 3-D"},
        {"state-of-the-art", "state-of-the-art"},
        {"run --help", "run --help"},
        {"i-- ---- a", "i-- ---- a"},
        {"a – b — c", "a – b — c"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
    }
}

TEST_CASE("links and their words") {
    const Case cases[] = {
        {"see survey <https://a.example/x> now", "see {https://a.example/x|survey} now"},
        {"see *the survey* <https://a.example>", "see {s https://a.example|the survey}"},
        {"see */the/ survey* <https://a.example>",
         "see {se https://a.example|the}{s https://a.example| survey}"},
        {"see \"the survey\" <https://a.example>.", "see {https://a.example|“the survey”}."},
        {"<https://a.example/x/>", "{https://a.example/x/|a.example/x}"},
        {"Site: <https://a.example/>", "Site: {https://a.example/|a.example}"},
        {"one, <http://a.example>", "one, {http://a.example|a.example}"},
        {"(<mailto:a@b.example>)", "({mailto:a@b.example|a@b.example})"},
        {"(site <https://a.example>)", "({https://a.example|site})"},
        {"<tel:+1-360-555-0142>", "{tel:+1-360-555-0142|+1-360-555-0142}"},
        {"<mailto:a@b.example?subject=x>", "{mailto:a@b.example?subject=x|a@b.example}"},
        {"a <https://a.example> <https://b.example>",
         "{https://a.example|a} {https://b.example|b.example}"},
        {"Tide\\ Pool <https://a.example>", "{https://a.example|Tide\u00A0Pool}"},
        {"Brandt's <https://a.example>", "{https://a.example|Brandt’s}"},
        {"word -- <https://a.example>", "word\u00A0– {https://a.example|a.example}"},
        {"word<https://a.example>", "{https://a.example|word}"},
        {"*see site <https://a.example> now*", "{s|see }{s https://a.example|site}{s| now}"},
        {"x\n<https://a.example>", "{https://a.example|x}"},
        {"<HTTPS://A.example/Ab>", "{https://A.example/Ab|A.example/Ab}"},
        {"<https://a.example/a_b_c/*d*>", "{https://a.example/a_b_c/*d*|a.example/a_b_c/*d*}"},
        {"p < 0.05, a<b, x <y", "p < 0.05, a<b, x <y"},
        {"vector<std::string> <int>", "vector<std::string> <int>"},
        {"a<b: yes", "a<b: yes"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
        CHECK(faults_of(one.typed) == "");
    }
}

// RFC 3986, appendix C: white space where a URI is broken over lines is ignored. Its example names
// the second of these URIs; the scheme of its first is none of ours.
TEST_CASE("an address broken over lines is whole") {
    CHECK(read("Note the warning in "
               "<http://www.ics.uci.edu/pub/\nietf/uri/historical.html#WARNING>.") ==
          "Note the warning {http://www.ics.uci.edu/pub/ietf/uri/historical.html#WARNING|in}.");
    CHECK(read("<http://www.ics.uci.edu/pub/\nietf/>")
              .starts_with("{http://www.ics.uci.edu/pub/ietf/|"));
    CHECK(faults_of("probably <ftp://foo.example.com/rfc/>") ==
          "3:18+3 error: no link can be made with the scheme 'ftp'; expected 'http', 'https', "
          "'mailto' or 'tel', or '\\<' for a '<' to be printed");
}

// RFC 3986, sections 1.1.2, 3.2.2, 5.4 and 6; RFC 6068, section 6; RFC 3966, section 6: examples
// of the schemes that a résumé may have.
TEST_CASE("valid addresses of the RFCs") {
    const std::string_view valid[] = {"http://www.ietf.org/rfc/rfc2396.txt",
                                      "mailto:John.Doe@example.com",
                                      "tel:+1-816-555-1212",
                                      "http://a/b/c/d;p?q",
                                      "http://a/b/c/g;x=1/./y",
                                      "http://a/b/c/g?y#s",
                                      "http://a/b/c/d;p?q#s/../x",
                                      "http://example.com:80/",
                                      "http://example.com:/",
                                      "http://user:pw@example.com",
                                      "http://192.0.2.16:80/",
                                      "http://[2001:db8::7]/c=GB?one",
                                      "http://[::1]",
                                      "http://[v1.a:b]/",
                                      "http://a/%7Esmith/",
                                      "mailto:chris@example.com",
                                      "mailto:infobot@example.com?subject=current-issue",
                                      "mailto:joe@example.com?cc=bob@example.com&body=hello",
                                      "mailto:gorby%25kremvax@example.com",
                                      "mailto:a@b.example,c@d.example",
                                      "tel:+1-201-555-0123",
                                      "tel:7042;phone-context=example.com",
                                      "tel:863-1234;phone-context=+1-914-555"};
    for (const std::string_view uri : valid) {
        CAPTURE(uri);
        CHECK(faults_of("<" + std::string{uri} + ">") == "");
    }
}

TEST_CASE("what is wrong with an address is told at its place") {
    const Case cases[] = {
        {"<https://>", "3:9+8 error: the address 'https://' is not complete"},
        {"<https:a.example>", "3:15+1 error: 'a' cannot stand here"},
        {"<https://a.example/a b>", "3:28+1 error: a space cannot stand in an address"},
        {"<https://a.example/%4x>", "3:27+1 error: expected two hexadecimal digits"},
        {"<https://a.example/é>", "3:27+2 error: 'é' cannot stand here"},
        {"<https://a.example:8a>", "3:28+1 error: 'a' cannot stand here"},
        {"<https://[::1>", "3:9+12 error: the address 'https://[::1' is not complete"},
        {"<https://[1::g]/>", "3:21+1 error: 'g' cannot stand here"},
        {"<https://a.example/[x]>", "3:27+1 error: '[' cannot stand here"},
        {"<mailto:a>", "3:9+8 error: the address 'mailto:a' is not complete"},
        {"<tel:ext>", "3:13+1 error: 'e' cannot stand here"},
        {"x\n<https://a.example/\n\"a\">", "5:8+1 error: '\"' cannot stand here"},
        {"a <https://a.example", "3:10+1 error: expected '>' after the address"},
        {"<javascript:alert(1)>", "3:9+10 error: no link can be made with the scheme 'javascript'"},
        {"<data:text/html,x>", "3:9+4 error: no link can be made with the scheme 'data'"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(faults_of(one.typed).starts_with(one.read));
        CHECK(faults_of(one.typed).find(" | ") == std::string::npos);
    }
}

TEST_CASE("the value of a link field") {
    const Case cases[] = {
        {"ottolinebrandt.example/x", "{https://ottolinebrandt.example/x|ottolinebrandt.example/x}"},
        {"https://www.a.example/", "{https://www.a.example/|https://www.a.example/}"},
        {"a.b@c.example", "{mailto:a.b@c.example|a.b@c.example}"},
        {"Field notes <https://a.example/>", "{https://a.example/|Field notes}"},
        {"Field *notes* <a.example>", "{https://a.example|Field }{s https://a.example|notes}"},
        {"Field\nnotes <a.example>", "{https://a.example|Field notes}"},
        {"<https://a.example/>", "{https://a.example/|a.example}"},
        {"a.example:8080/x?y#z", "{https://a.example:8080/x?y#z|a.example:8080/x?y#z}"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        Diagnostics diagnostics;
        CHECK(dump(quoin::model::read_link(value_of(one.typed), diagnostics)) == one.read);
        CHECK(faults(diagnostics) == "");
    }
    const Case wrong[] = {
        {"my site", "3:8+7 error: 'my site' is no address"},
        {"localhost", "3:8+9 error: 'localhost' is no address"},
        {"Notes https://a.example", "3:8+23 error: 'Notes https://a.example' is no link: write "
                                    "'link: Notes <https://a.example>'"},
        {"Notes <ftp://a.example>", "3:15+15 error: 'ftp://a.example' is no address"},
        {"a.example/a b", "3:19+1 error: a space cannot stand"},
        {"a <https://a.example> b <https://b.example>", "3:8+1 error: a second address"},
        {"", "3:8+0 error: '' is no address"},
    };
    for (const Case& one : wrong) {
        CAPTURE(one.typed);
        Diagnostics diagnostics;
        quoin::model::read_link(value_of(one.typed), diagnostics);
        CHECK(faults(diagnostics).starts_with(one.read));
    }
}

TEST_CASE("places lead back to the source, through folds") {
    Diagnostics diagnostics;
    const Text text = quoin::model::read_text(value_of("ab *cd*\n\"e\" \\*f"), diagnostics);
    CHECK(text.plain() == "ab cd “e” *f");
    CHECK(text.place(0, 2) == Place{0, 3, 8, 2});
    CHECK(text.place(3, 2) == Place{0, 3, 12, 2});
    CHECK(text.place(1, 4) == Place{0, 3, 9, 5});
    CHECK(text.place(5, 1) == Place{0, 3, 15, 0});  // the fold
    CHECK(text.place(6, 3) == Place{0, 4, 8, 1});   // “
    CHECK(text.place(9, 1) == Place{0, 4, 9, 1});   // e
    CHECK(text.place(14, 1) == Place{0, 4, 12, 2}); // \*
    CHECK(text.place(0, 99) == Place{0, 3, 8, 7});  // cut at the line's end
    CHECK(text.place(99, 1) == Place{0, 4, 15, 0});
    CHECK(Text{}.place(0, 1) == Place{});
}

TEST_CASE("plain values keep every sign") {
    const Text text = quoin::model::read_plain(value_of(" *a*\t\"b\"\n-- 1-2 "));
    CHECK(text.plain() == "*a* \"b\" -- 1-2");
    CHECK(text.place(0, 3) == Place{0, 3, 9, 3});
    CHECK(text.place(8, 2) == Place{0, 4, 8, 2});
}

TEST_CASE("items are parted outside parentheses, and trimmed") {
    const auto items = [](std::string_view typed, char separator) {
        Diagnostics diagnostics;
        std::string result;
        for (const Text& item :
             quoin::model::split(quoin::model::read_text(value_of(typed), diagnostics), separator))
            result += "[" + dump(item) + "]";
        return result;
    };
    CHECK(items("a; b;c", ';') == "[a][b][c]");
    CHECK(items("a (x; y); b", ';') == "[a (x; y)][b]");
    CHECK(items("; ;a;;", ';') == "[a]");
    CHECK(items("a (b; c", ';') == "[a (b][c]");
    CHECK(items("a) b; c", ';') == "[a) b][c]");
    CHECK(items("a (b (c; d); e); f", ';') == "[a (b (c; d); e)][f]");
    CHECK(items("a\\; b; c", ';') == "[a; b][c]");
    CHECK(items("*a; b*; c", ';') == "[{s|a}][{s|b}][c]");
    CHECK(items("a;\nb", ';') == "[a][b]");
    CHECK(items("x <https://a.example>, y <https://b.example>", ',') ==
          "[{https://a.example|x}][{https://b.example|y}]");
    CHECK(items("", ';') == "");

    Diagnostics diagnostics;
    const auto parted =
        quoin::model::split(quoin::model::read_text(value_of("ab; cd\n ef"), diagnostics), ';');
    CHECK(parted.at(1).place(0, 2) == Place{0, 3, 12, 2});
    CHECK(parted.at(1).plain() == "cd ef");
}

// Every byte of a span that maps to the source is the source's byte; places stay on their line and
// follow one another. Texts are made of the signs that have a meaning.
TEST_CASE("random texts keep their places") {
    std::mt19937 random(20261103);
    const std::string_view parts[] = {"*",    "/", "_",        "\"",        "'", "--", "-", "12",
                                      "word", " ", "\n",       "(",         ")", ",",  ":", "\\",
                                      "<",    ">", "https://", "a.example", "é", "–"};
    for (int round = 0; round < 3000; ++round) {
        std::string typed;
        for (int i = 0; i < 12; ++i)
            typed += parts[random() % std::size(parts)];
        const Value value = value_of(typed);
        Diagnostics diagnostics;
        const Text text = quoin::model::read_text(value, diagnostics);
        std::pair<std::uint32_t, std::uint32_t> last{0, 0};
        for (const quoin::model::Span& span : text.spans) {
            CAPTURE(typed);
            REQUIRE_FALSE(span.text.empty());
            const quoin::syntax::Slice& slice = value.slices.at(span.place.line - 3);
            const std::size_t start = span.place.column - first_column;
            REQUIRE(start + span.place.length <= slice.text.size());
            if (span.text.size() == span.place.length && span.text != "\u00A0")
                REQUIRE(slice.text.substr(start, span.place.length) == span.text);
            REQUIRE(std::pair{span.place.line, span.place.column} >= last);
            last = {span.place.line, span.place.column};
        }
    }
}

// A quadratic reader would take hours over these; the suite's own limit of time would show it.
TEST_CASE("hostile texts of a mebibyte") {
    constexpr std::size_t size = (std::size_t{1} << 20) / quoin::part_tried;
    for (const std::string_view part : {"*a ",     "*a /b ",
                                        "a* ",     "<",
                                        "<https:", "<https://a.example> ",
                                        "\"",      "'",
                                        "' ",      "\" '",
                                        "\\",      "-",
                                        "--",      "1-",
                                        "12-15 ",  "(",
                                        "(;",      "*",
                                        "*/",      "*/_x",
                                        "a*",      "a <https://b.example> ",
                                        "\"a"}) {
        CAPTURE(part);
        std::string typed;
        while (typed.size() + part.size() <= size)
            typed += part;
        Diagnostics diagnostics;
        const Text text = quoin::model::read_text(value_of(typed), diagnostics);
        CHECK_FALSE(text.empty());
        CHECK_FALSE(quoin::model::split(text, ';').empty());
        quoin::model::read_link(value_of(typed), diagnostics);
    }
}

// Ill-formed UTF-8 is refused before inline text is read; these strings are well-formed and odd.
TEST_CASE("odd characters stay as they are") {
    const std::string_view odd[] = {
        "e\u0301", "\u200B\u200D", "\U0001F41A\uFE0F",     "\u202Eabc", "Ω≈ç√∫",     "田中さん",
        "\uFEFFx", "%s%n{}",       "$(ls) `x` &amp; ${y}", "\x01\x7F",  "¯\\\\_(ツ)"};
    for (const std::string_view text : odd) {
        CAPTURE(text);
        CHECK(quoin::model::read_plain(value_of(text)).plain() == text);
    }
    CHECK(read("\xFF\xC3 \xE2\x80") == "\xFF\xC3 \xE2\x80"); // and what is not is let through
}

} // namespace inline_test

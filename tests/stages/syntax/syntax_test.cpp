// Syntax trees: what lines mean, what is said of wrong ones, and that a tree prints as its markup.
#include "compiler/stages/syntax/parse.hpp"

#include "tests/fixtures/tries.hpp"

#include <doctest/doctest.h>

#include <random>
#include <string>
#include <string_view>
#include <vector>

using quoin::Diagnostics;
using quoin::Sources;
using quoin::syntax::Block;
using quoin::syntax::Braces;
using quoin::syntax::Node;
using quoin::syntax::Slice;
using quoin::syntax::Tree;

namespace {

struct Parsed {
    Tree tree;
    std::string messages; // one a line
    std::size_t faults = 0;
};

Parsed parsed(const std::string& text, Braces braces = Braces::tags, bool excerpt = false) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("a", text, diagnostics);
    REQUIRE(file);
    Parsed result{
        quoin::syntax::parse(sources, *file, diagnostics, braces), {}, diagnostics.all().size()};
    diagnostics.sort();
    for (const auto& one : diagnostics.all())
        result.messages += format(one, sources, excerpt) + '\n';
    return result;
}

// The dump of a file of one block in its heading, without its first lines.
std::string block_of(const std::string& text, Braces braces = Braces::tags) {
    const Parsed result = parsed(text, braces);
    CHECK(result.messages == "");
    const std::string lead = "heading\n  block\n";
    const std::string dumped = dump(result.tree);
    REQUIRE(dumped.starts_with(lead));
    return dumped.substr(lead.size());
}

constexpr const char* example = // from the markup's contract, "Blocks"
    "# Fall draft, for the wetlands internship\n"
    "name: Ottoline Brandt\n"
    "headline: Marine biology student, field survey and data skills\n"
    "address: Port Ellery, WA\n"
    "phone: (360) 555-0142\n"
    "email: ottoline.brandt@ellerystate.example\n"
    "stage: undergraduate\n"
    "\n"
    "section: Education\n"
    "\n"
    "school: Ellery State College\n"
    "honors: President's List (2 terms); Dean's List (4 terms)\n"
    "\n"
    "section: Relevant Experience\n"
    "\n"
    "role: Field Survey Intern\n"
    "employer: Salish Tidal Trust\n"
    "dates: Jun 2026 - Aug 2026\n"
    "- Counted 212 eelgrass quadrats at 9 sites and cut entry time *18%* with a\n"
    "  barcoded datasheet {lab field}\n"
    "- Trained 4 volunteers in GPS and quadrat placement {field}\n"
    "\n"
    "section: Skills {!lab}\n"
    "\n"
    "Laboratory: pH meter, titration, analytical balance\n"
    "Languages: Portuguese (professional), Hindi (conversational)\n";

}

TEST_SUITE("syntax") {

    TEST_CASE("the example of the markup's contract") {
        const Parsed result = parsed(example);
        CHECK(result.messages == "");
        CHECK(print(result.tree) == example);
        CHECK(
            dump(result.tree) ==
            "heading\n"
            "  block\n"
            "    comment \" Fall draft, for the wetlands internship\"\n"
            "    field \"name\" \"name\" \"Ottoline Brandt\"\n"
            "    field \"headline\" \"headline\" \"Marine biology student, field survey and data "
            "skills\"\n"
            "    field \"address\" \"address\" \"Port Ellery, WA\"\n"
            "    field \"phone\" \"phone\" \"(360) 555-0142\"\n"
            "    field \"email\" \"email\" \"ottoline.brandt@ellerystate.example\"\n"
            "    field \"stage\" \"stage\" \"undergraduate\"\n"
            "section\n"
            "  field \"section\" \"section\" \"Education\"\n"
            "  block\n"
            "    field \"school\" \"school\" \"Ellery State College\"\n"
            "    field \"honors\" \"honors\" \"President's List (2 terms); Dean's List (4 "
            "terms)\"\n"
            "section\n"
            "  field \"section\" \"section\" \"Relevant Experience\"\n"
            "  block\n"
            "    field \"role\" \"role\" \"Field Survey Intern\"\n"
            "    field \"employer\" \"employer\" \"Salish Tidal Trust\"\n"
            "    field \"dates\" \"dates\" \"Jun 2026 - Aug 2026\"\n"
            "    bullet 1 \"Counted 212 eelgrass quadrats at 9 sites and cut entry time *18%* with "
            "a\" \"barcoded datasheet\" {lab} {field}\n"
            "    bullet 1 \"Trained 4 volunteers in GPS and quadrat placement\" {field}\n"
            "section\n"
            "  field \"section\" \"section\" \"Skills\" {!lab}\n"
            "  block\n"
            "    field \"laboratory\" \"Laboratory\" \"pH meter, titration, analytical balance\"\n"
            "    field \"languages\" \"Languages\" \"Portuguese (professional), Hindi "
            "(conversational)\"\n");
    }

    TEST_CASE("good lines") {
        struct Row {
            std::string text, block;
        };
        const Row rows[]{
            {"name: A", "    field \"name\" \"name\" \"A\"\n"},
            {"Name :\tA  ", "    field \"name\" \"Name\" \"A\"\n"},
            {"Dates As: 06/2026", "    field \"dates-as\" \"Dates As\" \"06/2026\"\n"},
            {"Génie  logiciel: a, b",
             "    field \"génie-logiciel\" \"Génie  logiciel\" \"a, b\"\n"},
            {"C/C++: x", "    field \"c/c++\" \"C/C++\" \"x\"\n"},
            {"note: see: x: y", "    field \"note\" \"note\" \"see: x: y\"\n"},
            {"name: A\r\n  B\r\n", "    field \"name\" \"name\" \"A\" \"B\"\n"},
            {"name:\n  A\n\tB", "    field \"name\" \"name\" \"A\" \"B\"\n"},
            {"name: A\n# c\n  B\n",
             "    field \"name\" \"name\" \"A\" \"B\"\n    comment \" c\"\n"},
            {"name: A\n#\n# d  \n",
             "    field \"name\" \"name\" \"A\"\n    comment\n    comment \" d\"\n"},
            {"name: A\n  #B", "    field \"name\" \"name\" \"A\" \"#B\"\n"},
            {"- a", "    bullet 1 \"a\"\n"},
            {"-- a", "    bullet 2 \"a\"\n"},
            {"-\ta  b", "    bullet 1 \"a  b\"\n"},
            {"-\n  a", "    bullet 1 \"a\"\n"},
            {"- - a", "    bullet 1 \"- a\"\n"},
            {"- a {lab field !x_1-y}", "    bullet 1 \"a\" {lab} {field} {!x_1-y}\n"},
            {"- a{lab}  ", "    bullet 1 \"a\" {lab}\n"},
            {"- a { lab  }", "    bullet 1 \"a\" {lab}\n"},
            {"- a\n  {lab}", "    bullet 1 \"a\" {lab}\n"},
            {"- a {lab\n  field}", "    bullet 1 \"a\" {lab} {field}\n"},
            {"- a {lab\n# c\n  field}", "    bullet 1 \"a\" {lab} {field}\n    comment \" c\"\n"},
            {"- a {lab}\n  b", "    bullet 1 \"a {lab}\" \"b\"\n"},
            {"- {a} b", "    bullet 1 \"{a} b\"\n"},
            {"- a {b, c} d", "    bullet 1 \"a {b, c} d\"\n"},
            {"- a {b, c}.", "    bullet 1 \"a {b, c}.\"\n"},
            {"- a \\{b}", "    bullet 1 \"a \\\\{b}\"\n"},
            {"- a \\\\{b}", "    bullet 1 \"a \\\\\\\\\" {b}\n"},
            {"- a \\{b} {c}", "    bullet 1 \"a \\\\{b}\" {c}\n"},
            {"- a }", "    bullet 1 \"a }\"\n"},
            {"\n \n\t\n- a\n\n \n", "    bullet 1 \"a\"\n"},
        };
        for (const Row& row : rows) {
            CAPTURE(row.text);
            CHECK(block_of(row.text) == row.block);
        }
    }

    TEST_CASE("in a theme braces are text") {
        CHECK(block_of("line: *{role}*, {dates}", Braces::text) ==
              "    field \"line\" \"line\" \"*{role}*, {dates}\"\n");
        CHECK(block_of("line: {role}\n  {\n  {}", Braces::text) ==
              "    field \"line\" \"line\" \"{role}\" \"{\" \"{}\"\n");
    }

    TEST_CASE("blocks and sections") {
        struct Row {
            std::string text, dump;
        };
        const Row rows[]{
            {"", "heading\n"},
            {"\n\n", "heading\n"},
            {"section: A", "heading\nsection\n  field \"section\" \"section\" \"A\"\n"},
            {"Section:\n A\n B\n- c", "heading\nsection\n  field \"section\" \"Section\" \"A\" "
                                      "\"B\"\n  block\n    bullet 1 \"c\"\n"},
            {"- a\n\n\n- b\n# c\nsection: A\n\n# d\n\n- e",
             "heading\n  block\n    bullet 1 \"a\"\n  block\n    bullet 1 \"b\"\n    comment \" "
             "c\"\n"
             "section\n  field \"section\" \"section\" \"A\"\n  block\n    comment \" d\"\n  "
             "block\n"
             "    bullet 1 \"e\"\n"},
            {"sectors: A", "heading\n  block\n    field \"sectors\" \"sectors\" \"A\"\n"},
        };
        for (const Row& row : rows) {
            const Parsed result = parsed(row.text);
            CHECK(result.messages == "");
            CHECK(dump(result.tree) == row.dump);
        }
    }

    TEST_CASE("places") {
        const Parsed result = parsed("# c\nDates As: é x\n  y {lab !f}\nsection:  A \n-- b\n");
        CHECK(dump(result.tree, true) ==
              "heading\n  block\n"
              "    comment@1:1+3 \" c\"@1:2+2\n"
              "    field \"dates-as\" \"Dates As\"@2:1+14 label@2:1+8 \"é x\"@2:11+4 \"y\"@3:3+1 "
              "{lab}@3:6+3 {!f}@3:10+2\n"
              "section\n"
              "  field \"section\" \"section\"@4:1+12 label@4:1+7 \"A\"@4:11+1\n"
              "  block\n"
              "    bullet 2@5:1+4 \"b\"@5:4+1\n");
    }

    TEST_CASE("values") {
        const Parsed result = parsed("name: A\n  B\n#\n");
        const Block& block = result.tree.heading.at(0);
        CHECK(block.at(0).value.joined() == "A B");
        CHECK(block.at(0).value.place() == quoin::Place{0, 1, 7, 1});
        CHECK_FALSE(block.at(0).value.empty());
        CHECK(block.at(1).value.empty());
        CHECK(block.at(1).value.joined() == "");
        CHECK(block.at(1).value.place() == quoin::Place{});
    }

    TEST_CASE("wrong lines, to the letter") {
        const std::string goes_on =
            "; a line that goes on with the one above starts with a space\n";
        const std::string none = " is no line of the markup: expected 'label: value', '- text' or "
                                 "'section: TITLE'" +
                                 goes_on;
        const std::string empty =
            " has no value: write one after the colon, or take the line out\n";
        const std::string dash = " opens no bullet: write '- text'\n";
        const std::string brace = ", or '\\{' for a brace that is text\n";
        struct Row {
            std::string text, messages;
        };
        const Row rows[]{
            {"{lab}", "a:1:1: error: '{lab}'" + none},
            {"gpa:", "a:1:1: error: 'gpa:'" + empty},
            {"a\u0301 b :  \n\n", "a:1:1: error: 'á b :'" + empty},
            {"gpa:\n# c\n\n  x", "a:1:1: error: 'gpa:'" + empty +
                                     "a:4:3: error: 'x' is indented, so it goes on with the line "
                                     "above, and there is none: "
                                     "start it in the first column\n"},
            {"section:", "a:1:1: error: 'section:' has no title: write one after the colon, as in "
                         "'section: Education'\n"},
            {"-",
             "a:1:1: error: '-' has no text: write the bullet after it, or take the line out\n"},
            {"--  ",
             "a:1:1: error: '--' has no text: write the bullet after it, or take the line out\n"},
            {"gpa: {lab}",
             "a:1:1: error: 'gpa:' has tags and nothing else: write the text that they "
             "are for before them\n"},
            {"- {lab}",
             "a:1:1: error: '-' has tags and nothing else: write the text that they are for "
             "before them\n"},
            {"-----",
             "a:1:1: error: a line that only rules off is no part of the markup: a blank line "
             "ends an entry, and 'section: TITLE' opens a section\n"},
            {"--- x",
             "a:1:1: error: '---' is one level too many: a bullet is '- text' or, one level "
             "deeper, '-- text'\n"},
            {"-x y", "a:1:1: error: '-' needs a space after it to open a bullet, as in '- text'\n"},
            {"--x", "a:1:1: error: '--' needs a space after it to open a bullet, as in '- text'\n"},
            {"• x", "a:1:1: error: '•'" + dash},
            {"•x", "a:1:1: error: '•'" + dash},
            {"* x", "a:1:1: error: '*'" + dash},
            {"*{lab}", "a:1:1: error: '*'" + dash},
            {"+ x", "a:1:1: error: '+'" + dash},
            {"– x", "a:1:1: error: '–'" + dash},
            {"→ x", "a:1:1: error: '→'" + dash},
            {"o Xs", "a:1:1: error: 'o'" + dash},
            {"12. x", "a:1:1: error: '12.'" + dash},
            {"2) x", "a:1:1: error: '2)'" + dash},
            {"// x", "a:1:1: error: '//' is no comment here: a line that begins with '#' is one\n"},
            {";\n {a b}\n",
             "a:1:1: error: ';' is no comment here: a line that begins with '#' is one\n"},
            {"<!-- x -->",
             "a:1:1: error: '<!--' is no comment here: a line that begins with '#' is one\n"},
            {"\uF0B7\tx", "a:1:1: error: '\uF0B7'" + dash},
            {"gpa = 3",
             "a:1:1: error: 'gpa =' was found where a label and a colon were expected, as in "
             "'label: value'\n"},
            {"gpa： 3", ""}, // of full width, and read as the sign it stands for
            {"gpa∶ 3", "a:1:1: error: 'gpa∶' ends in a sign that only looks like a colon: type ':' "
                       "after the label\n"},
            {"<<<<<<< HEAD",
             "a:1:1: error: '<<<<<<< HEAD' was left by a merge of two drafts: keep one of the "
             "versions that stand between these lines, and take the lines out\n"},
            {" x", "a:1:2: error: 'x' is indented, so it goes on with the line above, and there is "
                   "none: start it in the first column\n"},
            {"- a {}", "a:1:5: error: '{}' names no tag: write tags as in '{lab field}'" + brace},
            {"- a {lab",
             "a:1:5: error: '{lab' is not closed: write tags as in '{lab field}'" + brace},
            {"- a {lab, x}",
             "a:1:5: error: '{lab, x}' is no list of tags: words of letters, digits, '-' and '_' "
             "with "
             "spaces between, as in '{lab !field}'; write '\\{' for a brace that is text\n"},
            {"- a {lab} {x}",
             "a:1:5: error: '{lab} {x}' has tags in two pairs of braces: write them in "
             "one, as in '{lab field}'\n"},
            {"- a {lab}.", "a:1:5: error: '{lab}.' has a stop after the tags: the text's own stop "
                           "stands before them, as in 'text. {lab}'\n"},
            {"- a\n  - b",
             "a:2:3: warning: an indented line goes on with the line above: a bullet starts "
             "in the first column, and '-- text' is one level deeper\n"},
            {"- a\n  -- b\n  -c\n  –d", ""},
        };
        for (const Row& row : rows) {
            CAPTURE(row.text);
            CHECK(parsed(row.text).messages == row.messages);
        }
    }

    TEST_CASE("one run reports every mistake, and the lines between are read") {
        const Parsed result = parsed("name A\n"
                                     "  with a fold\n"
                                     "phone: 1 {}\n"
                                     "\n"
                                     "section:\n"
                                     "role: B\n"
                                     "--- c\n"
                                     "- d\n",
                                     Braces::tags, true);
        CHECK(
            result.messages ==
            "a:3:10: error: '{}' names no tag: write tags as in '{lab field}', or '\\{' for a "
            "brace "
            "that is text\n"
            "  phone: 1 {}\n"
            "           ^~\n"
            "a:5:1: error: 'section:' has no title: write one after the colon, as in 'section: "
            "Education'\n"
            "  section:\n"
            "  ^~~~~~~~\n"
            "a:7:1: error: '---' is one level too many: a bullet is '- text' or, one level deeper, "
            "'-- text'\n"
            "  --- c\n"
            "  ^~~\n");
        CHECK(dump(result.tree) ==
              "heading\n"
              "  block\n    bare \"name A\" \"with a fold\"\n"
              "    field \"phone\" \"phone\" \"1\"\n"
              "section\n  field \"section\" \"section\"\n"
              "  block\n    field \"role\" \"role\" \"B\"\n    bullet 1 \"d\"\n");
    }

    TEST_CASE("of very many mistakes the first are shown, then how many there are") {
        std::string text;
        for (int line = 0; line < 1000; ++line)
            text += "---\n";
        const Parsed result = parsed(text);
        CHECK(result.faults == 201);
        CHECK(result.messages.starts_with(
            "a: note: there are 1000 faults in all, of which the first 200 are shown\n"));
    }

    // Trees at random

    class RandomTree {
    public:
        explicit RandomTree(unsigned seed) : random_(seed) {}

        Tree make() {
            Tree tree;
            tree.heading = blocks();
            for (std::size_t count = below(4); count > 0; --count)
                tree.sections.push_back({field("section", "Section"), blocks()});
            return tree;
        }

    private:
        std::size_t below(std::size_t bound) {
            return std::uniform_int_distribution<std::size_t>(0, bound - 1)(random_);
        }

        std::string text() {
            static const std::vector<std::string> words{"a",     "bé",   "-",    "--", "#",  ":",
                                                        "\\{x}", "\\\\", "{x}y", "}",  "中", "*b*"};
            std::string result = words[below(words.size())];
            while (below(4) > 0)
                result += (below(5) == 0 ? "  " : " ") + words[below(words.size())];
            return result;
        }

        void fill(Node& node) {
            do
                node.value.slices.push_back({text(), {}});
            while (below(4) == 0);
            while (below(4) == 0)
                node.tags.push_back({below(2) == 0 ? "lab" : "x_1-y", below(2) == 0, {}});
        }

        Node field(const char* label, const char* spelled) {
            Node node;
            node.label.text = label;
            node.spelled = spelled;
            fill(node);
            return node;
        }

        Node node() {
            if (below(4) == 0) return field("génie-logiciel", "Génie Logiciel");
            if (below(3) == 0) return field("dates-as", "Dates as");
            Node result;
            result.kind = below(4) == 0 ? Node::Kind::comment : Node::Kind::bullet;
            if (result.kind == Node::Kind::bullet) {
                result.level = static_cast<int>(1 + below(2));
                fill(result);
            } else if (below(3) > 0) {
                result.value.slices.push_back({(below(2) == 0 ? " " : "") + text(), {}});
            }
            return result;
        }

        std::vector<Block> blocks() {
            std::vector<Block> result(below(4));
            for (Block& block : result)
                do
                    block.push_back(node());
                while (below(4) > 0);
            return result;
        }

        std::mt19937 random_;
    };

    TEST_CASE("a tree prints as markup that gives the same tree, at random with fixed seeds") {
        for (unsigned seed = 1; seed <= 2000; ++seed) {
            const Tree tree = RandomTree(seed).make();
            const std::string markup = print(tree);
            CAPTURE(markup);
            const Parsed again = parsed(markup);
            REQUIRE(again.messages.find("error") == std::string::npos);
            REQUIRE(dump(again.tree) == dump(tree));
            REQUIRE(print(again.tree) == markup);
        }
    }

    TEST_CASE("dumps are equal exactly when trees are") {
        const std::vector<std::string> texts{"name: A",
                                             "Name: A",
                                             "name: B",
                                             "name: A\n  B",
                                             "name: A B",
                                             "name: A {b}",
                                             "name: A {!b}",
                                             "- A",
                                             "-- A",
                                             "# A",
                                             "#A",
                                             "name: A\n- A",
                                             "name: A\n\n- A",
                                             "section: A",
                                             "section: A\n- A",
                                             "name: \"A",
                                             "name: \\\"A",
                                             "name: A\n  {b c}",
                                             "name: A {c b}",
                                             "- A\" \"B",
                                             "- A\n  B",
                                             "- A \\{b}",
                                             "#",
                                             "name: A\n#",
                                             "name: A\n\n#"};
        for (const std::string& one : texts)
            for (const std::string& other : texts) {
                CAPTURE(one);
                CAPTURE(other);
                CHECK((dump(parsed(one).tree) == dump(parsed(other).tree)) == (one == other));
            }
        CHECK(dump(parsed("name:  A").tree) == dump(parsed("name: A\n\n").tree));
        CHECK(dump(parsed("name:  A").tree, true) != dump(parsed("name: A").tree, true));
    }

    TEST_CASE(
        "hostile files come to an end: time that grew with the square of the size would show") {
        for (const std::string& lead : {std::string(), std::string("name: A\n"), std::string("- ")})
            for (const std::string piece : {"a",     "\n",  "{",      "}",     "{a ",
                                            "{a} ",  "{a,", "\\",     " ",     "\t",
                                            " x\n",  "#\n", "# \n ",  "a:\n",  "a: {b}\n# c\n x\n",
                                            "- x\n", "-",   "- {\n ", "{a\n ", "é",
                                            "x\n",   ": ",  "a b:",   "{}",    "{a}\n {b}\n ",
                                            "a \n"}) {
                std::string text = lead;
                while (text.size() + piece.size() <= Sources::most_bytes / 4 / quoin::part_tried)
                    text += piece;
                CAPTURE(piece);
                const Parsed result = parsed(text);
                CHECK(result.faults <= 201);
                CHECK(parsed(text, Braces::text).faults <= 201);
            }
    }
}

// The grammar of lines by itself: that it comes to an end, and that every rule of it is used.
#include "grammar/lines.hpp"

#include <doctest/doctest.h>
#include <tao/pegtl/contrib/analyze.hpp>
#include <tao/pegtl/visit.hpp>

#include <set>
#include <string>
#include <string_view>

namespace lines = quoin::grammar::lines;
namespace pegtl = tao::pegtl;

namespace {

template<typename Rule>
bool matches(std::string_view text) {
    pegtl::memory_input in(text.data(), text.size(), "test");
    return pegtl::parse<pegtl::seq<Rule, pegtl::eof>>(in);
}

// A file in which every rule of the grammar matches something.
constexpr std::string_view corpus = "\xEF\xBB\xBF# comment\n"
                                    "name: A\n"
                                    "Génie logiciel : C/C++ {lab !field}\n"
                                    "section: Skills\n"
                                    "  and more\n"
                                    "# between\n"
                                    "  and more\n"
                                    "  - x\n"
                                    " \n"
                                    "- text \\{x} {a}\n"
                                    "-- text\n"
                                    "section:\n"
                                    "gpa:\n"
                                    "-\n"
                                    "- {lab}\n"
                                    "---\n"
                                    "--- x\n"
                                    "===\n___\n***\n~~~\n"
                                    "1. x\n"
                                    "o X\n"
                                    "// x\n"
                                    "-x\n"
                                    "• x\n"
                                    "* x\n"
                                    "gpa = 3\n"
                                    "gpa： 3\n"
                                    "gpa 3\n"
                                    "<<<<<<< HEAD\n"
                                    "{lab}\n"
                                    "\n"
                                    "  x\n"
                                    "some words\n"
                                    "[x] x\n"
                                    "a. X\n"
                                    "* * *\n"
                                    "- x {}\n"
                                    "- x {a\n"
                                    "- x {a, b}\n"
                                    "- x {a} {b}\n"
                                    "- x {a}.\n"
                                    "**x:** y\n"
                                    "```\n"
                                    "10:30 x\n"
                                    "  ";

using Names = std::set<std::string_view>;

template<typename Rule>
struct NameOf {
    static void visit(Names& names) { names.insert(pegtl::demangle<Rule>()); }
};

template<typename Rule>
struct Noting : pegtl::normal<Rule> { // notes what matched
    template<typename Input>
    static void success(const Input&, Names& matched) {
        matched.insert(pegtl::demangle<Rule>());
    }
};

template<typename File>
std::string unused_rules() {
    Names unused;
    pegtl::visit<File, NameOf>(unused);
    Names matched;
    pegtl::memory_input in(corpus.data(), corpus.size(), "corpus");
    if (!pegtl::parse<File, pegtl::nothing, Noting>(in, matched)) return "no match";
    for (const std::string_view name : matched)
        unused.erase(name);
    std::string list;
    // What the library's own rules are made of is not the grammar's to use up.
    for (const std::string_view name : unused)
        if (name.starts_with("quoin::grammar::lines::")) list += std::string(name) + '\n';
    return list;
}

}

TEST_SUITE("lines grammar") {

    TEST_CASE("no rule calls itself without progress, and no loop is without end") {
        CHECK(pegtl::analyze<lines::tagged_file>() == 0);
        CHECK(pegtl::analyze<lines::plain_file>() == 0);
    }

    TEST_CASE("every rule matches somewhere in the corpus") {
        CHECK(unused_rules<lines::tagged_file>() == "");
    }

    TEST_CASE("labels") {
        struct Row {
            const char* text;
            bool label;
        };
        const std::string sixty(60, 'a');
        const std::string longer(61, 'a');
        const Row rows[]{{"name", true},
                         {"dates-as", true},
                         {"dates as", true},
                         {"Génie logiciel", true},
                         {"C/C++", true},
                         {"C#, F#", true},
                         {".NET", true},
                         {"R & D", true},
                         {"Writing (technical)", true},
                         {"Master's work", true},
                         {"Master’s work", true},
                         {"3D printing", true},
                         {"日本語", true},
                         {sixty.c_str(), true},
                         {longer.c_str(), false},
                         {"", false},
                         {"-x", false},
                         {"•x", false},
                         {"*x*", false},
                         {"a  b", true},
                         {"a ", false},
                         {"a_b", true},
                         {"(360)", false},
                         {"“a”", false},
                         {"a@b.example", false},
                         {"a — b", false}};
        for (const Row& row : rows) {
            CAPTURE(row.text);
            CHECK(matches<lines::label>(row.text) == row.label);
        }
    }

    TEST_CASE("what is a field and what only looks like one") {
        using field = lines::field<lines::tagged>;
        struct Row {
            const char* text;
            bool field;
        };
        const Row rows[]{{"name: x", true},
                         {"name:x", true},
                         {"name : x", true},
                         {"NAME:x\n", true},
                         {"link: https://x.example/", true},
                         {"see https://x.example/", false},
                         {"https://x.example/", false},
                         {"10:30 x", false},
                         {"10 : 30 x", false},     // as the same without the spaces
                         {"\uFEFFname: x", false}, // a byte-order mark stands first in a file alone
                         {"at 10:30 x", true},
                         {"Some sentence without colon", false},
                         {"name", false}};
        for (const Row& row : rows) {
            CAPTURE(row.text);
            CHECK(matches<field>(row.text) == row.field);
        }
    }

    TEST_CASE("any bytes at all are matched to the end") {
        for (const std::string_view text :
             {"\xFF\xFE\n", "\xC3", "\r\r", "-", "--", "{", "\\", "a:{", ":", "#", " ", "\n", ""}) {
            CHECK(matches<lines::tagged_file>(text));
            CHECK(matches<lines::plain_file>(text));
        }
    }
}

// What of a text reaches a terminal.
#include "compiler/base/printable.hpp"

#include <doctest/doctest.h>

#include <string>

using quoin::printable;

TEST_CASE("printable: no sign that steers a terminal or turns its lines about") {
    struct Case {
        const char *text, *shown;
    };
    for (const Case& c :
         {Case{"plain\twords\nand é, 日本, \u05D0", "plain\twords\nand é, 日本, \u05D0"},
          {"\x1b[31mred", "<U+001B>[31mred"},
          {"a\rb\x07\x7f", "a<U+000D>b<U+0007><U+007F>"},
          {"\u009b31m", "<U+009B>31m"},
          {"abc\u202Edcba\u202C", "abc<U+202E>dcba<U+202C>"},
          {"\u2066a\u2069", "<U+2066>a<U+2069>"},
          {"a\u2028b", "a<U+2028>b"},
          {"a\u200Eb\u200Fc\u061C", "a<U+200E>b<U+200F>c<U+061C>"},
          {"\u05D0\u00AD", "\u05D0\u00AD"},
          {"\xff\xc3(", "\uFFFD\uFFFD("},
          {"", ""}}) {
        CAPTURE(c.shown);
        CHECK(printable(c.text) == c.shown);
    }
}

TEST_CASE("printable: a line is cut, those after it are not") {
    const std::string text = std::string(5000, 'x') + "\nshort\n" + std::string(4000, 'y');
    CHECK(printable(text) == std::string(4000, 'x') + "…\nshort\n" + std::string(4000, 'y'));
}

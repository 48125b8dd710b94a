// Running text in lines of a measure, counted in characters.
#include "compiler/base/wrapped.hpp"

#include <doctest/doctest.h>

namespace quoin {

TEST_CASE("wrapped: lines that are too long, each as far in as it stands") {
    const std::string word(40, 'x'), accents = [] {
        std::string text;
        for (int i = 0; i < 76; ++i)
            text += "é";
        return text;
    }();
    struct Case {
        std::string lines, expected;
    };
    for (const Case& one : {
             Case{"", ""}, Case{"\n", "\n"}, Case{"short\n  and in\n\n", "short\n  and in\n\n"},
             Case{"no end", "no end\n"},
             Case{"  " + word + " " + word + "\nshort\n",
                  "  " + word + "\n  " + word + "\nshort\n"},
             Case{"  " + accents + "\n", "  " + accents + "\n"},
             Case{"a" + word + word + "\n", "a" + word + word + "\n"}, // nowhere to break
         }) {
        CAPTURE(one.lines);
        CHECK(wrapped_lines(one.lines) == one.expected);
    }
}

}

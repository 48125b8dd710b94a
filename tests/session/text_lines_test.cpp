// Positions as Language Server Protocol 3.17 has them, "Text Documents": the example of the letter
// outside the basic plane is its own.
#include "compiler/session/text_lines.hpp"

#include <doctest/doctest.h>

using namespace quoin::session;

TEST_CASE("text lines: offsets of positions, and back") {
    const struct {
        const char* text;
        Units units;
        Position position;
        std::size_t offset;
        bool exact = true; // the offset's position is this one again
    } cases[] = {
        {"a𐐀b", Units::utf16, {0, 1}, 1},
        {"a𐐀b", Units::utf16, {0, 3}, 5},
        {"a𐐀b", Units::utf16, {0, 2}, 1, false},
        {"a𐐀b", Units::utf8, {0, 5}, 5},
        {"a𐐀b", Units::utf8, {0, 3}, 1, false},
        {"é\nx", Units::utf16, {1, 1}, 4},
        {"one\r\ntwo\rthree\n", Units::utf16, {1, 0}, 5},
        {"one\r\ntwo\rthree\n", Units::utf16, {2, 2}, 11},
        {"one\r\ntwo\rthree\n", Units::utf16, {3, 0}, 15},
        {"one\r\ntwo", Units::utf16, {0, 99}, 3, false},
        {"one\r\ntwo", Units::utf16, {9, 9}, 8, false},
        {"", Units::utf16, {0, 0}, 0},
        {"", Units::utf8, {4'000'000'000, 4'000'000'000}, 0, false},
    };
    for (const auto& one : cases) {
        CAPTURE(one.text);
        CAPTURE(one.position.line);
        CAPTURE(one.position.character);
        const TextLines lines(one.text);
        CHECK(lines.offset_of(one.position, one.units) == one.offset);
        CHECK((lines.position_of(one.offset, one.units) == one.position) == one.exact);
    }
}

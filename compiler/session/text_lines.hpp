// Positions in a text as editors count them (Language Server Protocol 3.17, "Text Documents"):
// lines and characters from 0, where LF, CRLF and CR end a line, and a character is a unit of UTF-8
// or of UTF-16, as was agreed.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace quoin::session {

enum class Units { utf8, utf16 };

struct Position {
    std::uint32_t line = 0, character = 0;

    auto operator<=>(const Position&) const = default;
};

struct Range {
    Position start, end;

    bool operator==(const Range&) const = default;
};

std::uint32_t units_in(std::string_view text, Units units);

class TextLines { // of a text that outlives it
public:
    explicit TextLines(std::string_view text);

    std::uint32_t count() const { return static_cast<std::uint32_t>(starts_.size()); }
    std::string_view line(std::uint32_t number) const; // from 0, without its end; none: empty
    std::size_t start_of(std::uint32_t number) const { return starts_.at(number); }
    // Beyond a line's end is its end, beyond the last line the text's; within a character, its
    // begin.
    std::size_t offset_of(Position position, Units units) const;
    Position position_of(std::size_t offset, Units units) const;

private:
    std::string_view text_;
    std::vector<std::size_t> starts_;
};

}

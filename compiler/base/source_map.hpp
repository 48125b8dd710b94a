// From places in normalised text back to the file's own bytes and characters, which are what mends
// and editors know it by.
#pragma once

#include "compiler/base/place.hpp"
#include "compiler/base/source.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace quoin {

struct ByteRange { // [begin, end)
    std::size_t begin = 0, end = 0;
};

// In Unicode characters from 1: of a place's begin, and of the character after it.
struct CharacterColumns {
    std::size_t begin = 1, end = 1;
};

// Of one file, which outlives it. A line is looked at once, however many places it has.
class SourceMap {
public:
    explicit SourceMap(const SourceFile& file);

    // As Edit (compiler/base/edit.hpp) has it. None for a place without a column, and for one that
    // begins or ends within a letter that the file has in parts.
    std::optional<ByteRange> bytes_of(const Place& place);

    // Such a letter is taken in whole. Of a file that is not text, what can be shown of it counts.
    CharacterColumns columns_of(const Place& place);

private:
    struct Piece { // that normalises by itself: where it begins
        std::size_t text = 0, byte = 0, character = 0;
    };
    struct Line {
        bool usable = true;
        std::vector<Piece> pieces; // the last is the line's end; none: all of it is ASCII
    };

    enum class Side { before_signs, after_signs }; // of invisible ones that the text is without

    const Line& line(std::uint32_t number);
    static std::optional<std::size_t> byte_of(const Line& line, std::size_t offset, Side side);
    static bool add_pieces(std::string_view text, std::string_view bytes, Line& line);
    static void add_characters(std::string_view text, Line& line);

    const SourceFile& file_;
    std::vector<ByteRange> lines_; // of the bytes, without their ends
    std::unordered_map<std::uint32_t, Line> known_;
};

}

// Where answers come from, a line at a time: a terminal with editing and a history, or anything
// else. It needs nothing but the standard library, for the editing one lives in a module of its
// own.
#pragma once

#include <cstddef>
#include <memory>
#include <string>

namespace quoin::interview {

struct TypedLine {
    enum class Ended { no, of_input, interrupted };

    std::string text; // without its line end; of a very long one, its beginning
    Ended ended = Ended::no;
};

constexpr std::size_t most_typed = 16384; // bytes of a line; what is beyond is not looked at

class LineReader {
public:
    virtual ~LineReader() = default;
    virtual TypedLine read(const std::string& prompt) = 0;
    virtual void remember(const std::string& line) = 0; // for a history, if there is one
    virtual bool edits() const = 0;                     // arrow keys move, and bring lines back
};

// Of standard input as it comes. The prompt goes to standard output, with a line end where what is
// typed does not show behind it.
std::unique_ptr<LineReader> plain_lines();

}

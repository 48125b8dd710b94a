// What of a text may reach a terminal.
#pragma once

#include <string>
#include <string_view>

namespace quoin {

// Well-formed or not: control signs but line end and tab, and the signs that turn the direction of
// what follows (UAX #9, section 2), are named, `<U+202E>`; what is no UTF-8 is U+FFFD; a line of
// more than 4,000 characters is cut, which an ellipsis shows.
std::string printable(std::string_view text);

// What is one line stays one: line ends in it, such as those of a file's name, are named.
std::string on_one_line(std::string_view text);

// Of a file's name, its line ends and tabs too, so that a message about it is one line.
std::string printable_name(std::string_view name);

}

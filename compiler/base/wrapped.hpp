// Running text in lines that can be read on any terminal.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quoin {

constexpr std::size_t terminal_measure = 78; // characters

// Words set in lines of the measure, each after `indent` spaces.
std::string wrapped(std::string_view text, std::size_t indent);

// Of several lines, those that are too long, each as far in as it stands.
std::string wrapped_lines(std::string_view lines);

}

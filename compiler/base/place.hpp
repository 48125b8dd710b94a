// A place in a source file. Every value that comes from a file carries one, through every stage,
// so that a finding about a line on the page can name the line in the file.
#pragma once

#include <compare>
#include <cstdint>

namespace quoin {

struct Place {
    std::uint32_t file = 0;   // index into Sources
    std::uint32_t line = 0;   // from 1; 0 means the file as a whole
    std::uint32_t column = 0; // from 1, in bytes of the normalised line; 0 means the whole line
    std::uint32_t length = 0; // in bytes of the normalised line; never runs over the line's end

    auto operator<=>(const Place&) const = default;
};

}

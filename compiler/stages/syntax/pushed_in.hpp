// Blocks that are pushed in as a whole, as outlines, nested data and centered headings have them.
#pragma once

#include "compiler/base/source.hpp"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace quoin::syntax {

// A text whose pushed-in lines start in the first column. An indented line goes on with the line
// above, unless there is none: then it and those that are no deeper are lines of their own.
struct PulledOut {
    std::string text;
    std::vector<std::uint32_t> shifts; // by line, from 1: how many columns it was pushed in
    std::vector<std::pair<std::uint32_t, std::uint32_t>> blocks; // the first and last line of each

    std::uint32_t shift_of(std::uint32_t line) const {
        return line < shifts.size() ? shifts[line] : 0;
    }
};

PulledOut pull_out(const SourceFile& source);

}

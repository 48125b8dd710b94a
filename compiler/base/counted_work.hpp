// How much was done where the worst case is far from the usual one: what tests hold its bound to,
// for time depends on the machine. Each thread counts its own.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

namespace quoin {

enum class Work {
    line_ends,    // places tried as a line's end
    active_lines, // lines begun, for each place where one may end, of a justified paragraph
    removals,     // bytes of text measured anew, for words left out of it
    sums,         // of what cuts save and cost together
    page_ends     // places tried as a page's end
};
constexpr std::size_t work_kinds = 5;

inline thread_local std::array<std::uint64_t, work_kinds> counted_work{};

inline void count_work(Work kind, std::size_t amount) {
    counted_work[static_cast<std::size_t>(kind)] += amount;
}

}

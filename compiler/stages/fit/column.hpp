// The column of lines, top to bottom, and where it may be cut. Heights are kept as sums of what a
// setting multiplies, so that they can be had for any setting.
//
// The first baseline of a page lies one ascent below the top margin; where a section goes on from
// the page before, that is its heading's, set again, with its gap and rule. Each other baseline
// lies leading × the size of its paragraph below the last, and lower by the gap above a paragraph's
// first line. Under the name and the headline, whose sizes are unlike, leading says nothing: the
// descent of the line above, `heading_air`, the ascent of the line and its gap are what lies
// between. A rule with its gap takes its own room. The last line's descent stays above the bottom
// margin.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/fit/fit.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace quoin::fit {

constexpr double heading_air = 0.15; // em: at least, from a descender to an ascender under it

struct Height {
    double fixed = 0;  // em of the text size
    double lines = 0;  // em, times leading
    GapCounts gaps{};  // em, times a gap
    double points = 0; // pt

    double at(const PageSetting& setting) const;
    Height& add(const Height& more, double times = 1);
};

struct ColumnLine {
    const composition::Paragraph* paragraph = nullptr;
    std::uint32_t paragraph_index = 0;
    std::uint32_t line = 0; // of the paragraph
    std::uint32_t lines = 0;
    theme::GapName gap{}; // above the paragraph, as it opens here
    // Its section's heading, that a page opens with if this line is its first; null for none.
    const composition::Paragraph* continued = nullptr;
    std::uint32_t block_column = 0; // of its block, from the left
    bool beside = false;            // on the baseline of the line before it
    bool held = false;              // no page begins with it

    bool is_first() const { return line == 0; }
    bool is_last() const { return line + 1 == lines; }
};

struct Column {
    std::vector<ColumnLine> lines;
    const composition::Paragraph* running_head = nullptr; // null if there is none
};

// What stands side by side comes row by row: the lines of a block's columns, and those of a heading
// in the margin with those of its section.
Column make_column(const composition::Composition& composition, std::span<const int> line_counts);

// Where a composition has two columns, each with the heading above it, the main one first; else the
// one that make_column gives.
std::vector<Column> make_columns(const composition::Composition& composition,
                                 std::span<const int> line_counts);

// From the top margin down to the baseline of what a page opens with: of a section that goes on,
// its heading set again; of any other, the line. `page` counts from 0.
Height to_opening_baseline(const Column& column, std::size_t line, std::size_t page);
// The same down to the baseline of the page's first line.
Height to_first_baseline(const Column& column, std::size_t line, std::size_t page);
// From the baseline above to the baseline of `line`.
Height to_baseline(const Column& column, std::size_t line);
// From the last baseline to the bottom margin.
Height below_baseline(const Column& column, std::size_t line);
// Of lines [begin, end) set on one page.
Height page_height(const Column& column, std::size_t begin, std::size_t end, std::size_t page);

// The same for many pages of one column.
class ColumnHeights {
public:
    explicit ColumnHeights(const Column& column);

    Height page(std::size_t begin, std::size_t end) const;
    // No page break adds less to the height of the whole.
    Height least_of_a_break() const;

private:
    const Column& column_;
    std::vector<Height> down_; // the first line's baseline to each line's
};

// Whether a line belongs to the same entry as the one above it.
bool goes_on(const Column& column, std::size_t line);

// Between two lines, the second of index `line`: no heading parted from what it heads; two lines at
// least of a paragraph on either side, and of an entry, its head not counted.
bool may_break_before(const Column& column, std::size_t line);

}

#include "compiler/stages/pages/reading_order.hpp"

#include "compiler/stages/lines/paragraph_lines.hpp"

#include <algorithm>
#include <cmath>
#include <compare>
#include <functional>
#include <queue>
#include <utility>

#include <hb.h>

namespace quoin::pages {

namespace {

struct Box {
    double left = 0, bottom = 0, right = 0, top = 0;

    double middle() const { return (left + right) / 2; }
    double height() const { return top - bottom; }
    double area() const { return (right - left) * height(); }
    bool is_over(const Box& other) const { return left < other.right && other.left < right; }
    bool is_beside(const Box& other) const { return bottom <= other.top && other.bottom <= top; }
    Box with(const Box& other) const {
        return {std::min(left, other.left), std::min(bottom, other.bottom),
                std::max(right, other.right), std::max(top, other.top)};
    }
};

struct TextLine {
    Box letters; // from descender to ascender, as poppler has it
    Box ems;     // an em high, from the descender up, as pdfminer has it
    double base = 0, size = 0;
    composition::Region region{};
};

struct Block {
    Box box;
    double base = 0, size = 0;      // of its last line, of its first
    bool right = false;             // in the right column
    std::size_t begin = 0, end = 0; // of the lines, in reading order
};

// With the spaces at a line's end, which pdfminer counts.
double width_with_spaces(const composition::Run& run, const PlacedRun& placed) {
    double width = 0;
    for (std::uint32_t g = placed.begin; g < placed.end; ++g) {
        width += lines::advance(run, run.glyphs[g]) * placed.size / run.size;
        if (lines::is_space(run, run.glyphs[g])) width += placed.word_space;
    }
    return std::max(width, placed.width);
}

TextLine line_of(const composition::Paragraph& paragraph, const PlacedRun& placed) {
    const composition::Run& run = paragraph.runs[placed.run];
    const fonts::Face& face = *run.face;
    hb_font_extents_t extents{};
    hb_font_get_h_extents(face.hb_font(), &extents);
    const double unit = placed.size / face.units_per_em();
    const double foot = placed.y + extents.descender * unit, right = placed.x + placed.width;
    return {{placed.x, foot, right, placed.y + extents.ascender * unit},
            {placed.x, foot, placed.x + width_with_spaces(run, placed), foot + placed.size},
            placed.y,
            placed.size,
            paragraph.region};
}

std::vector<TextLine> lines_of(const composition::Composition& composition, const Page& page) {
    std::vector<TextLine> lines;
    const PlacedRun* before = nullptr;
    for (const PlacedRun& placed : page.runs) {
        const TextLine line = line_of(paragraph_of(composition, placed), placed);
        if (before && before->paragraph == placed.paragraph && before->y == placed.y) {
            lines.back().letters = lines.back().letters.with(line.letters);
            lines.back().ems = lines.back().ems.with(line.ems);
        } else {
            lines.push_back(line);
        }
        before = &placed;
    }
    return lines;
}

// The region of the column on the right; `whole` if there are no two.
composition::Region right_region(const std::vector<TextLine>& lines) {
    const auto first_of = [&](composition::Region region) {
        return std::ranges::find(lines, region, &TextLine::region);
    };
    const auto main = first_of(composition::Region::main),
               side = first_of(composition::Region::side);
    if (main == lines.end() || side == lines.end()) return composition::Region::whole;
    return main->letters.left < side->letters.left ? composition::Region::side
                                                   : composition::Region::main;
}

template<typename Joins>
std::vector<Block> blocks_of(const std::vector<TextLine>& lines, composition::Region right,
                             Box TextLine::*box, Joins joins) {
    std::vector<Block> blocks;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const TextLine& line = lines[i];
        const bool at_right = line.region == right;
        if (i > 0 && blocks.back().right == at_right && joins(blocks.back(), lines[i - 1], line)) {
            blocks.back().box = blocks.back().box.with(line.*box);
            blocks.back().base = line.base;
            blocks.back().end = i + 1;
        } else {
            blocks.push_back({line.*box, line.base, line.size, at_right, i, i + 1});
        }
    }
    return blocks;
}

// As poppler's: baselines no more than one and a half of the first line's size apart, of like size.
bool goes_on_below(const Block& block, const TextLine&, const TextLine& line) {
    constexpr double most_pitch = 1.5, like_size = 0.05;
    return line.base < block.base && block.base - line.base <= most_pitch * block.size &&
           std::abs(line.size - block.size) < like_size * block.size &&
           line.letters.is_over(block.box);
}

// As pdfminer's: of like height, less than half of it apart, one edge or the middle in line.
bool stands_in_line_below(const Block&, const TextLine& above, const TextLine& line) {
    const Box &upper = above.ems, &lower = line.ems;
    const double half = std::max(upper.height(), lower.height()) / 2;
    const auto alike = [&](double a, double b) { return std::abs(a - b) <= half; };
    return line.base < above.base && upper.bottom - lower.top < half && upper.is_over(lower) &&
           alike(upper.height(), lower.height()) &&
           (alike(upper.left, lower.left) || alike(upper.right, lower.right) ||
            alike(upper.middle(), lower.middle()));
}

// Two blocks side by side above a band and two below it.
bool are_rows(const Block& upper, const Block& lower, const Block& upper_right,
              const Block& lower_right) {
    if (upper_right.box.is_beside(lower.box) || upper_right.box.is_beside(lower_right.box) ||
        !lower_right.box.is_beside(lower.box))
        return false;
    const double half = std::min({upper.size, lower.size, upper_right.size, lower_right.size}) / 2;
    const auto alike = [&](auto place) {
        return std::abs(place(upper.box) - place(upper_right.box)) <= half &&
               std::abs(place(lower.box) - place(lower_right.box)) <= half;
    };
    return alike([](const Box& box) { return box.top; }) ||
           alike([](const Box& box) { return box.bottom; }) ||
           alike([](const Box& box) { return (box.top + box.bottom) / 2; });
}

bool has_rows(const std::vector<Block>& blocks) {
    const auto right = std::ranges::find(blocks, true, &Block::right);
    for (auto upper = blocks.begin(); upper != right; ++upper) {
        const auto lower = upper + 1;
        const auto beside = std::find_if(
            right, blocks.end(), [&](const Block& at) { return at.box.is_beside(upper->box); });
        const auto below = std::find_if(
            right, blocks.end(), [&](const Block& at) { return at.box.top < upper->box.bottom; });
        if (lower == right || beside == blocks.end() || below == blocks.end()) continue;
        if (are_rows(*upper, *lower, *beside, *below)) return true;
    }
    return false;
}

bool has_one_in_gap(const std::vector<Block>& blocks) {
    return std::ranges::any_of(blocks, [&](const Block& block) {
        bool above = false, below = false;
        for (const Block& other : blocks) {
            if (other.right == block.right) continue;
            if (other.box.is_beside(block.box)) return false;
            (other.box.bottom > block.box.top ? above : below) = true;
        }
        return above && below;
    });
}

class NearestFirst {
public:
    explicit NearestFirst(std::vector<Block> blocks)
        : blocks_(std::move(blocks)), joined_(blocks_.size(), false) {
        for (std::size_t b = 1; b < blocks_.size(); ++b)
            add_pairs_with(b);
    }

    bool keeps_order() {
        while (!pairs_.empty()) {
            Pair pair = pairs_.top();
            pairs_.pop();
            if (joined_[pair.a] || joined_[pair.b]) continue;
            if (!pair.parted && is_parted(pair)) { // as late as can be
                pair.parted = true;
                pairs_.push(pair);
            } else if (!join(pair)) {
                return false;
            }
        }
        return true;
    }

private:
    struct Pair {
        bool parted = false;
        double white = 0;
        std::size_t a = 0, b = 0;

        auto operator<=>(const Pair&) const = default;
    };

    // With all that came before it.
    void add_pairs_with(std::size_t b) {
        for (std::size_t a = 0; a < b; ++a) {
            if (joined_[a]) continue;
            const Box &one = blocks_[a].box, &other = blocks_[b].box;
            pairs_.push({false, one.with(other).area() - one.area() - other.area(), a, b});
        }
    }

    // Whether another stands between the two.
    bool is_parted(const Pair& pair) const {
        const Box both = blocks_[pair.a].box.with(blocks_[pair.b].box);
        for (std::size_t i = 0; i < blocks_.size(); ++i) {
            const Box& box = blocks_[i].box;
            if (i != pair.a && i != pair.b && !joined_[i] && box.is_over(both) &&
                box.bottom < both.top && both.bottom < box.top)
                return true;
        }
        return false;
    }

    // False if the two are no neighbours, or the second would be read first.
    bool join(const Pair& pair) {
        constexpr double right = 0.5, up = 1.5; // what of a place counts
        const auto place = [](const Box& box) {
            return right * box.left - up * (box.bottom + box.top);
        };
        Block first = blocks_[pair.a], second = blocks_[pair.b];
        if (place(second.box) < place(first.box)) std::swap(first, second);
        if (first.end != second.begin) return false;
        first.box = first.box.with(second.box);
        first.end = second.end;
        joined_[pair.a] = joined_[pair.b] = true;
        blocks_.push_back(first);
        joined_.push_back(false);
        add_pairs_with(blocks_.size() - 1);
        return true;
    }

    std::vector<Block> blocks_;
    std::vector<bool> joined_; // into another that stands behind them
    std::priority_queue<Pair, std::vector<Pair>, std::greater<>> pairs_;
};

bool reads_whole(const composition::Composition& composition, const Page& page) {
    std::vector<TextLine> lines = lines_of(composition, page);
    const composition::Region right = right_region(lines);
    if (right == composition::Region::whole) return true;
    std::stable_partition(lines.begin(), lines.end(),
                          [&](const TextLine& at) { return at.region != right; });
    const std::vector<Block> blocks = blocks_of(lines, right, &TextLine::letters, goes_on_below);
    return !has_rows(blocks) && !has_one_in_gap(blocks) &&
           NearestFirst(blocks_of(lines, right, &TextLine::ems, stands_in_line_below))
               .keeps_order();
}

}

bool columns_read_whole(const composition::Composition& composition, const Pages& pages) {
    return std::ranges::all_of(pages.pages,
                               [&](const Page& page) { return reads_whole(composition, page); });
}

}

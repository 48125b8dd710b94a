// The two published ways to order a page's text that compiler/stages/pages/reading_order.hpp holds
// pages to, spelled out: poppler 22.12's TextPage::coalesce and TextBlock::visitDepthFirst, and
// pdfminer 20221105's LTLayoutContainer, as far as lines of left-to-right text go.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <optional>
#include <set>
#include <utility>
#include <vector>

namespace quoin::reading_order_reference {

struct Rectangle { // pt, upwards
    double left = 0, bottom = 0, right = 0, top = 0;

    Rectangle with(const Rectangle& other) const {
        return {std::min(left, other.left), std::min(bottom, other.bottom),
                std::max(right, other.right), std::max(top, other.top)};
    }
    double area() const { return (right - left) * (top - bottom); }
    bool crosses(const Rectangle& other) const {
        return left < other.right && other.left < right && bottom < other.top && other.bottom < top;
    }
};

struct Line {
    Rectangle letters, ems;
    double base = 0, size = 0;
};

using Order = std::vector<std::size_t>; // of lines

// --- pdfminer's

inline bool are_neighbours(const Rectangle& a, const Rectangle& b) {
    const double half = (a.top - a.bottom) / 2;
    const auto alike = [&](double one, double other) { return std::abs(one - other) <= half; };
    return Rectangle{a.left, a.bottom - half, a.right, a.top + half}.crosses(b) &&
           alike(a.top - a.bottom, b.top - b.bottom) &&
           (alike(a.left, b.left) || alike(a.right, b.right) ||
            alike((a.left + a.right) / 2, (b.left + b.right) / 2));
}

struct Group {
    Rectangle box;
    Order order;
    bool alive = true;
};

inline std::vector<Group> text_boxes(const std::vector<Line>& lines) {
    std::vector<std::size_t> box(lines.size());
    std::iota(box.begin(), box.end(), std::size_t{0});
    for (std::size_t a = 0; a < lines.size(); ++a)
        for (std::size_t b = 0; b < lines.size(); ++b)
            if (a != b && are_neighbours(lines[a].ems, lines[b].ems))
                std::ranges::replace(box, std::max(box[a], box[b]), std::min(box[a], box[b]));
    std::vector<Group> groups;
    for (std::size_t a = 0; a < lines.size(); ++a) {
        if (box[a] != a) continue;
        Group group{lines[a].ems, {}};
        for (std::size_t b = a; b < lines.size(); ++b)
            if (box[b] == a) group.box = group.box.with(lines[b].ems), group.order.push_back(b);
        std::ranges::stable_sort(group.order, std::ranges::greater{},
                                 [&](std::size_t at) { return lines[at].ems.top; });
        groups.push_back(std::move(group));
    }
    return groups;
}

struct Pair {
    std::size_t a = 0, b = 0;
    bool parted = false;
    double white = std::numeric_limits<double>::infinity();
};

inline std::optional<Pair> nearest(const std::vector<Group>& groups,
                                   const std::set<std::pair<std::size_t, std::size_t>>& parted) {
    std::optional<Pair> best;
    for (std::size_t b = 0; b < groups.size(); ++b)
        for (std::size_t a = 0; a < b && groups[b].alive; ++a) {
            if (!groups[a].alive) continue;
            const Rectangle &one = groups[a].box, &other = groups[b].box;
            const Pair pair{a, b, parted.contains({a, b}),
                            one.with(other).area() - one.area() - other.area()};
            if (!best || std::pair(pair.parted, pair.white) < std::pair(best->parted, best->white))
                best = pair;
        }
    return best;
}

inline Order by_nearest(const std::vector<Line>& lines) {
    std::vector<Group> groups = text_boxes(lines);
    std::set<std::pair<std::size_t, std::size_t>> parted;
    while (const auto pair = nearest(groups, parted)) {
        Group &a = groups[pair->a], &b = groups[pair->b];
        Group both{a.box.with(b.box), {}};
        bool between = false;
        for (std::size_t i = 0; i < groups.size(); ++i)
            between = between || (groups[i].alive && i != pair->a && i != pair->b &&
                                  groups[i].box.crosses(both.box));
        if (between && !pair->parted) {
            parted.insert({pair->a, pair->b});
            continue;
        }
        const auto place = [](const Group& group) {
            return 0.5 * group.box.left - 1.5 * (group.box.bottom + group.box.top);
        };
        const bool swapped = place(b) < place(a);
        both.order = swapped ? b.order : a.order;
        const Order& rest = swapped ? a.order : b.order;
        both.order.insert(both.order.end(), rest.begin(), rest.end());
        a.alive = b.alive = false;
        groups.push_back(std::move(both));
    }
    return groups.empty() ? Order{} : groups.back().order;
}

// --- poppler's

struct Block {
    Rectangle box, reach; // reach: of the table it is in, or to the sides as far as lies free below
    Order lines;
    double size = 0, highest = 0, lowest = 0; // baselines
    int table = -1;
};

inline bool takes(const Block& block, const Line& line) {
    const bool above = line.base >= block.highest && line.base <= block.highest + 1.5 * block.size;
    const bool below = line.base <= block.lowest && line.base >= block.lowest - 1.5 * block.size;
    return (above || below) && line.letters.left < block.box.right &&
           line.letters.right > block.box.left &&
           std::abs(line.size - block.size) < 0.05 * block.size;
}

inline std::vector<Block> blocks_of(const std::vector<Line>& lines) {
    Order from_top(lines.size());
    std::iota(from_top.begin(), from_top.end(), std::size_t{0});
    std::ranges::stable_sort(from_top, std::ranges::greater{},
                             [&](std::size_t at) { return lines[at].base; });
    std::vector<bool> taken(lines.size(), false);
    std::vector<Block> blocks;
    const auto take = [&](Block& block, std::size_t at) {
        block.box = block.lines.empty() ? lines[at].letters : block.box.with(lines[at].letters);
        block.highest = std::max(block.highest, lines[at].base);
        block.lowest = std::min(block.lowest, lines[at].base);
        block.lines.push_back(at);
        taken[at] = true;
    };
    for (const std::size_t seed : from_top) {
        if (taken[seed]) continue;
        Block block;
        block.size = lines[seed].size;
        block.highest = block.lowest = lines[seed].base;
        take(block, seed);
        for (const std::size_t at : from_top)
            if (!taken[at] && takes(block, lines[at])) take(block, at);
        blocks.push_back(std::move(block));
    }
    return blocks;
}

inline bool beside(const Rectangle& a, const Rectangle& b) {
    return a.bottom <= b.top && a.top >= b.bottom;
}

inline bool over(const Rectangle& a, const Rectangle& b) {
    return a.left <= b.right && a.right >= b.left;
}

struct Four { // of a table, from the upper left, row by row
    Block *first = nullptr, *right = nullptr, *below = nullptr, *last = nullptr;

    bool is_whole() const {
        if (!right || !below || !last) return false;
        return !over(below->box, last->box) && !beside(right->box, last->box) &&
               !over(right->box, below->box) && !beside(right->box, below->box) &&
               over(last->box, right->box) && beside(last->box, below->box);
    }
    template<typename Place>
    bool rows_alike(double most, Place place) const {
        return std::abs(place(first->box) - place(right->box)) <= most &&
               std::abs(place(below->box) - place(last->box)) <= most;
    }
    template<typename Place>
    bool columns_alike(double most, Place place) const {
        return std::abs(place(first->box) - place(below->box)) <= most &&
               std::abs(place(right->box) - place(last->box)) <= most;
    }
    bool is_table() const {
        using R = const Rectangle&;
        const double size = std::min({first->size, right->size, below->size, last->size});
        const double x = 0.3 * size, y = 0.5 * size;
        return (columns_alike(x, [](R at) { return at.left; }) ||
                columns_alike(x, [](R at) { return at.right; }) ||
                columns_alike(x, [](R at) { return (at.left + at.right) / 2; })) &&
               (rows_alike(y, [](R at) { return at.top; }) ||
                rows_alike(y, [](R at) { return at.bottom; }) ||
                rows_alike(y, [](R at) { return (at.bottom + at.top) / 2; }));
    }
};

inline Four four_from(std::vector<Block>& blocks, Block& first) {
    Four four{&first};
    const Rectangle& box = first.box;
    for (Block& at : blocks) {
        if (&at == &first) continue;
        const Rectangle& other = at.box;
        const bool right = other.left > box.right, below = other.top < box.bottom;
        if (beside(box, other) && right && (!four.right || other.left < four.right->box.left))
            four.right = &at;
        else if (over(box, other) && below && (!four.below || other.top > four.below->box.top))
            four.below = &at;
        else if (right && below &&
                 (!four.last ||
                  (other.left < four.last->box.left && other.top > four.last->box.top)))
            four.last = &at;
    }
    return four;
}

inline void find_tables(std::vector<Block>& blocks) {
    int tables = 0;
    for (Block& block : blocks) {
        const Four four = four_from(blocks, block);
        if (!four.is_whole() || !four.is_table()) continue;
        int table = std::max({block.table, four.right->table, four.below->table, four.last->table});
        if (table < 0) table = tables++;
        for (Block* each : {&block, four.right, four.below, four.last})
            each->table = table;
    }
}

inline void widen(Block& block, const std::vector<Block>& blocks) {
    double right = std::numeric_limits<double>::infinity(), left = 0;
    for (const Block& at : blocks) {
        if (&at == &block || !beside(block.box, at.box)) continue;
        if (at.box.left > block.box.right) right = std::min(right, at.box.left);
        if (at.box.right < block.box.left) left = std::max(left, at.box.right);
    }
    for (const Block& at : blocks) {
        if (&at == &block || at.box.top > block.box.bottom) continue;
        if (at.box.right <= right) block.reach.right = std::max(block.reach.right, at.box.right);
        if (at.box.left >= left) block.reach.left = std::min(block.reach.left, at.box.left);
    }
}

inline void set_reach(std::vector<Block>& blocks) {
    for (Block& block : blocks) {
        block.reach = block.box;
        for (const Block& at : blocks)
            if (block.table >= 0 && at.table == block.table) block.reach = block.reach.with(at.box);
    }
    for (Block& block : blocks)
        if (block.table < 0) widen(block, blocks);
}

class Sorter {
public:
    explicit Sorter(const std::vector<Block>& blocks)
        : blocks_(blocks), visited_(blocks.size(), false) {}

    Order run() {
        for (std::size_t i = 0; i < blocks_.size(); ++i)
            visit(i);
        return order_;
    }

private:
    static bool is_above(const Block& a, const Block& b) {
        return over(a.reach, b.reach) && a.reach.top > b.reach.top;
    }

    bool is_before(const Block& a, const Block& b) const {
        if (a.table >= 0 && a.table == b.table)
            return (a.box.right <= b.box.left && beside(a.box, b.box)) || a.box.bottom >= b.box.top;
        if (is_above(a, b)) return true;
        if (a.reach.right > b.reach.left) return false;
        return std::ranges::none_of(blocks_, [&](const Block& at) {
            return &at != &a && &at != &b && is_above(b, at) && is_above(at, a);
        });
    }

    void visit(std::size_t i) {
        if (visited_[i]) return;
        visited_[i] = true;
        for (std::size_t j = 0; j < blocks_.size(); ++j)
            if (!visited_[j] && is_before(blocks_[j], blocks_[i])) visit(j);
        order_.insert(order_.end(), blocks_[i].lines.begin(), blocks_[i].lines.end());
    }

    const std::vector<Block>& blocks_;
    std::vector<bool> visited_;
    Order order_;
};

inline Order by_blocks(const std::vector<Line>& lines) {
    std::vector<Block> blocks = blocks_of(lines);
    find_tables(blocks);
    set_reach(blocks);
    return Sorter(blocks).run();
}

}

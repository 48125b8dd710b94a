// The dynamic programme of Knuth and Plass: active breakpoints, one for each fitness class (and
// line number, if a number of lines is asked for) of each feasible break.
#include "compiler/stages/lines/break_lines.hpp"

#include "compiler/base/counted_work.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::lines {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::size_t no_node = std::numeric_limits<std::size_t>::max();

struct Totals {
    double width = 0, stretch = 0, shrink = 0;
};

struct BreakNode {
    std::size_t item = 0; // the break
    std::size_t line = 0; // lines before it
    int fitness = 1;
    bool flagged = false;
    Totals after; // sums up to the next line's first item
    double demerits = 0;
    double ratio = 0;
    std::size_t previous = no_node;
};

int fitness_of(double ratio) {
    if (ratio < -0.5) return 0;
    if (ratio <= 0.5) return 1;
    return ratio <= 1 ? 2 : 3;
}

bool is_legal(std::span<const Item> items, std::size_t at) {
    const Item& item = items[at];
    if (item.kind == Item::Kind::penalty) return item.penalty < infinite_penalty;
    return item.kind == Item::Kind::glue && at > 0 && items[at - 1].kind == Item::Kind::box;
}

bool is_forced(const Item& item) {
    return item.kind == Item::Kind::penalty && item.penalty <= -infinite_penalty;
}

void add(Totals& totals, const Item& item) {
    if (item.kind == Item::Kind::penalty) return;
    totals.width += item.width;
    totals.stretch += item.stretch;
    totals.shrink += item.shrink;
}

// What follows a break up to the next box or forced break is no part of the next line.
Totals totals_after(std::span<const Item> items, std::size_t at, Totals totals) {
    for (std::size_t i = at; i < items.size(); ++i) {
        if (items[i].kind == Item::Kind::box || (i > at && is_forced(items[i]))) break;
        add(totals, items[i]);
    }
    return totals;
}

double adjustment_ratio(const Totals& from, const Totals& to, double extra, double measure) {
    const double room = measure - (to.width - from.width + extra);
    if (room == 0) return 0;
    const double give = room > 0 ? to.stretch - from.stretch : to.shrink - from.shrink;
    if (give <= 0) return room > 0 ? infinity : -infinity;
    return room / give;
}

double line_demerits(double ratio, double penalty) {
    const double badness = 1 + 100 * std::abs(ratio * ratio * ratio);
    if (penalty <= -infinite_penalty) return badness * badness;
    if (penalty < 0) return badness * badness - penalty * penalty;
    return (badness + penalty) * (badness + penalty);
}

class Breaker {
public:
    Breaker(std::span<const Item> items, double measure, const BreakingRules& rules)
        : items_(items), measure_(measure), rules_(rules) {
        BreakNode start;
        start.after = totals_after(items, 0, {});
        nodes_.push_back(start);
        active_.push_back(0);
    }

    Breaking run() {
        for (std::size_t at = 0; at < items_.size() && !active_.empty(); ++at) {
            if (is_legal(items_, at)) try_break(at);
            add(totals_, items_[at]);
        }
        return best();
    }

private:
    void try_break(std::size_t at) {
        std::vector<BreakNode> found;
        const bool forced = is_forced(items_[at]);
        const double extra = items_[at].kind == Item::Kind::penalty ? items_[at].width : 0;
        std::size_t kept = 0;
        count_work(Work::active_lines, active_.size());
        for (const std::size_t from : active_) {
            const double ratio = adjustment_ratio(nodes_[from].after, totals_, extra, measure_);
            if (ratio >= -1 && ratio <= rules_.tolerance) offer(found, from, at, ratio);
            if (ratio >= -1 && !forced) active_[kept++] = from;
        }
        active_.resize(kept);
        for (const BreakNode& node : found) {
            active_.push_back(nodes_.size());
            nodes_.push_back(node);
        }
    }

    // Keeps the line if it is the best so far of its kind.
    void offer(std::vector<BreakNode>& found, std::size_t from, std::size_t at,
               double ratio) const {
        const Item& item = items_[at];
        BreakNode node;
        node.item = at;
        node.line = rules_.lines == 0 ? 0 : nodes_[from].line + 1;
        if (node.line > rules_.lines) return;
        node.fitness = fitness_of(ratio);
        node.flagged = item.kind == Item::Kind::penalty && item.flagged;
        node.ratio = ratio;
        node.previous = from;
        node.demerits = nodes_[from].demerits +
                        line_demerits(ratio, item.kind == Item::Kind::penalty ? item.penalty : 0);
        if (node.flagged && nodes_[from].flagged) node.demerits += rules_.flagged_demerits;
        if (std::abs(node.fitness - nodes_[from].fitness) > 1)
            node.demerits += rules_.fitness_demerits;
        node.after = totals_after(items_, at, totals_);
        const auto rival = std::find_if(found.begin(), found.end(), [&](const BreakNode& other) {
            return other.line == node.line && other.fitness == node.fitness;
        });
        if (rival == found.end())
            found.push_back(node);
        else if (node.demerits < rival->demerits)
            *rival = node;
    }

    Breaking best() const {
        std::size_t last = no_node;
        for (const std::size_t node : active_)
            if (nodes_[node].item + 1 == items_.size() && nodes_[node].line == rules_.lines)
                if (last == no_node || nodes_[node].demerits < nodes_[last].demerits) last = node;
        Breaking breaking;
        if (last == no_node) return breaking;
        breaking.demerits = nodes_[last].demerits;
        for (std::size_t node = last; nodes_[node].previous != no_node;
             node = nodes_[node].previous)
            breaking.breaks.push_back({nodes_[node].item, nodes_[node].ratio});
        std::reverse(breaking.breaks.begin(), breaking.breaks.end());
        return breaking;
    }

    std::span<const Item> items_;
    double measure_;
    const BreakingRules& rules_;
    Totals totals_; // of the items before the one at hand
    std::vector<BreakNode> nodes_;
    std::vector<std::size_t> active_; // indices into nodes_
};

}

Breaking break_justified(std::span<const Item> items, double measure, const BreakingRules& rules) {
    return Breaker(items, measure, rules).run();
}

}

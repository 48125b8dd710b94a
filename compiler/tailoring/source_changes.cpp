#include "compiler/tailoring/source_changes.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <string_view>
#include <utility>

namespace quoin::tailoring {

namespace {

using Kind = Part::Kind;

// The items of a list as they are typed: parted where they are parted when it is read.
std::vector<std::string> typed_items(const std::string& typed, char separator) {
    std::vector<std::size_t> ends, open;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        if (typed[i] == '\\') {
            ++i;
        } else if (typed[i] == separator) {
            ends.push_back(i);
        } else if (typed[i] == '(') {
            open.push_back(ends.size());
        } else if (typed[i] == ')' && !open.empty()) {
            ends.resize(open.back());
            open.pop_back();
        }
    }
    ends.push_back(typed.size());
    std::vector<std::string> items;
    std::size_t begin = 0;
    for (const std::size_t end : ends) {
        const std::size_t from = typed.find_first_not_of(' ', begin);
        if (from < end) {
            const std::string item = typed.substr(from, end - from);
            items.push_back(item.substr(0, item.find_last_not_of(' ') + 1));
        }
        begin = end + 1;
    }
    return items;
}

struct TypedItem {
    std::string text;
    char parted_by = ';'; // from the one above it
};

std::vector<TypedItem> typed_items(const std::string& typed, bool group) {
    std::vector<TypedItem> all;
    for (const std::string& part : typed_items(typed, ';')) {
        char parted_by = ';';
        for (const std::string& item :
             group ? typed_items(part, ',') : std::vector<std::string>{part}) {
            all.push_back({item, parted_by});
            parted_by = ',';
        }
    }
    return all;
}

// ` {lab !field}`, as it stood.
std::string typed_tags(const syntax::Node& node) {
    std::string text;
    for (const syntax::TagMark& tag : node.tags)
        text += (text.empty() ? "" : " ") + std::string(tag.leaves_out ? "!" : "") + tag.name;
    return text.empty() ? text : " {" + text + "}";
}

// Folded where it grows long.
std::vector<std::string> folded(const std::string& text) {
    constexpr std::size_t widest = 98;
    std::vector<std::string> lines;
    std::string rest = text;
    while (rest.size() > widest) {
        const std::size_t space = rest.rfind(' ', widest);
        if (space == std::string::npos || space < 4) break;
        lines.push_back(rest.substr(0, space));
        rest = "  " + rest.substr(space + 1);
    }
    lines.push_back(rest);
    return lines;
}

class Changing {
public:
    Changing(const model::Resume& resume, const Offer& offer, const Taken& taken,
             SourceNodes& nodes)
        : resume_(resume), offer_(offer), taken_(taken), nodes_(nodes) {}

    Changes run(const std::vector<LeftOut>& left_out) {
        for (const LeftOut& each : left_out)
            if (offer_.parts[each.piece].items)
                shorten(each);
            else
                leave_out(each);
        for (std::size_t p = 0; p < offer_.parts.size(); ++p) {
            if (taken_[p] && offer_.parts[p].kind == Kind::position) reorder(p);
            if (taken_[p] && is_wording(p)) take_off_tags(place_of(resume_, offer_.parts[p]));
        }
        return std::move(changes_);
    }

private:
    LineChange& at(std::uint32_t file, std::uint32_t line) { return changes_[file].lines[line]; }

    void make_comments(const std::vector<NodeLines>& nodes, std::uint32_t file,
                       const LeftOut& why) {
        if (nodes.empty()) return;
        at(file, nodes.front().first).before.push_back(why);
        for (const NodeLines& node : nodes)
            for (std::uint32_t line = node.first; line <= node.last; ++line)
                at(file, line).is_comment = true;
    }

    bool is_wording(std::size_t p) const {
        const std::size_t within = offer_.problem.pieces[p].within;
        return within != none && offer_.parts[within].kind == Kind::one_of &&
               !offer_.parts[p].items;
    }

    // The one wording that is left is for every build.
    void take_off_tags(const Place& place) {
        const NodeLines* node = nodes_.at(place);
        if (!node || node->node->tags.empty()) return;
        const std::uint32_t line = node->node->tags.front().place.line;
        const std::string_view text = nodes_.line(place.file, line);
        const std::size_t end = text.substr(0, text.rfind('{')).find_last_not_of(' ');
        if (end != std::string_view::npos && line == node->last)
            at(place.file, line).instead = text.substr(0, end + 1);
    }

    void leave_out(const LeftOut& each) {
        const Part& part = offer_.parts[each.piece];
        const Place place = place_of(resume_, part);
        make_comments(nodes_of(part, place), place.file, each);
    }

    std::vector<NodeLines> nodes_of(const Part& part, const Place& place) {
        if (part.bullet != none) {
            std::vector<NodeLines> found;
            const auto& bullets = position_of(resume_, part).bullets;
            for (std::size_t b = part.bullet; b < part.past; ++b)
                if (const NodeLines* node = nodes_.at(bullets[b].place)) found.push_back(*node);
            return found;
        }
        if (part.field != none) return nodes_of_field(part);
        if (part.entry == none) return nodes_.from(place, after_section(part.section, place));
        return nodes_.from(place, after_position(part, place));
    }

    const model::Field& field(const Part& part) const {
        if (part.section == none) return resume_.heading[part.field];
        return position_of(resume_, part).fields[part.field];
    }

    // Lines without a label below each other are one group.
    std::vector<NodeLines> nodes_of_field(const Part& part) {
        const model::Field& list = field(part);
        std::set<std::uint32_t> lines{list.label_place.line};
        if (const auto* items = std::get_if<std::vector<model::Text>>(&list.value))
            for (const model::Text& item : *items)
                for (const model::Span& span : item.spans)
                    lines.insert(span.place.line);
        std::vector<NodeLines> found;
        for (const std::uint32_t line : lines) {
            const NodeLines* node = nodes_.at({list.label_place.file, line, 0, 0});
            if (node && (found.empty() || found.back().first != node->first))
                found.push_back(*node);
        }
        return found;
    }

    static constexpr std::uint32_t end_of_file = std::numeric_limits<std::uint32_t>::max();

    // Of its entry's positions and its section's entries, the one that begins next.
    std::uint32_t after_position(const Part& part, const Place& place) {
        const bool further = part.further != none;
        auto& begins = begins_[{part.section, further}];
        if (begins.empty())
            for (const model::Entry& entry : resume_.sections[part.section].entries) {
                begins.insert({entry.place.file, entry.place.line});
                for (const model::Entry& other : entry.further)
                    if (further) begins.insert({other.place.file, other.place.line});
            }
        const auto next = begins.upper_bound({place.file, place.line});
        return next != begins.end() && next->first == place.file ? next->second : end_of_file;
    }

    std::uint32_t after_section(std::size_t section, const Place& place) const {
        for (std::size_t s = section + 1; s < resume_.sections.size(); ++s)
            if (resume_.sections[s].place.file == place.file) return resume_.sections[s].place.line;
        return end_of_file;
    }

    void shorten(const LeftOut& each) {
        const Part& part = offer_.parts[each.piece];
        const model::Field& list = field(part);
        const std::vector<NodeLines> nodes = nodes_of_field(part);
        const bool group = list.name == trade::FieldName::group;
        std::vector<std::vector<TypedItem>> typed;
        std::size_t count = 0;
        for (const NodeLines& node : nodes) {
            typed.push_back(typed_items(node.node->value.joined(), group));
            count += typed.back().size();
        }
        const auto& items = std::get<std::vector<model::Text>>(list.value);
        if (count != items.size()) return; // not as it was read: left whole
        make_comments(nodes, list.label_place.file, each);
        std::size_t item = 0;
        for (std::size_t n = 0; n < nodes.size(); ++n) {
            const std::string left = taken_items(typed[n], *part.items, item);
            if (left.empty()) continue;
            at(list.label_place.file, nodes[n].last).after =
                folded(typed_label(*nodes[n].node) + left + typed_tags(*nodes[n].node));
        }
    }

    static std::string taken_items(const std::vector<TypedItem>& typed,
                                   const std::vector<std::size_t>& taken, std::size_t& item) {
        std::string left;
        char parted_by = 0;
        for (const TypedItem& each : typed) {
            if (parted_by != ';') parted_by = each.parted_by;
            if (!std::ranges::binary_search(taken, item++)) continue;
            if (!left.empty()) left += std::string(1, parted_by) + ' ';
            left += each.text;
            parted_by = 0;
        }
        return left;
    }

    static std::string typed_label(const syntax::Node& node) {
        if (node.kind == syntax::Node::Kind::bullet)
            return std::string(static_cast<std::size_t>(node.level), '-') + ' ';
        return node.kind == syntax::Node::Kind::field ? node.spelled + ": " : std::string();
    }

    void reorder(std::size_t position) {
        const std::vector<std::size_t> order = bullets_in_order(offer_, taken_, position);
        std::vector<std::size_t> sorted = order;
        std::ranges::sort(sorted);
        if (order == sorted) return;
        Reordering moved;
        const Place place = place_of(resume_, offer_.parts[sorted.front()]);
        for (const std::size_t bullet : sorted) {
            const auto nodes = nodes_of(offer_.parts[bullet], place);
            if (nodes.empty()) return;
            moved.places.push_back({nodes.front().first, nodes.back().last});
        }
        for (const std::size_t bullet : order)
            moved.order.push_back(
                static_cast<std::size_t>(std::ranges::find(sorted, bullet) - sorted.begin()));
        changes_[place.file].reorderings.push_back(std::move(moved));
    }

    const model::Resume& resume_;
    const Offer& offer_;
    const Taken& taken_;
    SourceNodes& nodes_;
    Changes changes_;
    using Lines = std::set<std::pair<std::uint32_t, std::uint32_t>>; // by file
    std::map<std::pair<std::size_t, bool>, Lines>
        begins_; // by section, with further positions or not
};

}

Changes changes_of(const model::Resume& resume, const Offer& offer, const Taken& taken,
                   const std::vector<LeftOut>& left_out, SourceNodes& nodes) {
    return Changing(resume, offer, taken, nodes).run(left_out);
}

}

#include "compiler/tailoring/source_nodes.hpp"

#include "compiler/stages/syntax/parse.hpp"

#include <algorithm>

namespace quoin::tailoring {

namespace {

NodeLines lines_of(const syntax::Node& node) {
    NodeLines lines{node.place.line, node.place.line, &node, false};
    for (const syntax::Slice& slice : node.value.slices)
        lines.last = std::max(lines.last, slice.place.line);
    for (const syntax::TagMark& tag : node.tags)
        lines.last = std::max(lines.last, tag.place.line);
    lines.opens = node.label.text == "include";
    return lines;
}

void add_nodes(const std::vector<syntax::Block>& blocks, std::vector<NodeLines>& nodes) {
    for (const syntax::Block& block : blocks)
        for (const syntax::Node& node : block)
            if (node.kind != syntax::Node::Kind::comment) nodes.push_back(lines_of(node));
}

}

SourceNodes::SourceNodes(const Sources& sources) : sources_(sources) {}

const SourceNodes::File& SourceNodes::file(std::uint32_t index) {
    const auto [found, added] = files_.try_emplace(index);
    File& file = found->second;
    if (!added) return file;
    Diagnostics unheard; // it was read before
    file.tree = syntax::parse(sources_, index, unheard);
    add_nodes(file.tree.heading, file.nodes);
    for (const syntax::SectionTree& section : file.tree.sections) {
        file.nodes.push_back(lines_of(section.opening));
        file.nodes.back().opens = true;
        add_nodes(section.blocks, file.nodes);
    }
    return file;
}

const std::vector<NodeLines>& SourceNodes::in(std::uint32_t index) {
    return file(index).nodes;
}

const NodeLines* SourceNodes::at(const Place& place) {
    const std::vector<NodeLines>& nodes = in(place.file);
    const auto past = std::ranges::upper_bound(nodes, place.line, {}, &NodeLines::first);
    if (past == nodes.begin()) return nullptr;
    const NodeLines& found = *std::prev(past);
    return place.line <= found.last ? &found : nullptr;
}

std::vector<NodeLines> SourceNodes::from(const Place& place, std::uint32_t end) {
    const std::vector<NodeLines>& nodes = in(place.file);
    std::vector<NodeLines> found;
    auto node = std::ranges::upper_bound(nodes, place.line, {}, &NodeLines::first);
    if (node != nodes.begin()) --node; // a value may begin below its label
    for (; node != nodes.end() && node->first < end; ++node) {
        if (node->opens && !found.empty()) break;
        found.push_back(*node);
    }
    return found;
}

}

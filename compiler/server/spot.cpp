#include "compiler/server/spot.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/syntax/parse.hpp"
#include "compiler/trade/section_titles.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <algorithm>

namespace quoin::server {

namespace {

std::uint32_t first_line_of(const syntax::Block& block) {
    return block.front().place.line;
}

const syntax::Block* last_block_before(const std::vector<syntax::Block>& blocks,
                                       std::uint32_t line) {
    const syntax::Block* found = nullptr;
    for (const syntax::Block& block : blocks)
        if (!block.empty() && first_line_of(block) <= line) found = &block;
    return found && last_line_of(found->back()) + 1 >= line ? found : nullptr;
}

// By `holds:`, else by what was last found of a section of that title, else by the title.
std::optional<trade::Holds> holds_of(const syntax::SectionTree& section,
                                     const session::State* last) {
    for (const syntax::Block& block : section.blocks)
        for (const syntax::Node& node : block)
            if (node.label.text == "holds")
                if (const auto named = trade::named<trade::Holds>(node.value.joined()))
                    return named;
    const std::string title = section.opening.value.joined();
    if (last && last->read.resume)
        for (const model::Section& known : last->read.resume->sections)
            if (known.title.plain() == title) return known.holds;
    return trade::usual_holds(title);
}

void split_line(DocumentSpot& spot) {
    const std::string_view before = spot.before;
    if (before.starts_with('-')) {
        spot.is_bullet = true;
        spot.value = trimmed(before.substr(before.find_first_not_of('-') == before.npos
                                               ? before.size()
                                               : before.find_first_not_of('-')));
        return;
    }
    const std::size_t colon = before.find(':');
    if (colon == before.npos) return;
    spot.label = lower_case(trimmed(before.substr(0, colon)));
    std::ranges::replace(spot.label, ' ', '-');
    spot.value = before.substr(std::min(before.find_first_not_of(' ', colon + 1), before.size()));
}

void note_labels(const syntax::Block* block, DocumentSpot& spot) {
    if (!block) return;
    for (const syntax::Node& node : *block)
        if (node.kind == syntax::Node::Kind::field && node.place.line != spot.line)
            spot.labels.push_back(node.label.text);
}

}

std::uint32_t last_line_of(const syntax::Node& node) {
    return node.value.slices.empty() ? node.place.line : node.value.slices.back().place.line;
}

const syntax::SectionTree* section_at(const syntax::Tree& tree, std::uint32_t line) {
    const syntax::SectionTree* found = nullptr;
    for (const syntax::SectionTree& section : tree.sections)
        if (section.opening.place.line < line) found = &section;
    return found;
}

const syntax::Block* block_at(const syntax::Tree& tree, std::uint32_t line) {
    const syntax::SectionTree* section = section_at(tree, line);
    return last_block_before(section ? section->blocks : tree.heading, line);
}

OwnTree own_tree(const session::Document& document) {
    OwnTree own;
    Diagnostics ignored;
    if (const auto file = own.sources.add("document", document.text, ignored))
        own.tree = syntax::parse(own.sources, *file, ignored);
    return own;
}

DocumentSpot spot_at(const session::Document& document, const session::State* last,
                     session::Position position, session::Units units) {
    const session::TextLines lines(document.text);
    DocumentSpot spot;
    spot.line = position.line + 1;
    spot.whole = lines.line(position.line);
    if (position.line < lines.count())
        spot.before =
            spot.whole.substr(0, lines.offset_of(position, units) - lines.start_of(position.line));
    split_line(spot);
    const OwnTree own = own_tree(document);
    if (const syntax::SectionTree* section = section_at(own.tree, spot.line)) {
        spot.in_heading = false;
        spot.section = section->opening.value.joined();
        spot.holds = holds_of(*section, last);
        spot.begins_section =
            section->blocks.empty() || first_line_of(section->blocks.front()) >= spot.line;
    }
    note_labels(block_at(own.tree, spot.line), spot);
    return spot;
}

}

// What stands at a position of a document, by the newest text alone.
#pragma once

#include "compiler/server/desk.hpp"
#include "compiler/stages/syntax/tree.hpp"
#include "compiler/trade/kinds.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::server {

struct DocumentSpot {
    std::uint32_t line = 0; // from 1
    std::string before;     // of the line, up to the position
    std::string whole;      // the line
    std::string label;      // as folded; empty if none stands before the position
    std::string value;      // behind the label or the dash, up to the position
    bool is_bullet = false;
    bool in_heading = true;            // before the first section
    std::string section;               // its title
    std::optional<trade::Holds> holds; // what it holds, where that can be told
    std::vector<std::string> labels;   // of the entry, or of the heading, other than this one
    bool begins_section = false;       // nothing of the section stands above but its line
};

// `last` tells what sections hold, as far as it is of the same text.
DocumentSpot spot_at(const session::Document& document, const session::State* last,
                     session::Position position, session::Units units);

// The nodes of the entry, or of the heading's lines, that a line from 1 stands in.
const syntax::Block* block_at(const syntax::Tree& tree, std::uint32_t line);
// The section that the line stands in; null for the heading.
const syntax::SectionTree* section_at(const syntax::Tree& tree, std::uint32_t line);
std::uint32_t last_line_of(const syntax::Node& node);

// A document's own text as a tree.
struct OwnTree {
    Sources sources;
    syntax::Tree tree;
};
OwnTree own_tree(const session::Document& document);

}

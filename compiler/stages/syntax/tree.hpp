// The syntax tree: the lines of a labelled-line file grouped as the markup groups them, nothing
// interpreted yet. Résumé files and theme files share it.
#pragma once

#include "compiler/base/place.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace quoin::syntax {

struct Slice { // a piece of one physical line
    std::string text;
    Place place;
};

void take_off_front(Slice& slice, std::size_t count);

struct Value { // one slice for each physical line: a folded value has several
    std::vector<Slice> slices;

    std::string joined() const; // with one space where lines were folded
    Place place() const;        // of the first slice
    bool empty() const;
};

struct TagMark { // one word of `{lab !field}`
    std::string name;
    bool leaves_out = false; // `!`
    Place place;
};

struct Node {
    enum class Kind { comment, field, bullet, bare }; // bare: neither label nor dash
    Kind kind = Kind::field;
    Slice label;               // fields only; the text folded to lower case, spaces made `-`,
                               // but for groups' labels see spelled
    std::string spelled;       // the label as typed
    int level = 1;             // bullets only: 1 or 2
    Value value;               // without tags; for comments the text after `#`
    std::vector<TagMark> tags; // `{…}` at the value's end
    Place place;               // of the whole first line
};

// The `section:` line of a title that stands, at the line of `place`, without one.
Node section_node(const Place& place);

using Block = std::vector<Node>; // lines up to a blank line or a section

struct SectionTree {
    Node opening;              // the `section:` line
    std::vector<Block> blocks; // parted by blank lines; empty blocks are not kept
};

struct Tree {
    std::uint32_t file = 0;
    std::vector<Block> heading;
    std::vector<SectionTree> sections;
};

// The tree as markup again: parse(print(tree)) gives the same tree but for places.
std::string print(const Tree& tree);

// One line a node, indented by depth, for tests and bug reports; equal dumps exactly when trees
// are equal but for places (with `places`, including them).
std::string dump(const Tree& tree, bool places = false);

}

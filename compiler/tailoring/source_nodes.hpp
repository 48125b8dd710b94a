// The files of a résumé by their lines: which node of the syntax each line is of.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/stages/syntax/tree.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <string_view>
#include <vector>

namespace quoin::tailoring {

struct NodeLines { // a node, comments left out, with its folds
    std::uint32_t first = 0, last = 0;
    const syntax::Node* node = nullptr;
    bool opens = false; // a section, or files taken in: it ends the entry above
};

class SourceNodes {
public:
    explicit SourceNodes(const Sources& sources);

    std::string_view line(std::uint32_t file, std::uint32_t number) const {
        return sources_.file(file).line(number);
    }
    const std::vector<NodeLines>& in(std::uint32_t file); // in order
    const NodeLines* at(const Place& place);              // null if there is none
    // From the one at `place` on, those before `end` (a line) and before what opens something else.
    std::vector<NodeLines> from(const Place& place, std::uint32_t end);

private:
    struct File {
        syntax::Tree tree;
        std::vector<NodeLines> nodes;
    };

    const File& file(std::uint32_t index);

    const Sources& sources_;
    std::map<std::uint32_t, File> files_;
};

}

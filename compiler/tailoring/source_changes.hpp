// What becomes of each line of a résumé's source when it is tailored.
#pragma once

#include "compiler/base/source.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/tailoring/left_out.hpp"
#include "compiler/tailoring/parts.hpp"
#include "compiler/tailoring/source_nodes.hpp"

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace quoin::tailoring {

struct LineChange {
    std::vector<LeftOut> before;    // why: a comment each, above the line
    bool is_comment = false;        // it becomes one
    std::string instead;            // what it becomes otherwise; empty: it stays
    std::vector<std::string> after; // lines below it
};

struct Stretch { // of lines
    std::uint32_t first = 0, last = 0;
};

struct Reordering {                 // where each of these stands, another of them comes to stand
    std::vector<Stretch> places;    // in order
    std::vector<std::size_t> order; // of which each takes the first, the second, … place
};

struct FileChanges {
    std::map<std::uint32_t, LineChange> lines;
    std::vector<Reordering> reorderings;

    bool is_any() const { return !lines.empty() || !reorderings.empty(); }
};

using Changes = std::map<std::uint32_t, FileChanges>; // by file

Changes changes_of(const model::Resume& resume, const Offer& offer, const Taken& taken,
                   const std::vector<LeftOut>& left_out, SourceNodes& nodes);

}

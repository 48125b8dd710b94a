#include "compiler/server/heading_lines.hpp"

namespace quoin::server {

namespace {

// Of the last line of a value, or of the line itself.
Place last_place(const syntax::Node& node) {
    return node.value.slices.empty() ? node.place : node.value.slices.back().place;
}

}

EditBook with_heading_line(const Desk& desk, const session::State& state, Ranges& ranges,
                           const std::string& line) {
    EditBook book(desk);
    if (!state.read.file) return book;
    const syntax::Tree tree = session::tree_of(state, *state.read.file);
    const auto& path = state.read.sources.file(*state.read.file).path;
    if (tree.heading.empty()) return book.replace(path, {}, line + '\n');
    Place whole = last_place(tree.heading.front().back());
    whole.column = whole.length = 0;
    const session::Position end = ranges.of(whole).end;
    return book.replace(path, {end, end}, '\n' + line);
}

}

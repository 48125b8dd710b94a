#include "compiler/server/edits.hpp"

#include "compiler/base/utf8.hpp"

#include <algorithm>

namespace quoin::server {

EditBook& EditBook::replace(const std::filesystem::path& path, const session::Range& range,
                            std::string text) {
    Json& own = changes_.try_emplace(desk_.uri_of(path), Json::array()).first->second;
    Json edit{{"range", to_json(range)}, {"newText", std::move(text)}};
    if (std::ranges::find(own, edit) == own.end()) own.push_back(std::move(edit));
    return *this;
}

EditBook& EditBook::rewrite(const std::filesystem::path& path, std::string_view from,
                            std::string_view to) {
    if (from == to) return *this;
    const std::size_t shorter = std::min(from.size(), to.size());
    std::size_t head = 0, tail = 0;
    while (head < shorter && from[head] == to[head])
        ++head;
    while (head > 0 && head < from.size() && continues_character(from[head]))
        --head;
    while (tail < shorter - head && from[from.size() - 1 - tail] == to[to.size() - 1 - tail])
        ++tail;
    while (tail > 0 && continues_character(from[from.size() - tail]))
        --tail;
    const session::TextLines lines(from);
    return replace(
        path,
        {lines.position_of(head, desk_.units), lines.position_of(from.size() - tail, desk_.units)},
        std::string(to.substr(head, to.size() - tail - head)));
}

EditBook& EditBook::add(const session::State& state, Ranges& ranges, const Edits& edits) {
    for (const Edit& edit : edits)
        if (const auto range = ranges.of_edit(edit.place))
            replace(state.read.sources.file(edit.place.file).path, *range, edit.replacement);
    return *this;
}

}

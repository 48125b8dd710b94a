#include "compiler/server/source_cuts.hpp"

#include <string_view>

namespace quoin::server {

namespace {

// What stands before words of a list is a `;`; a comma may belong to the words before it.
Edit edit_of_place(const Sources& sources, Place place) {
    const std::string_view line = sources.file(place.file).line(place.line);
    std::size_t begin = place.column - 1, end = begin + place.length;
    while (begin > 0 && (line[begin - 1] == ' ' || line[begin - 1] == ';'))
        --begin;
    if (begin == 0) {
        while (end < line.size() && line[end] == ' ')
            ++end;
        begin = end == line.size() ? 0 : place.column - 1;
    }
    place.column = static_cast<std::uint32_t>(begin + 1);
    const bool whole_line = begin == 0 && end == line.size();
    place.length = static_cast<std::uint32_t>(end - begin + (whole_line ? 1 : 0));
    return {place, ""};
}

}

Edits edits_of_cut(const session::State& state, const fit::Cut& cut) {
    Edits edits;
    for (const Place& place : cut.places)
        if (place.line != 0 && place.column != 0)
            edits.push_back(edit_of_place(state.read.sources, place));
    return edits;
}

}

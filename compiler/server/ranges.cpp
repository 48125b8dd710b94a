#include "compiler/server/ranges.hpp"

#include "compiler/stages/model/resume.hpp"

namespace quoin::server {

using session::Range;

Ranges::File& Ranges::file(std::uint32_t index) {
    const auto known = files_.find(index);
    if (known != files_.end()) return known->second;
    const SourceFile& source = state_.read.sources.file(index);
    return files_.try_emplace(index, File{SourceMap(source), session::TextLines(source.bytes)})
        .first->second;
}

Range Ranges::whole_line(std::uint32_t index, std::uint32_t line) {
    const std::string_view text = file(index).lines.line(line);
    return {{line, 0}, {line, session::units_in(text, units_)}};
}

Range Ranges::of(const Place& place) {
    if (place.line == 0) {
        const auto& resume = state_.read.resume;
        const model::Field* name = resume ? resume->find(trade::FieldName::name) : nullptr;
        if (name && name->place.file == place.file && name->place.line != 0) return of(name->place);
        return whole_line(place.file, 0);
    }
    if (place.column == 0) return whole_line(place.file, place.line - 1);
    if (const auto range = of_edit(place)) return *range;
    return whole_line(place.file, place.line - 1);
}

std::optional<Range> Ranges::of_edit(const Place& place) {
    File& own = file(place.file);
    const auto bytes = own.map.bytes_of(place);
    if (!bytes) return std::nullopt;
    return Range{own.lines.position_of(bytes->begin, units_),
                 own.lines.position_of(bytes->end, units_)};
}

}

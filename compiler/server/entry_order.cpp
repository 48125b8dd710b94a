#include "compiler/server/entry_order.hpp"

#include "compiler/advice/date_order.hpp"
#include "compiler/server/spot.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace quoin::server {

namespace {

struct DatedLines {                    // of one entry
    std::uint32_t first = 0, last = 0; // from 1
    const model::DateRange* dates = nullptr;

    bool operator==(const DatedLines& other) const { return first == other.first; }
};

const model::DateRange* dates_of(const model::Entry& entry) {
    for (const trade::FieldName name : {trade::FieldName::dates, trade::FieldName::graduation})
        if (const model::Field* field = entry.find(name))
            if (const auto* dates = std::get_if<model::DateRange>(&field->value)) return dates;
    return nullptr;
}

// The one entry that begins within the lines; null if there is none, or another.
const model::Entry* entry_within(const model::Resume& resume, std::uint32_t file,
                                 const DatedLines& lines) {
    const model::Entry* found = nullptr;
    for (const model::Section& section : resume.sections)
        for (const model::Entry& entry : section.entries) {
            const Place& place = entry.place;
            if (place.file != file || place.line < lines.first || place.line > lines.last) continue;
            if (found) return nullptr;
            found = &entry;
        }
    return found;
}

bool tells_of_section(const syntax::Block& block) { // `holds:` and `column:`
    return std::ranges::all_of(block, [](const syntax::Node& node) {
        return node.label.text == "holds" || node.label.text == "column";
    });
}

// None unless each has its dates.
std::optional<std::vector<DatedLines>>
dated_entries(const session::State& state, std::uint32_t file, const syntax::SectionTree& section) {
    std::vector<DatedLines> entries;
    for (const syntax::Block& block : section.blocks) {
        if (block.empty() || tells_of_section(block)) continue;
        DatedLines lines{block.front().place.line, last_line_of(block.back()), nullptr};
        const model::Entry* entry = entry_within(*state.read.resume, file, lines);
        lines.dates = entry ? dates_of(*entry) : nullptr;
        if (!lines.dates) return std::nullopt;
        entries.push_back(lines);
    }
    return entries;
}

// Each goes above the first that it is more recent than, and no further than it must.
std::vector<DatedLines> most_recent_first(const std::vector<DatedLines>& entries) {
    std::vector<DatedLines> sorted;
    for (const DatedLines& entry : entries) {
        const auto place = std::ranges::find_if(sorted, [&](const DatedLines& above) {
            return advice::out_of_order(*above.dates, *entry.dates);
        });
        sorted.insert(place, entry);
    }
    return sorted;
}

std::string text_of(const DatedLines& entry, const session::TextLines& lines) {
    std::string text;
    for (std::uint32_t own = entry.first; own <= entry.last; ++own)
        text += (text.empty() ? "" : "\n") + std::string(lines.line(own - 1));
    return text;
}

}

EditBook entries_by_date(const Desk& desk, const session::State& state, std::uint32_t file,
                         std::uint32_t line) {
    constexpr std::size_t most_sorted = 200;
    EditBook book(desk);
    if (!state.read.resume) return book;
    const syntax::Tree tree = session::tree_of(state, file);
    const syntax::SectionTree* section = section_at(tree, line);
    const auto entries = section ? dated_entries(state, file, *section) : std::nullopt;
    if (!entries || entries->size() > most_sorted) return book;
    const std::vector<DatedLines> sorted = most_recent_first(*entries);
    if (sorted == *entries) return book;
    const SourceFile& source = state.read.sources.file(file);
    const session::TextLines lines(source.bytes);
    for (std::size_t i = 0; i < sorted.size(); ++i) {
        if (sorted[i] == (*entries)[i]) continue;
        const DatedLines& gone = (*entries)[i];
        const std::uint32_t end = session::units_in(lines.line(gone.last - 1), desk.units);
        book.replace(source.path, {{gone.first - 1, 0}, {gone.last - 1, end}},
                     text_of(sorted[i], lines));
    }
    return book;
}

}

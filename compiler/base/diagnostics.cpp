// Diagnostics and their text form, with the source line and a caret where that helps.
#include "compiler/base/diagnostics.hpp"

#include "compiler/base/printable.hpp"
#include "compiler/base/source.hpp"
#include "compiler/base/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>

namespace quoin {

namespace {

constexpr std::size_t excerpt_columns = 74;
constexpr std::size_t columns_before = 36; // of the place, where a long line is cut
constexpr std::string_view ellipsis = "…";

const char* severity_name(Severity severity) {
    switch (severity) {
    case Severity::error:
        return "error";
    case Severity::warning:
        return "warning";
    default:
        return "note";
    }
}

struct ShownPiece { // of a line as a terminal shows it
    std::string text;
    std::size_t columns = 0;
    std::size_t bytes = 0; // that it was made of
};

// As much of `line` as fits into `most` columns; `column` is where its first character stands.
ShownPiece shown(std::string_view line, std::size_t column, std::size_t most) {
    ShownPiece piece;
    while (piece.bytes < line.size()) {
        const Character character = first_character(line.substr(piece.bytes));
        const bool tab = character.code == U'\t';
        const std::size_t width =
            tab ? 8 - (column + piece.columns) % 8
                : static_cast<std::size_t>(std::max(0, terminal_columns(character.code)));
        if (piece.columns + width > most) break;
        piece.text +=
            tab ? std::string(width, ' ') : std::string(line.substr(piece.bytes, character.length));
        piece.columns += width;
        piece.bytes += character.length;
    }
    return piece;
}

// Where the excerpt begins: with the line, or a little before a place far into it.
std::size_t first_byte_shown(std::string_view line, std::size_t place, std::size_t column) {
    if (column <= excerpt_columns * 2 / 3) return 0;
    std::size_t at = place;
    for (std::size_t characters = 0; at > 0 && characters < columns_before; --at)
        if (!continues_character(line[at - 1])) ++characters;
    return at;
}

}

void Diagnostics::error(Place place, std::string text, Edits mend) {
    all_.push_back({Severity::error, place, std::move(text), std::move(mend)});
}

void Diagnostics::warning(Place place, std::string text, Edits mend) {
    all_.push_back({Severity::warning, place, std::move(text), std::move(mend)});
}

void Diagnostics::note(Place place, std::string text) {
    all_.push_back({Severity::note, place, std::move(text)});
}

bool Diagnostics::has_errors() const {
    return std::any_of(all_.begin(), all_.end(),
                       [](const Diagnostic& one) { return one.severity == Severity::error; });
}

std::size_t Diagnostics::count(Severity severity) const {
    return static_cast<std::size_t>(std::ranges::count(all_, severity, &Diagnostic::severity));
}

void Diagnostics::sort() {
    const auto key = [](const Diagnostic& one) {
        return std::tuple(one.place.file, one.place.line, one.place.column);
    };
    std::stable_sort(all_.begin(), all_.end(),
                     [&](const Diagnostic& a, const Diagnostic& b) { return key(a) < key(b); });
}

std::string location(const Place& place, const Sources& sources) {
    std::string text = sources.file(place.file).name + ':';
    if (place.line != 0) text += fmt::format("{}:", place.line);
    if (place.line != 0 && place.column != 0)
        text += fmt::format("{}:", sources.display_column(place));
    return text;
}

std::string excerpt(const Place& place, const Sources& sources) {
    const std::string_view line = sources.file(place.file).line(place.line);
    const std::size_t start =
        place.column == 0 ? 0 : std::min<std::size_t>(place.column - 1, line.size());
    const std::size_t column = place.column == 0 ? 0 : sources.display_column(place) - 1;
    const std::size_t first = first_byte_shown(line, start, column);
    const auto first_place = static_cast<std::uint32_t>(first + 1);
    const std::size_t offset = sources.display_column({place.file, place.line, first_place, 0}) - 1;

    const ShownPiece before = shown(line.substr(first, start - first), offset, excerpt_columns);
    const ShownPiece marked =
        shown(line.substr(start, place.length), column, excerpt_columns - before.columns);
    const std::string_view rest = line.substr(start + marked.bytes);
    const ShownPiece after =
        shown(rest, column + marked.columns, excerpt_columns - before.columns - marked.columns);

    const std::string lead = first > 0 ? std::string(ellipsis) : std::string();
    std::string text = "\n  " + lead + before.text + marked.text + after.text;
    if (after.bytes < rest.size()) text += ellipsis;
    if (place.column == 0) return text;
    const std::size_t indent = 2 + (first > 0 ? 1 : 0) + before.columns;
    const std::size_t tail = std::max<std::size_t>(marked.columns, 1) - 1;
    return text + '\n' + std::string(indent, ' ') + '^' + std::string(tail, '~');
}

std::string format(const Diagnostic& diagnostic, const Sources& sources, bool with_excerpt) {
    const Place& place = diagnostic.place;
    std::string text =
        location(place, sources) +
        fmt::format(" {}: {}", severity_name(diagnostic.severity), on_one_line(diagnostic.text));
    if (with_excerpt && place.line != 0) text += excerpt(place, sources);
    return text;
}

}

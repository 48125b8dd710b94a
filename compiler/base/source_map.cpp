// Lines of bytes and lines of normalised text, side by side.
#include "compiler/base/source_map.hpp"

#include "compiler/base/strange_signs.hpp"
#include "compiler/base/utf8.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

namespace quoin {

namespace {

// Far longer than a letter and the marks that a file may pile on it. What is longer stands in a
// file that was refused, and is not worth the time.
constexpr std::size_t longest_piece = 1024;

// LF, CRLF or CR ends a line; the byte-order mark is of no line.
std::vector<ByteRange> line_ranges(std::string_view bytes) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    std::vector<ByteRange> lines;
    std::size_t begin = bytes.starts_with(mark) ? mark.size() : 0;
    for (;;) {
        const std::size_t end = bytes.find_first_of("\r\n", begin);
        if (end == std::string_view::npos) break;
        lines.push_back({begin, end});
        begin = bytes.substr(end).starts_with("\r\n") ? end + 2 : end + 1;
    }
    lines.push_back({begin, bytes.size()});
    return lines;
}

// What never joins with what stands before it (Unicode Standard Annex #15, section 5): neither a
// mark nor the later part of a Hangul syllable. There are a few marks more that do not.
bool begins_piece(char32_t code) {
    if (code < 0x300) return true;
    if (code >= 0x1160 && code <= 0x11FF) return false;
    switch (utf8proc_category(static_cast<utf8proc_int32_t>(code))) {
    case UTF8PROC_CATEGORY_MN:
    case UTF8PROC_CATEGORY_MC:
    case UTF8PROC_CATEGORY_ME:
        return false;
    default:
        return true;
    }
}

// The first characters that normalise by themselves; empty if they are no text.
std::string_view first_piece(std::string_view bytes) {
    std::size_t end = 0;
    while (end < bytes.size()) {
        const Character character = first_character(bytes.substr(end));
        if (!character.well_formed || end > longest_piece) return {};
        if (end > 0 && begins_piece(character.code)) break;
        end += character.length;
    }
    return bytes.substr(0, end);
}

}

SourceMap::SourceMap(const SourceFile& file) : file_(file), lines_(line_ranges(file.bytes)) {}

// False if the text is not that of the bytes.
bool SourceMap::add_pieces(std::string_view text, std::string_view bytes, Line& line) {
    Piece at;
    const KeptSigns kept = kept_signs(bytes);
    while (at.byte < bytes.size()) {
        const std::string_view own = first_piece(bytes.substr(at.byte));
        if (own.empty()) return false;
        line.pieces.push_back(at);
        const bool same = text.substr(at.text).starts_with(own);
        std::size_t begin = 0;
        while (begin < own.size()) {
            if (same && begin > 0)
                line.pieces.push_back({at.text + begin, at.byte + begin, at.character});
            begin += first_character(own.substr(begin)).length;
            ++at.character;
        }
        const std::string normal = same ? std::string(own) : plain_signs(own, kept);
        if (!text.substr(at.text).starts_with(normal)) return false;
        at.text += normal.size();
        at.byte += own.size();
    }
    line.pieces.push_back(at);
    return at.text == text.size();
}

void SourceMap::add_characters(std::string_view text, Line& line) {
    Piece at;
    while (at.text < text.size()) {
        line.pieces.push_back(at);
        at.text += first_character(text.substr(at.text)).length;
        ++at.character;
    }
    line.pieces.push_back(at);
}

const SourceMap::Line& SourceMap::line(std::uint32_t number) {
    const auto [found, is_new] = known_.try_emplace(number);
    Line& line = found->second;
    if (!is_new) return line;
    const std::string_view text = file_.line(number);
    std::string_view bytes;
    if (number > 0 && number <= lines_.size()) {
        const ByteRange range = lines_[number - 1];
        bytes = std::string_view(file_.bytes).substr(range.begin, range.end - range.begin);
    }
    if (text == bytes && all_ascii(text)) return line;
    if (add_pieces(text, bytes, line)) return line;
    line = {.usable = false, .pieces = {}};
    add_characters(text, line);
    return line;
}

// In the bytes of the line; signs that the text is without stand at one offset with what follows.
std::optional<std::size_t> SourceMap::byte_of(const Line& line, std::size_t offset, Side side) {
    if (!line.usable) return std::nullopt;
    if (line.pieces.empty()) return offset;
    const auto first = std::ranges::lower_bound(line.pieces, offset, {}, &Piece::text);
    const auto end = std::ranges::upper_bound(line.pieces, offset, {}, &Piece::text);
    if (first == end) return std::nullopt;
    return side == Side::before_signs ? first->byte : std::prev(end)->byte;
}

std::optional<ByteRange> SourceMap::bytes_of(const Place& place) {
    if (place.line == 0 || place.line > lines_.size() || place.column == 0) return std::nullopt;
    const Line& known = line(place.line);
    const ByteRange range = lines_[place.line - 1];
    const std::size_t size = file_.line(place.line).size();
    const std::size_t from = place.column - 1, to = from + place.length;
    if (to > size + 1 || from > size) return std::nullopt;
    const bool point = place.length == 0;
    const auto begin = byte_of(known, from, point ? Side::before_signs : Side::after_signs);
    const auto end =
        byte_of(known, std::min(to, size), point ? Side::after_signs : Side::before_signs);
    if (!begin || !end) return std::nullopt;
    if (to <= size) return ByteRange{range.begin + *begin, range.begin + *end};
    const bool last = place.line == lines_.size();
    return ByteRange{range.begin + *begin, last ? file_.bytes.size() : lines_[place.line].begin};
}

CharacterColumns SourceMap::columns_of(const Place& place) {
    if (place.line == 0 || place.column == 0) return {};
    const Line& known = line(place.line);
    const std::size_t size = file_.line(place.line).size();
    const std::size_t begin = std::min<std::size_t>(place.column - 1, size);
    const std::size_t end = std::min<std::size_t>(begin + place.length, size);
    if (known.pieces.empty()) return {begin + 1, end + 1};
    const auto after = std::ranges::upper_bound(known.pieces, begin, {}, &Piece::text);
    const auto until = std::ranges::lower_bound(known.pieces, end, {}, &Piece::text);
    return {std::prev(after)->character + 1, until->character + 1};
}

}

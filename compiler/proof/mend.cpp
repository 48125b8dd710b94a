// From places in normalised text back to bytes.
#include "compiler/proof/mend.hpp"

#include "compiler/source/encoding.hpp"

#include <algorithm>
#include <optional>
#include <tuple>

namespace quoin {

namespace {

struct ByteRange { // bytes [begin, end) of the file
    std::size_t begin = 0, end = 0;
};

// Lines without their ends, which are LF, CRLF or CR; the byte-order mark is of no line.
std::vector<ByteRange> lines_of(std::string_view bytes) {
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

// Where a line of normalised text and its bytes run side by side. An ASCII character never joins
// with what stands before it (Unicode Standard Annex #15), so a line can be compared piece by
// piece, each an ASCII character and what follows up to the next.
class LineMap {
public:
    LineMap(std::string_view text, std::string_view bytes) : same_(text == bytes) {
        if (same_) return;
        std::size_t at = 0;
        for (std::size_t begin = 0; begin < bytes.size();) {
            std::size_t end = begin + 1;
            while (end < bytes.size() && static_cast<unsigned char>(bytes[end]) >= 0x80)
                ++end;
            pieces_.emplace_back(at, begin);
            const std::string_view piece = bytes.substr(begin, end - begin);
            at += to_nfc(std::string(piece)).size();
            begin = end;
        }
        pieces_.emplace_back(at, bytes.size());
        usable_ = at == text.size();
    }

    // None for an offset within a piece.
    std::optional<std::size_t> to_bytes(std::size_t offset) const {
        if (same_) return offset;
        if (!usable_) return std::nullopt;
        const auto found = std::ranges::lower_bound(pieces_, offset, {},
                                                    [](const auto& piece) { return piece.first; });
        if (found == pieces_.end() || found->first != offset) return std::nullopt;
        return found->second;
    }

private:
    bool same_ = false;
    bool usable_ = false;
    std::vector<std::pair<std::size_t, std::size_t>> pieces_; // offsets in text and in bytes
};

auto by_place(const Edit& edit) {
    return std::tuple(edit.place.line, edit.place.column, edit.place.length);
}

class Mender {
public:
    explicit Mender(const SourceFile& file) : file_(file), lines_(lines_of(file.bytes)) {}

    // All of one line.
    void edit(std::span<const Edit> edits) {
        const std::uint32_t number = edits.front().place.line;
        if (number == 0 || number > lines_.size()) return;
        const ByteRange line = lines_[number - 1];
        const LineMap map(file_.line(number),
                          std::string_view(file_.bytes).substr(line.begin, line.end - line.begin));
        for (const Edit& each : edits) {
            const Place& place = each.place;
            if (place.column == 0) continue;
            const auto begin = map.to_bytes(place.column - 1);
            const auto end = map.to_bytes(place.column - 1 + place.length);
            if (begin && end && line.begin + *end <= line.end)
                replace({line.begin + *begin, line.begin + *end}, each.replacement);
        }
    }

    Mended finish() {
        mended_.bytes.append(file_.bytes, copied_);
        return std::move(mended_);
    }

private:
    void replace(ByteRange range, const std::string& replacement) {
        if (range.begin < copied_) return;
        mended_.bytes.append(file_.bytes, copied_, range.begin - copied_);
        mended_.bytes += replacement;
        copied_ = range.end;
        ++mended_.made;
    }

    const SourceFile& file_;
    std::vector<ByteRange> lines_;
    Mended mended_;
    std::size_t copied_ = 0; // bytes of the file that are behind
};

}

Mended mend(const SourceFile& file, std::vector<Edit> edits) {
    std::ranges::stable_sort(edits, {}, by_place);
    Mender mender(file);
    for (std::size_t begin = 0; begin < edits.size();) {
        std::size_t end = begin;
        while (end < edits.size() && edits[end].place.line == edits[begin].place.line)
            ++end;
        mender.edit(std::span(edits).subspan(begin, end - begin));
        begin = end;
    }
    return mender.finish();
}

}

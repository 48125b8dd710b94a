// Inline text: marked-up words with the place each piece came from.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/place.hpp"
#include "compiler/stages/syntax/tree.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace quoin::model {

enum class Revised { not_at_all, inserted, deleted }; // on a marked redline alone; never read

struct Marks {
    bool strong = false;
    bool emphasis = false;
    bool underline = false;
    Revised revised{};

    bool operator==(const Marks&) const = default;
};

// Where text.size() == place.length, text maps byte for byte to the source. Where a sign stands
// for others (a typographic quote, an escape, a dash, the space of a fold), it is a span of its
// own.
struct Span {
    std::string text; // UTF-8; U+00A0 is a space that does not break
    Marks marks;
    std::optional<std::uint32_t> link; // index into Text::links
    Place place;
};

struct Text {
    std::vector<Span> spans;
    std::vector<std::string> links; // URIs: http, https, mailto or tel

    bool empty() const { return spans.empty(); }
    std::string plain() const;
    // Place of bytes [offset, offset + length) of plain(); cut at the end of its line.
    Place place(std::size_t offset, std::size_t length) const;
};

// Reads a value as inline text: marks, links, escapes, typographic quotes and dashes.
Text read_text(const syntax::Value& value, Diagnostics& diagnostics);

// Reads the whole value of a `link:` field: `label <address>`, where all before the address is its
// words, or an address alone, shown as typed, which may go without `https://` or `mailto:`.
Text read_link(const syntax::Value& value, Diagnostics& diagnostics);

// The value as it stands: for telephone numbers, addresses of mail and other tokens.
Text read_plain(const syntax::Value& value);

// The items of a text parted by `separator` (`;` or `,` outside parentheses), trimmed; none empty.
std::vector<Text> split(const Text& text, char separator);

}

// The XML that poppler's tools write, tag by tag. They do not always write it well-formed (links
// and slants overlap, characters of a hostile font may be controls), so this reads what is there:
// whatever stands between `<` and `>` is a tag, all else is text, and nothing is a fault.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace quoin::portal {

struct MarkupTag {
    std::string_view name;       // `/word` for an end
    std::string_view attributes; // as written
    std::string_view text;       // up to the next tag, as written
};

class TagReader {
public:
    explicit TagReader(std::string_view xml) : left_(xml) {}

    std::optional<MarkupTag> next();

private:
    std::string_view left_;
};

// The value of an attribute, as written; none if it is not there.
std::optional<std::string_view> attribute_of(const MarkupTag& tag, std::string_view name);

// A number of the attribute, 0 if there is none, never outside a page that could exist.
double number_in(const MarkupTag& tag, std::string_view name);

// Text with its five named entities and numbers resolved; well-formed UTF-8 without control
// characters: U+FFFD stands for whatever was neither. `escaped` false leaves `&` alone.
std::string clean_text(std::string_view written, bool escaped = true);

}

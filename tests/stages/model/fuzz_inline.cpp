// Fuzz target: inline text. The text read, its items and its places hold together for any bytes.
#include "compiler/stages/model/text.hpp"

#include <cstdint>
#include <cstdlib>
#include <string_view>

namespace {

quoin::syntax::Value value_of(std::string_view text) {
    quoin::syntax::Value value;
    std::uint32_t line = 1;
    while (true) {
        const auto end = std::min(text.find('\n'), text.size());
        value.slices.push_back(
            {std::string{text.substr(0, end)}, {0, line++, 1, static_cast<std::uint32_t>(end)}});
        if (end == text.size()) return value;
        text.remove_prefix(end + 1);
    }
}

void require(bool holds) {
    if (!holds) std::abort();
}

void check(const quoin::model::Text& text, const quoin::syntax::Value& value) {
    for (const quoin::model::Span& span : text.spans) {
        require(!span.text.empty());
        require(!span.link || *span.link < text.links.size());
        require(span.place.line >= 1 && span.place.line <= value.slices.size());
        const std::string& line = value.slices[span.place.line - 1].text;
        require(span.place.column - 1 + span.place.length <= line.size());
    }
    const std::size_t size = text.plain().size();
    for (std::size_t at = 0; at < size; at += 1 + size / 8) {
        const quoin::Place place = text.place(at, size - at);
        require(place.column - 1 + place.length <= value.slices[place.line - 1].text.size());
    }
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(data, data + size);
    const quoin::syntax::Value value = value_of(bytes);
    quoin::Diagnostics diagnostics;
    const quoin::model::Text text = quoin::model::read_text(value, diagnostics);
    check(text, value);
    for (const char separator : {';', ','})
        for (const quoin::model::Text& item : quoin::model::split(text, separator)) {
            require(!item.empty());
            check(item, value);
        }
    check(quoin::model::read_link(value, diagnostics), value);
    check(quoin::model::read_plain(value), value);
    for (const quoin::Diagnostic& fault : diagnostics.all())
        require(fault.place.line >= 1 && fault.place.line <= value.slices.size());
    return 0;
}

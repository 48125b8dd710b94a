// Objects written as ISO 32000-1, section 7.3, has them: a space where one is needed and no other.
#include "compiler/stages/pdf/objects.hpp"

#include "compiler/stages/pdf/deflate.hpp"
#include "compiler/stages/pdf/file_writer.hpp"
#include "compiler/stages/pdf/unicode.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace quoin::pdf {

namespace {

void append(std::string& text, const PdfValue& value);

// Section 7.3.5: what would end a name, and what is not printed, is written by its number.
void append_name(std::string& text, std::string_view name) {
    constexpr std::string_view delimiters = "()<>[]{}/%#";
    text += '/';
    for (const char c : name)
        if (c > ' ' && c <= '~' && delimiters.find(c) == delimiters.npos)
            text += c;
        else
            append_hex(text += '#', std::string_view(&c, 1));
}

// Section 7.3.4.2.
void append_string(std::string& text, std::string_view bytes) {
    constexpr std::string_view escaped = "\n\r\t\b\f()\\", letters = "nrtbf()\\";
    text += '(';
    for (const char c : bytes) {
        const std::size_t at = escaped.find(c);
        if (at != escaped.npos) text += '\\';
        text += at == escaped.npos ? c : letters[at];
    }
    text += ')';
}

using Entries = std::vector<const PdfEntry*>;

Entries entries_of(const PdfDictionary& dictionary) {
    Entries entries;
    for (const PdfEntry& entry : dictionary)
        entries.push_back(&entry);
    return entries;
}

// The same bytes whatever order they were given in; what the dictionary is of stands first.
void append_entries(std::string& text, Entries entries) {
    std::ranges::sort(entries, {}, [](const PdfEntry* entry) {
        const std::string_view key = entry->key;
        return std::pair(key != "Type", key);
    });
    text += "<<";
    for (const PdfEntry* entry : entries) {
        append_name(text, entry->key);
        append(text, entry->value);
    }
    text += ">>";
}

struct Appender {
    std::string& text;

    void operator()(bool value) const { text += value ? " true" : " false"; }
    void operator()(std::int64_t value) const { text += ' ' + std::to_string(value); }
    void operator()(PdfReal value) const {
        append_number(text += ' ', value.value, value.decimals);
    }
    void operator()(PdfName value) const { append_name(text, value.text); }
    // ASCII is the same in PDFDocEncoding.
    void operator()(const PdfText& value) const {
        append_string(text, is_ascii(value.utf8) ? value.utf8 : "\xFE\xFF" + utf16be(value.utf8));
    }
    void operator()(const PdfBytes& value) const { append_string(text, value.bytes); }
    void operator()(PdfReference value) const {
        text += ' ' + std::to_string(value.number) + " 0 R";
    }
    void operator()(const PdfArray& value) const {
        text += '[';
        for (const PdfValue& item : value)
            append(text, item);
        text += ']';
    }
    void operator()(const PdfDictionary& value) const { append_entries(text, entries_of(value)); }
};

void append(std::string& text, const PdfValue& value) {
    std::visit(Appender{text}, value.held);
}

}

// Here, where PdfEntry is complete.
PdfValue::PdfValue(bool value) : held(value) {}
PdfValue::PdfValue(int value) : held(std::int64_t{value}) {}
PdfValue::PdfValue(std::int64_t value) : held(value) {}
PdfValue::PdfValue(PdfReal value) : held(value) {}
PdfValue::PdfValue(PdfName value) : held(value) {}
PdfValue::PdfValue(PdfText value) : held(std::move(value)) {}
PdfValue::PdfValue(PdfBytes value) : held(std::move(value)) {}
PdfValue::PdfValue(PdfReference value) : held(value) {}
PdfValue::PdfValue(PdfArray value) : held(std::move(value)) {}
PdfValue::PdfValue(PdfDictionary value) : held(std::move(value)) {}
PdfValue::PdfValue(const PdfValue&) = default;
PdfValue::PdfValue(PdfValue&&) noexcept = default;
PdfValue& PdfValue::operator=(const PdfValue&) = default;
PdfValue& PdfValue::operator=(PdfValue&&) noexcept = default;
PdfValue::~PdfValue() = default;

struct PdfFile::Objects {
    std::vector<FileObject> by_number; // object 1, 2, …

    FileObject& operator[](PdfReference object) { return by_number.at(object.number - 1); }
};

PdfFile::PdfFile() : objects_(std::make_unique<Objects>()) {}

PdfFile::~PdfFile() = default;

PdfReference PdfFile::reserve() {
    objects_->by_number.push_back({.text = "<<>>", .stream = {}});
    return {static_cast<std::uint32_t>(objects_->by_number.size())};
}

void PdfFile::set(PdfReference object, const PdfDictionary& value) {
    std::string& text = (*objects_)[object].text;
    text.clear();
    append_entries(text, entries_of(value));
}

PdfReference PdfFile::add(const PdfDictionary& value) {
    const PdfReference object = reserve();
    set(object, value);
    return object;
}

PdfReference PdfFile::add_stream(const PdfDictionary& value, std::string_view bytes,
                                 PdfFilter filter) {
    std::string data = filter == PdfFilter::flate ? deflate(bytes) : std::string(bytes);
    const PdfEntry by{"Filter", PdfName{"FlateDecode"}},
        length{"Length", static_cast<std::int64_t>(data.size())};
    Entries entries = entries_of(value);
    entries.push_back(&length);
    if (filter == PdfFilter::flate) entries.push_back(&by);
    FileObject object{.text = {}, .stream = std::move(data)};
    append_entries(object.text, std::move(entries));
    objects_->by_number.push_back(std::move(object));
    return {static_cast<std::uint32_t>(objects_->by_number.size())};
}

std::string PdfFile::write(PdfReference catalog, PdfReference info) {
    return write_file(objects_->by_number, catalog.number, info.number);
}

double as_written(double value, int decimals) {
    constexpr std::array<double, most_decimals + 1> scales{1, 10, 100, 1000, 10000};
    const double scale = scales.at(static_cast<std::size_t>(decimals));
    return std::round(value * scale) / scale;
}

void append_number(std::string& text, double value, int decimals) {
    std::array<char, 64> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value,
                                   std::chars_format::fixed, decimals);
    if (end.ec != std::errc{} || !std::isfinite(value))
        throw std::runtime_error("the PDF cannot be written: a number in it is out of range");
    std::string_view shown(digits.data(), static_cast<std::size_t>(end.ptr - digits.data()));
    if (shown.find('.') != std::string_view::npos) {
        shown = shown.substr(0, shown.find_last_not_of('0') + 1);
        if (shown.ends_with('.')) shown.remove_suffix(1);
    }
    text += shown == "-0" ? "0" : shown;
}

}

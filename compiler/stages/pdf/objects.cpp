// Objects, over PoDoFo's object layer: its document layer reads the clock and the locale.
#include "compiler/stages/pdf/objects.hpp"

#include "compiler/stages/pdf/deflate.hpp"
#include "compiler/stages/pdf/file_writer.hpp"
#include "compiler/stages/pdf/unicode.hpp"

#include <podofo/podofo.h>

#include <array>
#include <charconv>
#include <cmath>
#include <cstdarg>
#include <cstdio>
#include <optional>
#include <stdexcept>

namespace quoin::pdf {

namespace {

using PoDoFo::PdfVariant;

// PdfError does not derive from std::exception.
template<typename Work>
auto translate_errors(Work work) {
    try {
        return work();
    } catch (const PoDoFo::PdfError& error) {
        const char* name = PoDoFo::PdfError::ErrorName(error.GetError());
        throw std::runtime_error(std::string("the PDF cannot be written: ") +
                                 (name != nullptr ? name : "unknown error"));
    }
}

PdfVariant convert(const PdfValue& value);

PoDoFo::PdfDictionary convert(const PdfDictionary& dictionary) {
    PoDoFo::PdfDictionary converted;
    for (const PdfEntry& entry : dictionary)
        converted.AddKey(PoDoFo::PdfName(entry.key), PoDoFo::PdfObject(convert(entry.value)));
    return converted;
}

struct Converter {
    PdfVariant operator()(bool value) const { return PdfVariant(value); }
    PdfVariant operator()(std::int64_t value) const { return PdfVariant(PoDoFo::pdf_int64{value}); }
    PdfVariant operator()(PdfReal value) const { // the library's own has more digits than are true
        std::string text(" ");                   // which it puts before its own numbers
        append_number(text, value.value, value.decimals);
        return PdfVariant(PoDoFo::PdfData(text.data(), text.size()));
    }
    PdfVariant operator()(PdfName value) const {
        return PdfVariant(PoDoFo::PdfName(std::string(value.text)));
    }
    // Encoded here: the library's own decoder overruns on malformed text. ASCII is the same in
    // PDFDocEncoding.
    PdfVariant operator()(const PdfText& value) const {
        return (*this)(
            PdfBytes{is_ascii(value.utf8) ? value.utf8 : "\xFE\xFF" + utf16be(value.utf8)});
    }
    PdfVariant operator()(const PdfBytes& value) const {
        return PdfVariant(PoDoFo::PdfString(value.bytes.data(),
                                            static_cast<PoDoFo::pdf_long>(value.bytes.size())));
    }
    PdfVariant operator()(PdfReference value) const {
        return PdfVariant(PoDoFo::PdfReference(value.number, 0));
    }
    PdfVariant operator()(const PdfArray& value) const {
        PoDoFo::PdfArray array;
        array.reserve(value.size());
        for (const PdfValue& item : value)
            array.push_back(PoDoFo::PdfObject(convert(item)));
        return PdfVariant(array);
    }
    PdfVariant operator()(const PdfDictionary& value) const { return PdfVariant(convert(value)); }
};

PdfVariant convert(const PdfValue& value) {
    return std::visit(Converter{}, value.held);
}

// Collects what the library writes, in the mode that puts a space where one is needed and no other.
class TextDevice : public PoDoFo::PdfOutputDevice {
public:
    void Write(const char* bytes, std::size_t length) override { text_.append(bytes, length); }
    void Print(const char* format, ...) override;

    std::string take() { return std::move(text_); }

private:
    std::string text_;
};

void TextDevice::Print(const char* format, ...) {
    std::array<char, 64> printed{}; // numbers and references: all that the library writes this way
    std::va_list arguments;
    va_start(arguments, format);
    const int length = std::vsnprintf(printed.data(), printed.size(), format, arguments);
    va_end(arguments);
    if (length < 0 || static_cast<std::size_t>(length) >= printed.size())
        throw std::logic_error("a number longer than any");
    text_.append(printed.data(), static_cast<std::size_t>(length));
}

std::string text_of(const PdfVariant& value) {
    TextDevice text;
    value.Write(&text, PoDoFo::ePdfWriteMode_Compact, nullptr);
    return text.take();
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
    struct Held {
        PoDoFo::PdfObject* value;
        std::optional<std::string> stream;
    };

    PoDoFo::PdfVecObjects all;
    std::vector<Held> by_number; // object 1, 2, …

    Held& operator[](PdfReference object) { return by_number.at(object.number - 1); }
};

PdfFile::PdfFile() : objects_(std::make_unique<Objects>()) {
    PoDoFo::PdfError::EnableDebug(false);
    PoDoFo::PdfError::EnableLogging(false);
    objects_->all.SetAutoDelete(true);
}

PdfFile::~PdfFile() = default;

PdfReference PdfFile::reserve() {
    return translate_errors([&] {
        PoDoFo::PdfObject* const value =
            objects_->all.CreateObject(PdfVariant(PoDoFo::PdfDictionary()));
        objects_->by_number.push_back({value, {}});
        return PdfReference{value->Reference().ObjectNumber()};
    });
}

void PdfFile::set(PdfReference object, const PdfDictionary& value) {
    translate_errors([&] { (*objects_)[object].value->GetDictionary() = convert(value); });
}

PdfReference PdfFile::add(const PdfDictionary& value) {
    const PdfReference object = reserve();
    set(object, value);
    return object;
}

PdfReference PdfFile::add_stream(const PdfDictionary& value, std::string_view bytes,
                                 PdfFilter filter) {
    const bool flate = filter == PdfFilter::flate;
    std::string data = flate ? deflate(bytes) : std::string(bytes);
    const PdfReference object = add(value);
    Objects::Held& held = (*objects_)[object];
    translate_errors([&] {
        PoDoFo::PdfDictionary& dictionary = held.value->GetDictionary();
        const auto length = static_cast<PoDoFo::pdf_int64>(data.size());
        if (flate) dictionary.AddKey("Filter", PoDoFo::PdfObject(PoDoFo::PdfName("FlateDecode")));
        dictionary.AddKey("Length", PoDoFo::PdfObject(length));
    });
    held.stream = std::move(data);
    return object;
}

// The library's own writer knows no object streams, and its cross-reference streams are faulty.
std::string PdfFile::write(PdfReference catalog, PdfReference info) {
    return translate_errors([&] {
        std::vector<FileObject> objects;
        for (Objects::Held& held : objects_->by_number)
            objects.push_back({text_of(*held.value), std::move(held.stream), 0});
        return write_file(objects, catalog.number, info.number);
    });
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

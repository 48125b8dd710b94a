// Objects and file, over PoDoFo's object layer: its document layer reads the clock and the locale.
#include "compiler/pdf/objects.hpp"

#include "compiler/pdf/digest.hpp"
#include "compiler/pdf/object_streams.hpp"
#include "compiler/pdf/unicode.hpp"

#include <podofo/podofo.h>

#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace quoin {

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
        std::string text;
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

// Where the two strings of the file identifier stand in the trailer: the offsets of their digits.
constexpr std::size_t id_digits = 32;

std::pair<std::size_t, std::size_t> find_identifier(const std::string& file) {
    const std::size_t key = file.rfind("/ID");
    const std::size_t first = file.find('<', key);
    const std::size_t first_end = file.find('>', first);
    const std::size_t second = file.find('<', first_end);
    const std::size_t second_end = file.find('>', second);
    if (key == std::string::npos || second_end == std::string::npos ||
        first_end - first - 1 != id_digits || second_end - second - 1 != id_digits)
        throw std::runtime_error("the PDF cannot be written: no file identifier in its trailer");
    return {first + 1, second + 1};
}

// The library derives it from the Info dictionary alone: two drafts by one person would share it.
void identify(std::string& file) {
    const auto [first, second] = find_identifier(file);
    const std::string zeros(id_digits, '0');
    file.replace(first, id_digits, zeros);
    file.replace(second, id_digits, zeros);
    const std::string digest = md5_hex(file);
    file.replace(first, id_digits, digest);
    file.replace(second, id_digits, digest);
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
    PoDoFo::PdfVecObjects all;
    std::vector<PoDoFo::PdfObject*> by_number; // of object 1, 2, …

    PoDoFo::PdfObject& operator[](PdfReference object) { return *by_number.at(object.number - 1); }
};

PdfFile::PdfFile() : objects_(std::make_unique<Objects>()) {
    PoDoFo::PdfError::EnableDebug(false);
    PoDoFo::PdfError::EnableLogging(false);
    objects_->all.SetAutoDelete(true);
}

PdfFile::~PdfFile() = default;

PdfReference PdfFile::reserve() {
    return translate_errors([&] {
        objects_->by_number.push_back(
            objects_->all.CreateObject(PdfVariant(PoDoFo::PdfDictionary())));
        return PdfReference{objects_->by_number.back()->Reference().ObjectNumber()};
    });
}

void PdfFile::set(PdfReference object, const PdfDictionary& value) {
    translate_errors([&] { (*objects_)[object].GetDictionary() = convert(value); });
}

PdfReference PdfFile::add(const PdfDictionary& value) {
    const PdfReference object = reserve();
    set(object, value);
    return object;
}

void PdfFile::set_stream(PdfReference object, const PdfDictionary& value, std::string_view bytes) {
    set(object, value);
    translate_errors([&] {
        const PoDoFo::TVecFilters filters{PoDoFo::ePdfFilter_FlateDecode};
        (*objects_)[object].GetStream()->Set(bytes.data(),
                                             static_cast<PoDoFo::pdf_long>(bytes.size()), filters);
    });
}

PdfReference PdfFile::add_stream(const PdfDictionary& value, std::string_view bytes) {
    const PdfReference object = reserve();
    set_stream(object, value, bytes);
    return object;
}

// Written to memory, for the library does not tell of a full disk. Its own object streams are not
// to be had, and its cross-reference streams are faulty.
std::string PdfFile::write(PdfReference catalog, PdfReference info) {
    std::string file = translate_errors([&] {
        PoDoFo::PdfObject trailer{
            PdfVariant(convert(PdfDictionary{{"Root", catalog}, {"Info", info}}))};
        PoDoFo::PdfWriter writer(&objects_->all, &trailer);
        writer.SetPdfVersion(PoDoFo::ePdfVersion_1_7);
        writer.SetWriteMode(PoDoFo::ePdfWriteMode_Clean); // the other one runs reals together
        PoDoFo::PdfRefCountedBuffer buffer;
        PoDoFo::PdfOutputDevice device(&buffer);
        writer.Write(&device);
        return std::string(buffer.GetBuffer(), device.GetLength());
    });
    identify(file);
    return with_object_streams(file);
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

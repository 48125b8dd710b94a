// PDF objects (ISO 32000-1, section 7.3) as plain values, and the file that they make.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace quoin::pdf {

struct PdfName {
    std::string_view text; // outlives the object
};

struct PdfText { // a text string, for people
    std::string utf8;
};

struct PdfBytes { // a byte string, for programs
    std::string bytes;
};

struct PdfReal {
    double value = 0;
    int decimals = 2;
};

struct PdfReference {
    std::uint32_t number = 0; // 0: none
};

struct PdfValue;
struct PdfEntry;
using PdfArray = std::vector<PdfValue>;
using PdfDictionary = std::vector<PdfEntry>;

struct PdfValue {
    std::variant<bool, std::int64_t, PdfReal, PdfName, PdfText, PdfBytes, PdfReference, PdfArray,
                 PdfDictionary>
        held;

    PdfValue(bool value);
    PdfValue(int value);
    PdfValue(std::int64_t value);
    PdfValue(PdfReal value);
    PdfValue(PdfName value);
    PdfValue(PdfText value);
    PdfValue(PdfBytes value);
    PdfValue(PdfReference value);
    PdfValue(PdfArray value);
    PdfValue(PdfDictionary value);
    template<typename T>
    PdfValue(const T*) = delete; // else it would become a bool

    PdfValue(const PdfValue&);
    PdfValue(PdfValue&&) noexcept;
    PdfValue& operator=(const PdfValue&);
    PdfValue& operator=(PdfValue&&) noexcept;
    ~PdfValue();
};

struct PdfEntry {
    const char* key;
    PdfValue value;
};

enum class PdfFilter { flate, none };

// A number that is none comes back as std::runtime_error.
class PdfFile {
public:
    PdfFile();
    ~PdfFile();
    PdfFile(const PdfFile&) = delete;
    PdfFile& operator=(const PdfFile&) = delete;

    PdfReference reserve(); // an object to be set later
    void set(PdfReference object, const PdfDictionary& value);
    PdfReference add(const PdfDictionary& value);
    // /Filter and /Length are put into the dictionary.
    PdfReference add_stream(const PdfDictionary& value, std::string_view bytes,
                            PdfFilter filter = PdfFilter::flate);

    // The whole file, PDF 1.7, with a file identifier made from its bytes; nothing can be done
    // after it.
    std::string write(PdfReference catalog, PdfReference info);

private:
    struct Objects;
    std::unique_ptr<Objects> objects_;
};

constexpr int most_decimals = 4;
double as_written(double value, int decimals); // rounded to so many

// `value` rounded, without an exponent, without zeros at its end.
void append_number(std::string& text, double value, int decimals);

}

// Text from bytes. What is no text is named with what it most likely is and how to mend it.
#include "compiler/base/encoding.hpp"

#include "compiler/base/messages.hpp"
#include "compiler/base/utf8.hpp"

#include <fmt/format.h>
#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <memory>
#include <optional>
#include <stdexcept>

namespace quoin {

namespace {

constexpr std::size_t most_faults_of_a_kind = 20;
// Stream-Safe Text Format (Unicode Standard Annex #15, section 13). Without a bound, putting the
// marks of one letter in order takes time that grows with the square of their number.
constexpr std::size_t most_marks = 30;
constexpr std::string_view mark_bytes = "\xEF\xBB\xBF"; // byte-order mark

enum class ByteFault { ill_formed, nul, control, marks };
constexpr std::array<const char*, 4> kind_names{"places that are not UTF-8", "NUL bytes",
                                                "control characters", "runs of combining marks"};

// What 0x80 to 0x9F are in Windows-1252; 0 for the five that it leaves undefined. From 0xA0 on it
// is ISO 8859-1, where a byte is its character's number.
constexpr std::array<char16_t, 32> windows_1252{
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

unsigned char byte_at(std::string_view bytes, std::size_t at) {
    return static_cast<unsigned char>(bytes[at]);
}

char32_t from_windows_1252(unsigned char byte) {
    return byte >= 0x80 && byte <= 0x9F ? windows_1252.at(byte - 0x80U) : byte;
}

std::string to_utf8(char32_t code) {
    std::string text;
    append_utf8(code, text);
    return text;
}

// UTF-16 has a byte-order mark of its own, or, in western text, every other byte NUL.
bool looks_like_utf16(std::string_view bytes) {
    if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF")) return true;
    const std::string_view sample = bytes.substr(0, 512);
    std::array<std::size_t, 2> nuls{};
    for (std::size_t at = 0; at < sample.size(); ++at)
        if (sample[at] == '\0') ++nuls.at(at % 2);
    const auto [least, most] = std::minmax(nuls[0], nuls[1]);
    return sample.size() >= 4 && least == 0 && most * 4 >= sample.size();
}

// Text in a one-byte encoding has hardly ever two bytes in a row that are a character of UTF-8 by
// chance, so a single one of those tells against it.
bool looks_like_windows_1252(std::string_view bytes) {
    while (!bytes.empty()) {
        const Character character = take_character(bytes);
        if (character.well_formed && character.length > 1) return false;
        if (!character.well_formed && from_windows_1252(byte_at(character.bytes, 0)) == 0)
            return false;
    }
    return true;
}

std::string ill_formed_text(unsigned char byte, bool windows) {
    if (windows) return fill<messages::windows_1252>(byte, to_utf8(from_windows_1252(byte)));
    if (byte == 0xC0 || byte == 0xC1 || byte > 0xF4) return fill<messages::never_utf8>(byte);
    return byte >= 0xC2 ? fill<messages::broken_off>(byte)
                        : fill<messages::beginning_missing>(byte);
}

class Decoder {
public:
    explicit Decoder(std::string_view bytes) : bytes_(bytes), rest_(bytes) {}

    Decoded run() {
        while (!rest_.empty()) {
            put_plain();
            if (!rest_.empty()) step();
        }
        for (std::size_t kind = 0; kind < counts_.size(); ++kind)
            if (counts_.at(kind) > most_faults_of_a_kind)
                decoded_.faults.push_back(
                    {{},
                     fill<messages::bytes_left_out>(counts_.at(kind), kind_names.at(kind),
                                                    most_faults_of_a_kind)});
        return std::move(decoded_);
    }

private:
    // All up to the next character that may want a word: of most files, most of each line.
    void put_plain() {
        const auto* const end =
            std::ranges::find_if_not(rest_, [](char c) { return c >= ' ' && c < '\x7F'; });
        const auto size = static_cast<std::size_t>(end - rest_.begin());
        decoded_.text += rest_.substr(0, size);
        rest_.remove_prefix(size);
        if (size > 0) marks_ = 0;
    }

    void step() {
        const Character character = take_character(rest_);
        const std::string_view bytes = character.bytes;
        if (!character.well_formed)
            fault(ByteFault::ill_formed, ill_formed_text(byte_at(bytes, 0), is_windows_1252()));
        else if (character.code == U'\r')
            end_line();
        else if (character.code == U'\n')
            put("\n");
        else if (character.code == 0)
            fault(ByteFault::nul, fill<messages::nul_byte>());
        else if (is_control(character.code))
            fault(ByteFault::control,
                  fill<messages::control>(static_cast<std::uint32_t>(character.code)));
        else if (too_many_marks(character.code))
            fault(ByteFault::marks, fill<messages::many_marks>(most_marks));
        else
            put(bytes);
    }

    void end_line() { // CRLF or a lone CR
        if (rest_.starts_with('\n')) rest_.remove_prefix(1);
        put("\n");
    }

    void put(std::string_view bytes) {
        decoded_.text += bytes;
        if (bytes != "\n") return;
        ++line_;
        line_start_ = decoded_.text.size();
    }

    void fault(ByteFault kind, std::string text) {
        if (++counts_.at(static_cast<std::size_t>(kind)) <= most_faults_of_a_kind) {
            const auto column = static_cast<std::uint32_t>(decoded_.text.size() - line_start_ + 1);
            const auto length = static_cast<std::uint32_t>(replacement_character.size());
            decoded_.faults.push_back(
                {{.line = line_, .column = column, .length = length}, std::move(text)});
        }
        put(replacement_character);
    }

    bool is_windows_1252() {
        if (!windows_) windows_ = looks_like_windows_1252(bytes_);
        return *windows_;
    }

    static bool is_control(char32_t code) {
        return (code < 0x20 && code != U'\t') || (code >= 0x7F && code < 0xA0);
    }

    // Counts as NFD has them, for there are characters that only become marks there. Told once for
    // each run, at the first mark that is too many.
    bool too_many_marks(char32_t code) {
        if (code < 0x300) {
            marks_ = 0;
            return false;
        }
        std::array<utf8proc_int32_t, 32> parts{};
        const auto count = utf8proc_decompose_char(
            static_cast<utf8proc_int32_t>(code), parts.data(),
            static_cast<utf8proc_ssize_t>(parts.size()), UTF8PROC_DECOMPOSE, nullptr);
        const bool fitted = marks_ <= most_marks;
        for (utf8proc_ssize_t at = 0; at < count; ++at) {
            const auto* property = utf8proc_get_property(parts.at(static_cast<std::size_t>(at)));
            marks_ = property->combining_class == 0 ? 0 : marks_ + 1;
        }
        return fitted && marks_ > most_marks;
    }

    std::string_view bytes_, rest_;
    std::optional<bool> windows_; // not known before a byte asks for it
    Decoded decoded_;
    std::uint32_t line_ = 1;
    std::size_t line_start_ = 0;
    std::size_t marks_ = 0;
    std::array<std::size_t, kind_names.size()> counts_{};
};

}

Decoded decode(std::string_view bytes) {
    if (looks_like_utf16(bytes)) return {{}, {{{}, fill<messages::utf16>()}}};
    if (bytes.starts_with(mark_bytes)) bytes.remove_prefix(mark_bytes.size());
    return Decoder(bytes).run();
}

std::string to_nfc(const std::string& text) {
    const auto ascii = [](char c) { return static_cast<unsigned char>(c) < 0x80; };
    if (std::all_of(text.begin(), text.end(), ascii)) return text;
    std::vector<utf8proc_uint8_t> bytes(text.begin(), text.end());
    utf8proc_uint8_t* result = nullptr;
    const utf8proc_ssize_t length =
        utf8proc_map(bytes.data(), static_cast<utf8proc_ssize_t>(bytes.size()), &result,
                     static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner(result, &std::free);
    if (length < 0) throw std::runtime_error(utf8proc_errmsg(length));
    return {result, result + length};
}

}

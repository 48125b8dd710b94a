#include "compiler/base/printable.hpp"

#include "compiler/base/utf8.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <cstdint>

namespace quoin {

namespace {

constexpr std::size_t longest_line = 4000; // in characters

bool is_plain(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte >= 0x20 && byte < 0x7F) || c == '\t' || c == '\n';
}

bool steers_a_terminal(char32_t code) {
    return (code < U' ' && code != U'\t' && code != U'\n') || (code >= 0x7F && code < 0xA0) ||
           code == 0x061C || (code >= 0x200E && code <= 0x200F) ||
           (code >= 0x2028 && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

}

std::string printable_name(std::string_view name) {
    std::string out;
    for (const char c : name)
        out += c == '\n' || c == '\t' ? fmt::format("<U+{:04X}>", static_cast<int>(c))
                                      : std::string(1, c);
    return printable(out);
}

std::string on_one_line(std::string_view text) {
    std::string line(text);
    for (std::size_t at = line.find('\n'); at != line.npos; at = line.find('\n', at))
        line.replace(at, 1, "<U+000A>");
    return line;
}

std::string printable(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    std::size_t in_line = 0;
    while (!text.empty()) {
        const Character character = take_character(text);
        if (character.bytes == "\n")
            in_line = 0;
        else if (++in_line > longest_line + 1)
            continue;
        if (in_line == longest_line + 1)
            out += "…";
        else if (character.bytes.size() == 1 && is_plain(character.bytes.front()))
            out += character.bytes;
        else if (!character.well_formed)
            out += replacement_character;
        else if (steers_a_terminal(character.code))
            out += fmt::format("<U+{:04X}>", static_cast<std::uint32_t>(character.code));
        else
            out += character.bytes;
    }
    return out;
}

}

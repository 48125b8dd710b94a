// Fuzz target: any bytes as what is told on a terminal. No sign that steers one is left, nothing
// that is no UTF-8, and no line without end; what is harmless comes through as it is.
#include "compiler/base/printable.hpp"
#include "compiler/base/utf8.hpp"

#include <cstdint>
#include <cstdlib>
#include <string>

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const std::string shown = quoin::printable(text);
    std::size_t in_line = 0;
    for (std::string_view rest = shown; !rest.empty();) {
        const quoin::Character character = quoin::take_character(rest);
        const char32_t code = character.code;
        require(character.well_formed);
        require(code >= 0x20 || code == U'\n' || code == U'\t');
        require(code < 0x7F || code > 0x9F);
        require((code < 0x202A || code > 0x202E) && (code < 0x2066 || code > 0x2069));
        in_line = code == U'\n' ? 0 : in_line + 1;
        require(in_line <= 8 * 4001); // each may be shown by its name
    }
    require(quoin::printable(shown).size() <= shown.size());
    require(quoin::printable_name(text).find('\n') == std::string::npos);
    return 0;
}

// Fuzz target: any bytes as the list of font families. What is read has names that are found again.
#include "compiler/stages/fonts/fonts.hpp"

#include <cstdint>
#include <cstdlib>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    quoin::Sources sources;
    quoin::Diagnostics diagnostics;
    sources.hold("fonts/families", std::string(data, data + size));
    const auto fonts = quoin::fonts::Fonts::open(sources, "fonts", diagnostics);
    if (!fonts) return 0;
    for (const std::string_view name : fonts->names())
        if (fonts->family(name) == nullptr) std::abort();
    for (const quoin::Diagnostic& one : diagnostics.all())
        if (format(one, sources, true).empty()) std::abort();
    return 0;
}

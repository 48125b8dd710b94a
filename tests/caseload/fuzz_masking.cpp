// Whatever stands in a line, it is masked.
#include "compiler/caseload/masking.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    quoin::caseload::Masking masking;
    (void)masking.masked(text);
    masking.hide_name(text.substr(0, text.find('\n')));
    (void)masking.masked(text);
    return 0;
}

// Whatever stands in the cache, it is an appraisal that comes back as it was kept, or none.
#include "compiler/caseload/appraisal.hpp"

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto found = quoin::caseload::appraisal_from({reinterpret_cast<const char*>(data), size});
    if (found && quoin::caseload::appraisal_from(to_bytes(*found)) != found) std::abort();
    return 0;
}

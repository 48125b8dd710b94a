// What is kept between answers, damaged at will: nothing crashes or hangs, and what can be read is
// written as what reads the same again.
#include "compiler/interview/draft_source.hpp"
#include "compiler/interview/kept.hpp"

#include <cstdint>
#include <cstdlib>
#include <string>
#include <utility>

namespace quoin::interview {

namespace {

std::optional<Kept> kept_in(std::string bytes) {
    Sources sources;
    Diagnostics diagnostics;
    const auto file = sources.add("draft.begin", std::move(bytes), diagnostics, TextOf::elsewhere);
    return file ? read_kept(sources, *file, diagnostics) : std::nullopt;
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto kept = kept_in(std::string(data, data + size));
    if (!kept) return 0;
    const std::string text = kept_text(*kept);
    const auto again = kept_in(text);
    if (!again || kept_text(*again) != text) std::abort();
    draft_source(plan_for(kept->draft), kept->draft);
    return 0;
}

}

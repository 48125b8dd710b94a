// Fuzz target: the readers of the tools' output, and the checks of what they read. Whatever a
// hostile file makes the tools say, nothing crashes, and what is to be printed is well-formed.
#include "compiler/base/utf8.hpp"
#include "compiler/portal/faults.hpp"
#include "compiler/portal/report.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>

namespace {

void require_printable(std::string_view text) {
    while (!text.empty()) {
        const quoin::Character character = quoin::first_character(text);
        if (!character.well_formed || character.code == 0x1B) std::abort();
        text.remove_prefix(character.length);
    }
}

// The input, cut at form feeds, is what each tool says in turn.
std::array<std::string_view, 7> parts_of(std::string_view text) {
    std::array<std::string_view, 7> parts;
    for (std::string_view& part : parts) {
        part = text.substr(0, text.find('\f'));
        text.remove_prefix(std::min(part.size() + 1, text.size()));
    }
    return parts;
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto parts = parts_of(text);
    quoin::portal::Scan scan;
    quoin::portal::Evidence& evidence = scan.evidence;
    evidence.by_place = quoin::portal::read_boxes(parts[0]);
    evidence.by_file = quoin::portal::read_boxes(parts[1]);
    evidence.looks = quoin::portal::read_looks(parts[2]);
    evidence.facts = quoin::portal::read_facts(parts[3]);
    evidence.fonts = quoin::portal::read_fonts(parts[4]);
    evidence.tagged_text = quoin::portal::structure_text(parts[5]);
    evidence.names = quoin::portal::read_names(parts[6]);
    evidence.pictures = quoin::portal::read_pictures(parts[6]);
    evidence.images = quoin::portal::count_images(parts[6]);
    scan.found = quoin::portal::find_all(evidence.by_place);
    scan.faults = quoin::portal::find_faults(evidence, scan.found);
    require_printable(quoin::portal::report_text("draft.pdf", scan));
    require_printable(quoin::portal::report_json("draft.pdf", scan).dump()); // throws on bad UTF-8
    return 0;
}

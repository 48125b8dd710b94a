// Any bytes shaped by a face of each outline format, and their line breaks: nothing crashes, and
// every offset stays in the text.

#include "compiler/stages/composition/break_opportunities.hpp"
#include "compiler/stages/fonts/shape.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <string_view>

namespace {

using quoin::fonts::Face;

const Face& face(unsigned choice) {
    static const std::filesystem::path folder = std::filesystem::path(QUOIN_DATA_FOLDER) / "fonts";
    static const std::array<Face, 3> faces{
        Face(folder / "opentype/linux-libertine/LinLibertine_R.otf"),
        Face(folder / "truetype/gentiumplus/GentiumBookPlus-Regular.ttf"),
        Face(folder / "truetype/crosextra/Carlito-Regular.ttf")};
    return faces.at(choice % faces.size());
}

void require(bool holds) {
    if (!holds) std::abort();
}

void check_shape(const Face& shaped_by, std::string_view text,
                 const quoin::fonts::ShapingFeatures& features) {
    std::size_t end = 0;
    for (const quoin::fonts::Glyph& glyph : quoin::fonts::shape(shaped_by, text, features)) {
        if (glyph.text_length == 0) continue;
        require(glyph.text_begin >= end);
        end = glyph.text_begin + std::size_t{glyph.text_length};
        require(end <= text.size());
    }
}

void check_breaks(std::string_view text) {
    std::size_t last = 0;
    for (const std::size_t offset : quoin::composition::break_opportunities(text)) {
        require(offset > last && offset < text.size());
        last = offset;
    }
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const unsigned choice = data[0];
    const std::string text(data + 1, data + size);
    const bool small_caps = (choice & 0x10) != 0;
    const bool oldstyle_figures = (choice & 0x20) != 0;
    check_shape(face(choice & 0x0F), text, {small_caps, oldstyle_figures, true, "en-US"});
    check_breaks(text);
    return 0;
}

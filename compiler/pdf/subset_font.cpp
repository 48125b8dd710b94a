// Subsets by hb-subset, without all that only shaping and screens need.
#include "compiler/pdf/subset_font.hpp"

#include "compiler/pdf/digest.hpp"

#include <hb-ot.h>
#include <hb-subset.h>

#include <array>
#include <cmath>
#include <memory>
#include <stdexcept>

namespace quoin {

namespace {

template<auto destroy>
struct Destroy {
    template<typename T>
    void operator()(T* object) const {
        destroy(object);
    }
};
using Input = std::unique_ptr<hb_subset_input_t, Destroy<hb_subset_input_destroy>>;
using Plan = std::unique_ptr<hb_subset_plan_t, Destroy<hb_subset_plan_destroy>>;
using HbFace = std::unique_ptr<hb_face_t, Destroy<hb_face_destroy>>;
using Blob = std::unique_ptr<hb_blob_t, Destroy<hb_blob_destroy>>;

constexpr std::array dropped = {
    HB_TAG('G', 'S', 'U', 'B'), HB_TAG('G', 'P', 'O', 'S'), HB_TAG('G', 'D', 'E', 'F'),
    HB_TAG('k', 'e', 'r', 'n'), HB_TAG('n', 'a', 'm', 'e'), HB_TAG('p', 'o', 's', 't'),
    HB_TAG('O', 'S', '/', '2'), HB_TAG('D', 'S', 'I', 'G'), HB_TAG('g', 'a', 's', 'p'),
    HB_TAG('S', 'T', 'A', 'T'), HB_TAG('M', 'A', 'T', 'H'), HB_TAG('B', 'A', 'S', 'E'),
    HB_TAG('J', 'S', 'T', 'F'), HB_TAG('V', 'O', 'R', 'G'), HB_TAG('v', 'h', 'e', 'a'),
    HB_TAG('v', 'm', 't', 'x'), HB_TAG('h', 'd', 'm', 'x'), HB_TAG('V', 'D', 'M', 'X'),
    HB_TAG('L', 'T', 'S', 'H'), HB_TAG('F', 'F', 'T', 'M'), HB_TAG('m', 'e', 't', 'a')};

Input make_input(const Face& face, const std::vector<std::uint32_t>& glyphs) {
    Input input(hb_subset_input_create_or_fail());
    if (!input) throw std::bad_alloc();
    // Subroutines of a whole font cost a subset more than they save, once it is compressed.
    hb_subset_input_set_flags(input.get(), HB_SUBSET_FLAGS_NO_HINTING |
                                               HB_SUBSET_FLAGS_NOTDEF_OUTLINE |
                                               HB_SUBSET_FLAGS_DESUBROUTINIZE);
    hb_set_t* const kept = hb_subset_input_glyph_set(input.get());
    for (const std::uint32_t glyph : glyphs)
        hb_set_add(kept, glyph);
    hb_set_t* const tables = hb_subset_input_set(input.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
    for (const hb_tag_t tag : dropped)
        hb_set_add(tables, tag);
    // A CIDFont's glyphs are found without it (ISO 32000-1, 9.7.4.2), but an OpenType font program
    // shall have one (table 126).
    if (!face.is_cff()) hb_set_add(tables, HB_TAG('c', 'm', 'a', 'p'));
    return input;
}

std::vector<double> glyph_widths(hb_face_t* subset, int units_per_em) {
    struct FontDestroy {
        void operator()(hb_font_t* font) const { hb_font_destroy(font); }
    };
    const std::unique_ptr<hb_font_t, FontDestroy> font(hb_font_create(subset));
    std::vector<double> widths(hb_face_get_glyph_count(subset));
    for (std::uint32_t glyph = 0; glyph < widths.size(); ++glyph)
        widths[glyph] = hb_font_get_glyph_h_advance(font.get(), glyph) * 1000.0 / units_per_em;
    return widths;
}

[[noreturn]] void refuse(const Face& face) {
    throw std::runtime_error("the font '" + face.file().string() +
                             "' cannot be cut down to the glyphs used");
}

}

SubsetFont subset_font(const Face& face, const std::vector<std::uint32_t>& glyphs) {
    const Input input = make_input(face, glyphs);
    const Plan plan(hb_subset_plan_create_or_fail(face.hb_face(), input.get()));
    if (!plan) refuse(face);
    const HbFace subset(hb_subset_plan_execute_or_fail(plan.get()));
    if (!subset) refuse(face);

    SubsetFont font;
    const hb_map_t* const new_of = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
    for (const std::uint32_t glyph : glyphs) {
        font.glyph_of[glyph] = hb_map_get(new_of, glyph);
        if (font.glyph_of[glyph] == HB_MAP_VALUE_INVALID) refuse(face);
    }
    const Blob blob(hb_face_reference_blob(subset.get()));
    unsigned length = 0;
    const char* const bytes = hb_blob_get_data(blob.get(), &length);
    if (length == 0) refuse(face);
    font.program.assign(bytes, length);
    const HbFace reloaded(hb_face_create(blob.get(), 0)); // the built face has no glyph count yet
    font.widths = glyph_widths(reloaded.get(), face.units_per_em());
    return font;
}

std::string subset_tag(std::string_view program) {
    const std::string digest = md5(program);
    std::string tag;
    for (std::size_t i = 0; i < 6; ++i)
        tag += static_cast<char>('A' + static_cast<unsigned char>(digest[i]) % 26);
    return tag + '+';
}

}

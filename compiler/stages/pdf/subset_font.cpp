// Subsets by hb-subset, without hints, for a page is not read at sizes that need them.
#include "compiler/stages/pdf/subset_font.hpp"

#include "compiler/base/digest.hpp"

#include <hb-ot.h>
#include <hb-subset.h>

#include <array>
#include <memory>
#include <span>
#include <stdexcept>

namespace quoin::pdf {

namespace {

template<auto destroy>
struct Destroy {
    template<typename T>
    void operator()(T* object) const {
        destroy(object);
    }
};
using SubsetInput = std::unique_ptr<hb_subset_input_t, Destroy<hb_subset_input_destroy>>;
using Plan = std::unique_ptr<hb_subset_plan_t, Destroy<hb_subset_plan_destroy>>;
using HbFace = std::unique_ptr<hb_face_t, Destroy<hb_face_destroy>>;
using FontBytes = std::unique_ptr<hb_blob_t, Destroy<hb_blob_destroy>>;

// What an embedded program needs of a face (ISO 32000-1, 9.9), and the only tables that the
// subsetter sees: to look through a whole family's cmap and layout rules takes it longer than all
// the rest.
constexpr std::array<hb_tag_t, 4> metrics = {HB_TAG('h', 'e', 'a', 'd'), HB_TAG('h', 'h', 'e', 'a'),
                                             HB_TAG('h', 'm', 't', 'x'),
                                             HB_TAG('m', 'a', 'x', 'p')};
constexpr std::array<hb_tag_t, 2> glyf_outlines = {HB_TAG('l', 'o', 'c', 'a'),
                                                   HB_TAG('g', 'l', 'y', 'f')};
constexpr std::array<hb_tag_t, 1> cff_outlines = {HB_TAG('C', 'F', 'F', ' ')};

void copy_tables(hb_face_t* from, std::span<const hb_tag_t> tags, hb_face_t* to) {
    for (const hb_tag_t tag : tags)
        hb_face_builder_add_table(to, tag, FontBytes(hb_face_reference_table(from, tag)).get());
}

HbFace bare_face(const fonts::Face& face) {
    HbFace bare(hb_face_builder_create());
    copy_tables(face.hb_face(), metrics, bare.get());
    if (face.is_cff())
        copy_tables(face.hb_face(), cff_outlines, bare.get());
    else
        copy_tables(face.hb_face(), glyf_outlines, bare.get());
    return bare;
}

SubsetInput make_input(const std::vector<std::uint32_t>& glyphs) {
    SubsetInput input(hb_subset_input_create_or_fail());
    if (!input) throw std::bad_alloc();
    // Subroutines of a whole font cost a subset more than they save, once it is compressed.
    hb_subset_input_set_flags(input.get(),
                              HB_SUBSET_FLAGS_NO_HINTING | HB_SUBSET_FLAGS_DESUBROUTINIZE);
    hb_set_t* const kept = hb_subset_input_glyph_set(input.get());
    for (const std::uint32_t glyph : glyphs)
        hb_set_add(kept, glyph);
    return input;
}

std::vector<double> glyph_widths(const fonts::Face& face, const hb_map_t* old_of) {
    std::vector<double> widths(hb_map_get_population(old_of));
    for (std::uint32_t glyph = 0; glyph < widths.size(); ++glyph)
        widths[glyph] = hb_font_get_glyph_h_advance(face.hb_font(), hb_map_get(old_of, glyph)) *
                        1000.0 / face.units_per_em();
    return widths;
}

// With CFF outlines the table that has them is a font program by itself (table 126), and the sfnt
// around it says nothing more than the dictionaries do.
std::string font_program(hb_face_t* subset, bool is_cff) {
    const FontBytes blob(is_cff ? hb_face_reference_table(subset, HB_TAG('C', 'F', 'F', ' '))
                                : hb_face_reference_blob(subset));
    unsigned length = 0;
    const char* const bytes = hb_blob_get_data(blob.get(), &length);
    return {bytes, length};
}

std::size_t offset_at(std::string_view cff, std::size_t at, std::size_t size) {
    std::size_t value = 0;
    for (std::size_t i = 0; i < size && at + i < cff.size(); ++i)
        value = value << 8U | static_cast<unsigned char>(cff[at + i]);
    return value;
}

// Whether the first operator of the top dictionary is ROS, `12 30`: the font is made of CIDs, and
// the subset keeps them (Adobe Technical Note 5176, sections 5 and 9). Its operands are three
// numbers, and in none of them these bytes stand beside each other within its first bytes.
bool is_cid_keyed(std::string_view cff) {
    constexpr std::size_t farthest = 16; // three operands of five bytes at most
    if (cff.size() < 8) return false;
    const std::size_t names = static_cast<unsigned char>(cff[2]); // the header's size
    const std::size_t count = offset_at(cff, names, 2), size = offset_at(cff, names + 2, 1);
    const std::size_t data = names + 2 + (count + 1) * size;
    const std::size_t dictionaries = data + offset_at(cff, names + 3 + count * size, size);
    const std::size_t their_size = offset_at(cff, dictionaries + 2, 1);
    const std::size_t first = dictionaries + 3 + 2 * their_size;
    return first < cff.size() &&
           cff.substr(first, farthest).find("\x0c\x1e") != std::string_view::npos;
}

[[noreturn]] void refuse(const fonts::Face& face) {
    throw std::runtime_error("the font '" + face.file().string() +
                             "' cannot be cut down to the glyphs used");
}

}

SubsetFont subset_font(const fonts::Face& face, const std::vector<std::uint32_t>& glyphs) {
    const SubsetInput input = make_input(glyphs);
    const HbFace bare = bare_face(face);
    const Plan plan(hb_subset_plan_create_or_fail(bare.get(), input.get()));
    if (!plan) refuse(face);
    const HbFace subset(hb_subset_plan_execute_or_fail(plan.get()));
    if (!subset) refuse(face);

    SubsetFont font;
    const hb_map_t* const new_of = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
    for (const std::uint32_t glyph : glyphs) {
        font.glyph_of[glyph] = hb_map_get(new_of, glyph);
        if (font.glyph_of[glyph] == HB_MAP_VALUE_INVALID) refuse(face);
    }
    font.program = font_program(subset.get(), face.is_cff());
    if (font.program.empty()) refuse(face);
    font.cid_keyed = face.is_cff() && is_cid_keyed(font.program);
    font.widths = glyph_widths(face, hb_subset_plan_new_to_old_glyph_mapping(plan.get()));
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

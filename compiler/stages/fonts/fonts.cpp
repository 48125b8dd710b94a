// Reads the list of families and opens font files, which HarfBuzz maps into memory.

#include "compiler/stages/fonts/fonts.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/fonts/messages.hpp"
#include "compiler/stages/syntax/parse.hpp"

#include <hb-ot.h>
#include <hb.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace quoin::fonts {
namespace {

using Blob = std::unique_ptr<hb_blob_t, decltype(&hb_blob_destroy)>;
using OwnedFace = std::unique_ptr<hb_face_t, decltype(&hb_face_destroy)>;
using OwnedFont = std::unique_ptr<hb_font_t, decltype(&hb_font_destroy)>;

OwnedFace open_face(const std::filesystem::path& file) {
    const Blob blob(hb_blob_create_from_file_or_fail(file.c_str()), hb_blob_destroy);
    if (!blob) throw std::runtime_error(fill<messages::unreadable>(file.string()));
    OwnedFace face(hb_face_create(blob.get(), 0), hb_face_destroy);
    if (hb_face_get_glyph_count(face.get()) == 0)
        throw std::runtime_error(fill<messages::no_font>(file.string()));
    hb_face_make_immutable(face.get());
    return face;
}

bool has_table(hb_face_t* face, std::string_view tag) {
    const auto code = hb_tag_from_string(tag.data(), static_cast<int>(tag.size()));
    const Blob table(hb_face_reference_table(face, code), hb_blob_destroy);
    return hb_blob_get_length(table.get()) > 0;
}

struct LetterReach { // of one letter from the baseline, in font units
    int up = 0;
    int down = 0;
};

// A face of another script may have no Latin letters: it gets their usual reach, so that lines
// which it stands in are as high as others.
LetterReach usual_reach(hb_font_t* font, char letter) {
    int across = 0, up = 0;
    hb_font_get_scale(font, &across, &up);
    const double share = letter == 'x' ? 0.5 : letter == 'H' ? 0.7 : 0.75;
    return {static_cast<int>(share * up), static_cast<int>(0.25 * up)};
}

LetterReach reach(hb_font_t* font, char letter, const std::filesystem::path& file) {
    const auto character = static_cast<hb_codepoint_t>(letter);
    hb_codepoint_t glyph = 0;
    hb_glyph_extents_t extents{};
    hb_font_extents_t line{};
    if (!hb_font_get_nominal_glyph(font, character, &glyph) && hb_font_get_h_extents(font, &line) &&
        hb_font_get_nominal_glyph(font, ' ', &glyph))
        return usual_reach(font, letter);
    if (!hb_font_get_nominal_glyph(font, character, &glyph) ||
        !hb_font_get_glyph_extents(font, glyph, &extents))
        throw std::runtime_error(fill<messages::no_letter>(file.string(), letter));
    return {extents.y_bearing, -(extents.y_bearing + extents.height)};
}

struct StyleLabel {
    std::string_view label;
    FaceStyle style;
};

constexpr std::array<StyleLabel, 4> style_labels{{
    {"regular", {.bold = false, .italic = false}},
    {"italic", {.bold = false, .italic = true}},
    {"bold", {.bold = true, .italic = false}},
    {"bold-italic", {.bold = true, .italic = true}},
}};

constexpr std::array<std::string_view, 7> known_labels{"family", "licence", "package",    "regular",
                                                       "italic", "bold",    "bold-italic"};

// Where a field's value is kept in a family; null for a label that is not known.
std::string* slot(Family& family, std::string_view label) {
    if (label == "family") return &family.name;
    if (label == "licence") return &family.licence;
    if (label == "package") return &family.package;
    const auto* found = std::ranges::find(style_labels, label, &StyleLabel::label);
    return found == style_labels.end() ? nullptr : &family.files[found->style];
}

void report_unknown(const syntax::Node& node, Diagnostics& diagnostics) {
    std::string mend = did_you_mean(node.label.text, known_labels);
    if (mend.empty()) mend = fill<messages::expected_labels>();
    diagnostics.error(node.label.place, fill<messages::unknown_label>(node.spelled, mend));
}

void read_family_line(const syntax::Node& node, Family& family, Diagnostics& diagnostics) {
    std::string* value = slot(family, node.label.text);
    if (value == nullptr)
        report_unknown(node, diagnostics);
    else if (!value->empty())
        diagnostics.error(node.label.place, fill<messages::second_label>(node.label.text));
    else
        *value = node.value.joined();
}

void report_missing(Family& family, Place place, Diagnostics& diagnostics) {
    for (const std::string_view label : known_labels)
        if (slot(family, label)->empty()) diagnostics.error(place, fill<messages::no_label>(label));
}

// A block as a family, or nothing for one that holds comments alone.
std::optional<Family> read_family(const syntax::Block& block, Diagnostics& diagnostics) {
    Family family;
    std::optional<Place> first;
    for (const syntax::Node& node : block) {
        if (node.kind == syntax::Node::Kind::comment) continue;
        first = first.value_or(node.place);
        if (node.kind == syntax::Node::Kind::field)
            read_family_line(node, family, diagnostics);
        else
            diagnostics.error(node.place, fill<messages::bullet>());
    }
    if (!first) return std::nullopt;
    report_missing(family, *first, diagnostics);
    return family;
}

}

Face::Face(const std::filesystem::path& file) : file_(file) {
    OwnedFace face = open_face(file);
    OwnedFont font(hb_font_create(face.get()), hb_font_destroy);
    hb_font_make_immutable(font.get());
    ascent_ = reach(font.get(), 'd', file).up;
    descent_ = reach(font.get(), 'p', file).down;
    cap_height_ = reach(font.get(), 'H', file).up;
    x_height_ = reach(font.get(), 'x', file).up;
    units_per_em_ = static_cast<int>(hb_face_get_upem(face.get()));
    is_cff_ = has_table(face.get(), "CFF ");
    font_ = font.release();
    face_ = face.release();
    for (std::size_t code = 0; code < ascii_.size(); ++code)
        ascii_[code] = maps(static_cast<char32_t>(code));
}

Face::~Face() {
    hb_font_destroy(font_);
    hb_face_destroy(face_);
}

bool Face::maps(char32_t character) const {
    hb_codepoint_t glyph = 0;
    return hb_font_get_nominal_glyph(font_, character, &glyph) != 0;
}

bool Face::has_feature(const char* tag) const {
    constexpr unsigned most = 256;
    std::array<hb_tag_t, most> tags{};
    unsigned count = most;
    hb_ot_layout_table_get_feature_tags(face_, HB_OT_TAG_GSUB, 0, &count, tags.data());
    return std::find(tags.begin(), tags.begin() + count, HB_TAG(tag[0], tag[1], tag[2], tag[3])) !=
           tags.begin() + count;
}

std::unique_ptr<Fonts> Fonts::open(Sources& sources, const std::filesystem::path& folder,
                                   Diagnostics& diagnostics) {
    const auto file = sources.read(folder / "families", diagnostics);
    if (!file) return nullptr;
    const syntax::Tree tree = syntax::parse(sources, *file, diagnostics);
    auto fonts = std::make_unique<Fonts>();
    fonts->folder_ = folder;
    for (const syntax::Block& block : tree.heading) {
        std::optional<Family> family = read_family(block, diagnostics);
        if (family && fonts->family(family->name) != nullptr)
            diagnostics.error(block.front().place, fill<messages::second_family>(family->name));
        else if (family)
            fonts->families_.push_back(std::move(*family));
    }
    for (const syntax::SectionTree& section : tree.sections)
        diagnostics.error(section.opening.place, fill<messages::section>());
    return fonts;
}

const Family* Fonts::family(std::string_view name) const {
    const auto found = std::ranges::find(
        families_, lower_case(name), [](const Family& family) { return lower_case(family.name); });
    return found == families_.end() ? nullptr : &*found;
}

std::vector<std::string_view> Fonts::names() const {
    std::vector<std::string_view> names;
    for (const Family& family : families_)
        names.push_back(family.name);
    return names;
}

const Face* Fonts::face(const Family& family, FaceStyle style, std::string& fault) {
    const auto found = family.files.find(style);
    if (found == family.files.end() || found->second.empty()) {
        fault = fill<messages::no_style>(family.name);
        return nullptr;
    }
    const std::scoped_lock lock(mutex_);
    std::unique_ptr<Face>& face = faces_[found->second];
    const std::filesystem::path file = folder_ / found->second;
    std::error_code ignored;
    if (!face && !std::filesystem::exists(file, ignored)) {
        fault = fill<messages::no_file>(file.string(), family.package);
        return nullptr;
    }
    try {
        if (!face) face = std::make_unique<Face>(file);
    } catch (const std::runtime_error& error) {
        fault = error.what();
    }
    return face.get();
}

}

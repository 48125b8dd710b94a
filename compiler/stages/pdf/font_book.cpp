// Collecting what is shown, then writing the font dictionaries (ISO 32000-1, section 9.7).
#include "compiler/stages/pdf/font_book.hpp"

#include "compiler/stages/pdf/font_descriptor.hpp"
#include "compiler/stages/pdf/subset_font.hpp"
#include "compiler/stages/pdf/to_unicode.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::pdf {

namespace {

PdfReference write_program(const fonts::Face& face, const SubsetFont& subset, PdfFile& file) {
    if (face.is_cff())
        return file.add_stream({{"Subtype", PdfName{"CIDFontType0C"}}}, subset.program);
    return file.add_stream({{"Length1", static_cast<std::int64_t>(subset.program.size())}},
                           subset.program);
}

// Table 117: from code 0 on one after another, or each by its own code.
PdfArray widths_of(const SubsetFont& subset) {
    PdfArray widths;
    for (const double width : subset.widths)
        widths.push_back(PdfReal{width, width_decimals});
    if (!subset.cid_keyed) return {0, widths};
    PdfArray by_code;
    for (const auto& [id, glyph] : subset.glyph_of) {
        by_code.push_back(static_cast<std::int64_t>(id));
        by_code.push_back(PdfArray{widths.at(glyph)});
    }
    return by_code;
}

PdfReference write_cid_font(const fonts::Face& face, const SubsetFont& subset,
                            const std::string& name, PdfFile& file) {
    PdfDictionary descriptor = font_descriptor(face);
    descriptor.push_back({"FontName", PdfName{name}});
    descriptor.push_back(
        {face.is_cff() ? "FontFile3" : "FontFile2", write_program(face, subset, file)});
    PdfDictionary font{{"Type", PdfName{"Font"}},
                       {"Subtype", PdfName{face.is_cff() ? "CIDFontType0" : "CIDFontType2"}},
                       {"BaseFont", PdfName{name}},
                       {"CIDSystemInfo", PdfDictionary{{"Registry", PdfBytes{"Adobe"}},
                                                       {"Ordering", PdfBytes{"Identity"}},
                                                       {"Supplement", 0}}},
                       {"FontDescriptor", file.add(descriptor)},
                       {"W", widths_of(subset)}};
    if (!face.is_cff()) font.push_back({"CIDToGIDMap", PdfName{"Identity"}});
    return file.add(font);
}

PdfReference write_font(const fonts::Face& face, const std::string& name, PdfReference cid_font,
                        const std::map<std::uint32_t, std::string_view>& texts, PdfFile& file) {
    // Table 121: with CIDFontType0 the encoding's name is part of the font's.
    return file.add({{"Type", PdfName{"Font"}},
                     {"Subtype", PdfName{"Type0"}},
                     {"BaseFont", PdfName{face.is_cff() ? name + "-Identity-H" : name}},
                     {"Encoding", PdfName{"Identity-H"}},
                     {"DescendantFonts", PdfArray{cid_font}},
                     {"ToUnicode", file.add_stream({}, to_unicode_cmap(texts))}});
}

}

FontBook::Shown& FontBook::shown(const fonts::Face& face) {
    const auto known =
        std::ranges::find_if(faces_, [&](const Shown& one) { return one.face == &face; });
    if (known != faces_.end()) return *known;
    faces_.emplace_back().face = &face;
    return faces_.back();
}

FontBook::FontBook(const composition::Composition& composition, const pages::Pages& pages,
                   PdfFile& file) {
    for (const pages::Page& page : pages.pages)
        for (const pages::PlacedRun& placed : page.runs)
            note(paragraph_of(composition, placed), placed);
    for (Shown& face : faces_)
        embed(face, file);
}

void FontBook::note(const composition::Paragraph& paragraph, const pages::PlacedRun& placed) {
    Shown& face = shown(*paragraph.runs.at(placed.run).face);
    for (const ShownGlyph& glyph : shown_glyphs(paragraph, placed)) {
        auto& texts = face.glyphs[glyph.id].texts;
        if (std::ranges::find(texts, glyph.text) == texts.end()) texts.push_back(glyph.text);
    }
}

void FontBook::embed(Shown& shown, PdfFile& file) {
    std::vector<std::uint32_t> ids;
    for (const auto& [id, entry] : shown.glyphs)
        ids.push_back(id);
    const SubsetFont subset = subset_font(*shown.face, ids);
    const std::string name = subset_tag(subset.program) + postscript_name(*shown.face);
    const PdfReference cid_font = write_cid_font(*shown.face, subset, name, file);

    std::vector<std::map<std::uint32_t, std::string_view>> texts;
    for (auto& [id, entry] : shown.glyphs) {
        entry.code = subset.cid_keyed ? id : subset.glyph_of.at(id);
        entry.width = as_written(subset.widths.at(subset.glyph_of.at(id)), width_decimals);
        texts.resize(std::max(texts.size(), entry.texts.size()));
        for (std::size_t i = 0; i < entry.texts.size(); ++i)
            texts[i][entry.code] = entry.texts[i];
    }
    shown.first_font = static_cast<std::uint32_t>(fonts_.size());
    for (const auto& map : texts) {
        fonts_.push_back(write_font(*shown.face, name, cid_font, map, file));
        names_.push_back(fmt::format("F{}", fonts_.size()));
    }
}

FontCode FontBook::code(const fonts::Face& face, const ShownGlyph& glyph) const {
    const auto shown =
        std::ranges::find_if(faces_, [&](const Shown& one) { return one.face == &face; });
    const Entry& entry = shown->glyphs.at(glyph.id);
    const auto text = std::ranges::find(entry.texts, glyph.text);
    return {shown->first_font + static_cast<std::uint32_t>(text - entry.texts.begin()), entry.code,
            entry.width};
}

PdfDictionary FontBook::resources() const {
    PdfDictionary fonts;
    for (std::size_t i = 0; i < fonts_.size(); ++i)
        fonts.push_back({names_[i].c_str(), fonts_[i]});
    return {{"Font", fonts}};
}

}

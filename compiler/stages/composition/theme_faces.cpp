// Faces are opened when a character first asks for them.
#include "compiler/stages/composition/theme_faces.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/messages.hpp"
#include "compiler/stages/theme/settings.hpp"
#include "compiler/trade/vocabulary.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <string>
#include <system_error>
#include <utility>

namespace quoin::composition {

namespace {

// What shaping exchanges or leaves out needs no glyph of its own.
bool has(const fonts::Face& face, char32_t character) {
    switch (character) {
    case U'\u00A0':
        return face.has_glyph(U' ');
    case U'\u2011':
        return face.has_glyph(U'\u2010') || face.has_glyph(U'-');
    case U'\u200B':
    case U'\u200C':
    case U'\u200D':
    case U'\u2060':
    case U'\uFEFF':
        return true;
    default:
        return face.has_glyph(character);
    }
}

bool has_all(const fonts::Face& face, std::string_view cluster) {
    while (!cluster.empty())
        if (!has(face, take_character(cluster).code)) return false;
    return true;
}

fonts::FaceStyle nearest_style(const fonts::Family& family, fonts::FaceStyle style) {
    const fonts::FaceStyle candidates[] = {style, {style.bold, false}, {false, style.italic}, {}};
    for (const fonts::FaceStyle candidate : candidates)
        if (const auto file = family.files.find(candidate);
            file != family.files.end() && !file->second.empty())
            return candidate;
    return {};
}

std::vector<model::Marks> marks_around(trade::FieldName field,
                                       const std::vector<theme::PatternPiece>& pieces) {
    std::vector<model::Marks> found;
    for (const theme::PatternPiece& piece : pieces) {
        if (piece.kind == theme::PatternPiece::Kind::field && piece.field == field)
            found.push_back(piece.marks);
        for (const model::Marks marks : marks_around(field, piece.group))
            found.push_back(marks);
    }
    return found;
}

fonts::FaceStyle turned(const theme::Style& style, model::Marks marks) {
    return {style.bold != marks.strong, style.italic != marks.emphasis};
}

}

void ThemeFaces::add(const std::string& name, Place place) {
    if (const fonts::Family* family = fonts_.family(name)) {
        families_.emplace_back(family, place);
        return;
    }
    const auto known = fonts_.names();
    diagnostics_.error(place, fill<messages::unknown_family>(theme_.name, name, listed(known),
                                                             did_you_mean(name, known)));
}

ThemeFaces::ThemeFaces(const theme::Theme& theme, fonts::Fonts& fonts, Diagnostics& diagnostics)
    : theme_(theme), fonts_(fonts), diagnostics_(diagnostics) {
    add(theme.family, theme.family_place);
    for (std::size_t index = 0; index < theme.fallback.size(); ++index)
        add(theme.fallback[index], index < theme.fallback_places.size()
                                       ? theme.fallback_places[index]
                                       : theme.family_place);
    for (const std::filesystem::path& file : theme.family_files) {
        std::error_code fault;
        if (!std::filesystem::is_regular_file(file, fault)) {
            diagnostics.error(theme.family_files_place,
                              fill<messages::no_family_file>(in_quotes(file.string())));
            continue;
        }
        of_files_.push_back({file.stem().string(), "", "", {{fonts::FaceStyle{}, file.string()}}});
        families_.emplace_back(&of_files_.back(), theme.family_files_place);
    }
    general_ = families_.size();
    for (const theme::Style& style : theme.styles)
        if (!style.family.empty()) add(style.family, style.places.at("family"));
    check_letters();
}

bool ThemeFaces::check(const std::string& what, const fonts::Face* face, Place family,
                       const theme::Letters& letters, const theme::Places& places) {
    if (face == nullptr) return false;
    const std::size_t errors_before = diagnostics_.count(Severity::error);
    const auto lacks = [&](std::string_view label, std::string_view asked) {
        const Place place = places.find(label)->second;
        // a theme's base is read after it: a family of its own is at fault, not what it inherits
        diagnostics_.error(family.file < place.file ? family : place,
                           fill<messages::face_lacks>(what, asked, face->file().stem().string()));
    };
    if (letters.caps == theme::Caps::small && !face->has_feature("smcp"))
        lacks("caps", "small capitals");
    // where they are what the font has without asking, `lnum` takes them away
    if (letters.figures == theme::Figures::oldstyle && !face->has_feature("onum") &&
        !face->has_feature("lnum"))
        lacks("figures", "old-style figures");
    return diagnostics_.count(Severity::error) == errors_before;
}

Place ThemeFaces::family_place(const theme::Style& style) const {
    return style.family.empty() ? theme_.family_place : style.places.find("family")->second;
}

void ThemeFaces::check_letters() {
    for (std::size_t index = 0; index < theme::style_count; ++index) {
        const theme::Style& style = theme_.styles[index];
        if (style.letters == theme::Letters{}) continue;
        check(fmt::format("style '{}'", name_of(static_cast<theme::StyleName>(index))),
              face_for("a", {style.bold, style.italic}, style.family), family_place(style),
              style.letters, style.places);
    }
    for (const auto& [field, letters] : theme_.fields)
        check_field(field, letters);
}

// In every face that a form sets it in, until one lacks something.
void ThemeFaces::check_field(trade::FieldName field, const theme::FieldLetters& letters) {
    std::vector<const theme::Form*> forms{&theme_.heading};
    for (const auto& [holds, form] : theme_.forms)
        forms.push_back(&form);
    const std::string called = fmt::format("field '{}'", trade::label_of(field));
    for (const theme::Form* form : forms)
        for (const theme::PatternLine& line : form->lines) {
            const theme::Style& style = theme_.style(line.style);
            for (const model::Marks marks : marks_around(field, line.pieces)) {
                const auto* face = face_for("a", turned(style, marks), style.family);
                if (!check(called, face, family_place(style), letters.on({}), letters.places))
                    return;
            }
        }
}

const fonts::Face* ThemeFaces::open(std::size_t family, fonts::FaceStyle style) {
    const auto [entry, is_new] = faces_.try_emplace({family, style}, nullptr);
    if (!is_new) return entry->second;
    const auto& [files, place] = families_[family];
    std::string fault;
    entry->second = fonts_.face(*files, nearest_style(*files, style), fault);
    if (!entry->second) diagnostics_.error(place, std::move(fault));
    return entry->second;
}

const fonts::Face* ThemeFaces::face_for(std::string_view cluster, fonts::FaceStyle style,
                                        const std::string& family) {
    for (std::size_t own = general_; own < families_.size() && !family.empty(); ++own)
        if (families_[own].first == fonts_.family(family))
            if (const fonts::Face* face = open(own, style); face && has_all(*face, cluster))
                return face;
    for (std::size_t general = 0; general < general_; ++general) {
        const fonts::Face* face = open(general, style);
        if (face && has_all(*face, cluster)) return face;
    }
    return nullptr;
}

}

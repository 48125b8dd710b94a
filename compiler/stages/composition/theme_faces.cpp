// Faces are opened when a character first asks for them.
#include "compiler/stages/composition/theme_faces.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/stages/composition/messages.hpp"

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

}

ThemeFaces::ThemeFaces(const theme::Theme& theme, fonts::Fonts& fonts, Diagnostics& diagnostics)
    : fonts_(fonts), diagnostics_(diagnostics) {
    const auto add = [&](const std::string& name, Place place) {
        if (const fonts::Family* family = fonts.family(name)) {
            families_.emplace_back(family, place);
            return;
        }
        const auto known = fonts.names();
        diagnostics.error(place, fill<messages::unknown_family>(theme.name, name, listed(known),
                                                                did_you_mean(name, known)));
    };
    add(theme.family, theme.family_place);
    for (std::size_t index = 0; index < theme.fallback.size(); ++index)
        add(theme.fallback[index], index < theme.fallback_places.size()
                                       ? theme.fallback_places[index]
                                       : theme.family_place);
    for (const std::filesystem::path& file : theme.family_files) {
        std::error_code fault;
        if (!std::filesystem::exists(file, fault)) {
            diagnostics.error(theme.family_files_place,
                              fill<messages::no_family_file>(in_quotes(file.string())));
            continue;
        }
        of_files_.push_back({file.stem().string(), "", "", {{fonts::FaceStyle{}, file.string()}}});
        families_.emplace_back(&of_files_.back(), theme.family_files_place);
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

const fonts::Face* ThemeFaces::face_for(std::string_view cluster, fonts::FaceStyle style) {
    for (std::size_t family = 0; family < families_.size(); ++family) {
        const fonts::Face* face = open(family, style);
        if (face && has_all(*face, cluster)) return face;
    }
    return nullptr;
}

}

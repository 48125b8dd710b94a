// The faces of a theme: its family's, and those of the families it falls back to.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <deque>
#include <map>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::composition {

class ThemeFaces {
public:
    // Reports each family that is not known.
    ThemeFaces(const theme::Theme& theme, fonts::Fonts& fonts, Diagnostics& diagnostics);

    // The first face that has every character of `cluster`; null if none has. A family without
    // the style gives its nearest.
    const fonts::Face* face_for(std::string_view cluster, fonts::FaceStyle style);

private:
    const fonts::Face* open(std::size_t family,
                            fonts::FaceStyle style); // null, and reported once, on a fault

    fonts::Fonts& fonts_;
    Diagnostics& diagnostics_;
    std::deque<fonts::Family> of_files_; // one for each font file that the theme names
    std::vector<std::pair<const fonts::Family*, Place>> families_; // in the order they are tried
    std::map<std::pair<std::size_t, fonts::FaceStyle>, const fonts::Face*> faces_;
};

}

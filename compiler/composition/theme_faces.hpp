// The faces of a theme: its family's, and those of the families it falls back to.
#pragma once

#include "compiler/fonts/fonts.hpp"
#include "compiler/source/diagnostics.hpp"
#include "compiler/theme/theme.hpp"

#include <map>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin {

class ThemeFaces {
public:
    // Reports each family that is not known.
    ThemeFaces(const Theme& theme, Fonts& fonts, Diagnostics& diagnostics);

    // The first face that has every character of `cluster`; null if none has. A family without
    // the style gives its nearest.
    const Face* face_for(std::string_view cluster, FaceStyle style);

private:
    const Face* open(std::size_t family, FaceStyle style); // null, and reported once, on a fault

    Fonts& fonts_;
    Diagnostics& diagnostics_;
    std::vector<std::pair<const Family*, Place>> families_; // in the order they are tried
    std::map<std::pair<std::size_t, FaceStyle>, const Face*> faces_;
};

}

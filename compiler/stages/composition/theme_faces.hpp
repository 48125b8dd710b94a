// The faces of a theme: its family's, and those of the families it falls back to.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <deque>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::composition {

class ThemeFaces {
public:
    // Reports each family that is not known, and what a style or a field asks for that its family
    // lacks.
    ThemeFaces(const theme::Theme& theme, fonts::Fonts& fonts, Diagnostics& diagnostics);

    // The first face that has every character of `cluster`, of `family` before all others; null if
    // none has. A family without the style gives its nearest. No `family`: the theme's.
    const fonts::Face* face_for(std::string_view cluster, fonts::FaceStyle style,
                                const std::string& family = {});

private:
    void add(const std::string& name, Place place);
    void check_letters();
    void check_field(trade::FieldName field, const theme::FieldLetters& letters);
    // Whether the face, of the family asked for at `family`, has what the letters of `what` ask
    // for.
    bool check(const std::string& what, const fonts::Face* face, Place family,
               const theme::Letters& letters, const theme::Places& places);
    Place family_place(const theme::Style& style) const;
    const fonts::Face* open(std::size_t family,
                            fonts::FaceStyle style); // null, and reported once, on a fault

    const theme::Theme& theme_;
    fonts::Fonts& fonts_;
    Diagnostics& diagnostics_;
    std::deque<fonts::Family> of_files_; // one for each font file that the theme names
    std::vector<std::pair<const fonts::Family*, Place>> families_; // in the order they are tried
    std::size_t general_ = 0; // so many of them are tried for any style; the rest are a style's own
    std::map<std::pair<std::size_t, fonts::FaceStyle>, const fonts::Face*> faces_;
};

}

// A sheet of numbered remarks, set in a theme's own styles, to go behind the pages of a résumé.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <optional>
#include <string>
#include <vector>

namespace quoin::composition {

struct Remark {
    std::string number; // the label of the list item
    // UTF-8, with straight quotes as messages have them; what leads is set in bold, what follows in
    // italics.
    std::string lead, text, reason;
};

struct RemarkGroup {
    std::string title;
    std::vector<Remark> remarks;
};

struct SheetLine { // what leads is set in bold
    std::string lead, text;
};

struct Sheet {
    std::string title;
    std::vector<std::string> opening; // paragraphs above the groups
    std::vector<RemarkGroup> groups;
    std::vector<SheetLine> closing = {}; // paragraphs below the groups
};

// One section: H2 the title, H3 each group's, its remarks a list. What no face of the theme can
// show is set as a question mark. None if the theme's fonts cannot be opened.
std::optional<Composition> compose_sheet(const Sheet& sheet, const model::Settings& settings,
                                         const theme::Theme& theme, fonts::Fonts& fonts);

// The parts of `more` after those of `composition`, whose title, author, language and running head
// stay.
void append(Composition& composition, Composition more);

}

// Pages with numbered flags in their margins, and a sheet behind them that lists what the flags
// say.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/composition/sheet.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/pages/notes.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace quoin::commands {

struct MarkedPages {
    const composition::Composition& composition; // of the pages
    const theme::Theme& theme;
    const model::Settings& settings;
    pages::Pages pages;
    std::vector<pages::Note> notes; // without their flags yet
    double side_margin = 0;         // pt
    composition::Sheet sheet;
    std::string title; // of the document
};

// The bytes of a tagged PDF. `time` is document_time().
std::string marked_pdf(MarkedPages marked, fonts::Fonts& fonts, std::optional<std::int64_t> time);

}

// The way through, from a source file to a fitted page: each stage once, in order. Every verb that
// needs the page comes through here, so that no two can disagree about it.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/fit.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/pages/pages.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace quoin::stages {

struct Choices { // what the command line asks for over the résumé's own settings
    std::vector<std::string> tags;
    std::optional<std::string> theme;
    std::optional<trade::Paper> paper;
};

struct Typeset {
    model::Resume resume; // as selected
    theme::Theme theme;
    composition::Composition composition;
    std::variant<fit::Fit, fit::Overflow> fit;
};

// The first half of the way, as far as the model: what the tags asked for leave of the résumé.
// `folder` is data_folder().
std::optional<model::Resume> selected_resume(Sources& sources, std::uint32_t file,
                                             const Choices& choices,
                                             const std::filesystem::path& folder,
                                             Diagnostics& diagnostics);

// The theme that is asked for; none after an error.
std::optional<theme::Theme> theme_for(const model::Resume& resume, const Choices& choices,
                                      Sources& sources, std::uint32_t file,
                                      const std::filesystem::path& folder,
                                      Diagnostics& diagnostics);

// The second half, from the model to the page.
std::optional<Typeset> typeset_in(model::Resume resume, const theme::Theme& theme,
                                  const std::filesystem::path& folder, fonts::Fonts& fonts,
                                  Diagnostics& diagnostics);
std::optional<Typeset> typeset_selected(model::Resume resume, Sources& sources, std::uint32_t file,
                                        const Choices& choices, const std::filesystem::path& folder,
                                        fonts::Fonts& fonts, Diagnostics& diagnostics);

// All of it. None if there was an error; every error is reported.
std::optional<Typeset> typeset(Sources& sources, std::uint32_t file, const Choices& choices,
                               const std::filesystem::path& folder, fonts::Fonts& fonts,
                               Diagnostics& diagnostics);

// As it fits or, where it does not, as a draft has it.
fit::Fit fit_or_draft(const Typeset& typeset);

// Of such a fit; a draft bears a rule at the end of its last allowed page.
pages::Pages make_pages(const Typeset& typeset, const fit::Fit& fit);

}

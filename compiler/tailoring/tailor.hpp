// From a full résumé, the selection that serves a posting best and fits. The choice is made by
// heights as they are composed; whether it fits is asked of the fit itself, and where the two do
// not agree it is made again with as much room as the fit has shown to be there.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/stages/fonts/fonts.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"
#include "compiler/stages/typeset.hpp"
#include "compiler/tailoring/choose.hpp"
#include "compiler/tailoring/demand.hpp"
#include "compiler/tailoring/parts.hpp"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <vector>

namespace quoin::tailoring {

struct Tools {
    const theme::Theme& theme;
    const std::filesystem::path& folder; // data_folder()
    fonts::Fonts& fonts;
};

struct Tailored {
    Offer offer;
    Choice choice;
    stages::Typeset typeset; // of what is taken; too long, if what must be there is
    int asked = 0;           // how often the fit was
};

// None if it cannot be composed, which is reported.
std::optional<Tailored> tailor(const model::Resume& resume, const Demand& demand,
                               const Tools& tools, Diagnostics& diagnostics);

// What would have gone for a piece that is left out.
struct Displaced {
    std::size_t piece = 0;
    std::vector<std::size_t> gone;
    double lost = 0; // of the worth of what is taken, as a share
};

// Of what is left out, the pieces that came nearest to being there, nearest first.
std::vector<Displaced> next_in_line(const Tailored& tailored, std::size_t most);

}

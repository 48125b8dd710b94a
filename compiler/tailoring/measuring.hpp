// How high everything in a composition is at the tightest setting, in points.
#pragma once

#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/fit/column.hpp"
#include "compiler/stages/fit/comfort.hpp"
#include "compiler/stages/model/resume.hpp"
#include "compiler/stages/theme/theme.hpp"

#include <cstddef>
#include <vector>

namespace quoin::tailoring {

struct Tightest { // a composition, which outlives this, at its tightest setting
    fit::PageSetting setting;
    std::vector<fit::Column> columns;

    Tightest(const composition::Composition& composition, const theme::Theme& theme,
             const model::Settings& settings);

    double room() const; // of a page, between its margins
    double gap(theme::GapName name) const;
    double ends() const; // of a column: above its first baseline, and below its last
};

struct PositionHeights {
    double head = 0;             // all but bullets
    std::size_t paragraphs = 0;  // of it
    std::vector<double> bullets; // each with the inner ones below it
};

struct SectionHeights {
    double heading = 0;
    std::vector<PositionHeights> positions; // an entry, its further ones, the next
};

struct Measures {
    double top = 0;                       // what stands above all sections
    std::vector<SectionHeights> sections; // one a section of the résumé
};

Measures measure(const model::Resume& resume, const composition::Composition& composition,
                 const Tightest& tightest);

// Which of its section's positions each entry's first is: what prints nothing does not count.
std::vector<std::size_t> first_positions(const model::Section& section);

}

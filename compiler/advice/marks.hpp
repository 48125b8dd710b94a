// Findings at their words on the page.
#pragma once

#include "compiler/advice/proof.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/notes.hpp"
#include "compiler/stages/pages/pages.hpp"

#include <vector>

namespace quoin::advice {

// A note for each finding, numbered from 1 in their order, on each page that holds some of its
// words. A finding whose place is printed in another form than typed (a date, say) marks all that
// was made of that piece; one whose line is not printed stands beside the line printed nearest
// above it in the source, or with none beside the first.
std::vector<pages::Note> notes_of(const Proof& proof, const composition::Composition& composition,
                                  const pages::Pages& pages);

}

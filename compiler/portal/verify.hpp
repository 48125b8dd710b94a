// Whether every word of a composition comes out of its PDF: whole, and in order.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/portal/reading.hpp"
#include "compiler/stages/composition/composition.hpp"
#include "compiler/stages/pages/pages.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::portal {

struct ExpectedWord {
    std::string text;
    Place place;          // of the text it came from
    bool at_edge = false; // a theme's `{fill}` sends it to the right edge

    bool operator==(const ExpectedWord&) const = default;
};

std::vector<ExpectedWord> expected_words(const composition::Composition& composition);

// The expected words that the reading does not have, or not in their place: as few as explain the
// difference. What the reading has beside them, such as a running head, is no fault. A word that a
// line's end parts is whole.
std::vector<ExpectedWord> lost_words(const std::vector<ExpectedWord>& expected,
                                     const Reading& reading);

// Of what stands at the right edge, each piece that the reading has apart from the word before it.
std::vector<std::string> loose_pieces(const std::vector<ExpectedWord>& expected,
                                      const Reading& reading);

// What of a page stands beside what is read before or after it; empty if nothing does.
std::string_view side_by_side(const composition::Composition& composition);

// Reads `pdf`, made of `pages`, back in the order of the place and of the file, and reports what
// was lost, at its place in the source; `file` is the place for a fault of the whole. False if
// anything was. What a theme sends to the right edge may come apart in the order of the place, and
// what stands side by side is mixed by readers of other orders: warnings say so.
bool verify_pdf(const composition::Composition& composition, const pages::Pages& pages,
                std::string_view pdf, Place file, Diagnostics& diagnostics);

}

// What would save a line of the page.
#pragma once

#include "compiler/session/session.hpp"

#include <vector>

namespace quoin::server {

struct LineSaving { // by words taken out of one text
    Place place;    // the last line of the source that the text stands in
    std::size_t characters = 0;
};
// Of every text of several lines that a few characters fewer bring to a line less.
std::vector<LineSaving> line_savings(const session::State& state);

}

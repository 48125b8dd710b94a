// A change of a source file that mends something.
#pragma once

#include "compiler/base/place.hpp"

#include <string>
#include <vector>

namespace quoin {

// The source text at `place` becomes `replacement`. A place of length 0 is a point between two
// characters, with the invisible signs that stand there; a length of one more than what is left of
// the line takes the line's end in too.
struct Edit {
    Place place;
    std::string replacement;

    bool operator==(const Edit&) const = default;
};

using Edits = std::vector<Edit>;

}

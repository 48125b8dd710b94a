// How much a finding weighs, in a résumé's source or in a PDF.
#pragma once

#include <string_view>

namespace quoin::trade {

enum class Weight {
    must,     // a reader or a portal will stumble
    should,   // advisers will ask for it
    consider, // judgement
};

std::string_view name_of(Weight weight); // "must", "should", "consider"

}

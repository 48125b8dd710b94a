// How dates are written in the source, whatever form they are printed in.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/stages/model/dates.hpp"

#include <string>
#include <vector>

namespace quoin::advice {

// With plain spaces, in the words of the résumé's language.
std::string spelled(const model::Date& date, trade::DateForm form,
                    const page_words::DateWords& words);

// What brings every date to `form`; none if that is how they stand, or if they would then mean
// other dates.
std::vector<Edit> respellings(const model::DateRange& range, trade::DateForm form,
                              const page_words::DateWords& words);

}

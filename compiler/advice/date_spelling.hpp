// How dates are written in the source, whatever form they are printed in.
#pragma once

#include "compiler/stages/model/dates.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::advice {

struct SpelledDate { // a month and a year
    std::size_t offset = 0, length = 0;
    model::Date date;
    trade::DateForm form{};
};

// Those that tell of a form: seasons, years alone, dates with a day, and `May 2026`, which is both
// short and long, do not.
std::vector<SpelledDate> spelled_dates(std::string_view text);

std::string spelled(const model::Date& date, trade::DateForm form); // with a plain space

// The text with every date in `form`; none if that is how it stands, or if it would then mean
// another date.
struct Respelling {
    std::size_t offset = 0, length = 0;
    std::string text;
};
std::vector<Respelling> respellings(std::string_view text, trade::DateForm form);

}

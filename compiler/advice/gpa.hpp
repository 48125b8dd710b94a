// Grade point averages as résumés write them: a value and its scale.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace quoin::advice {

struct Gpa {
    double value = 0;
    std::optional<double> scale;
    std::size_t decimals = 0; // of the value

    bool over_scale() const { return value > scale.value_or(4.0) + 1e-9; }
    // On the scale of 4 that thresholds are spoken of in; others are not judged.
    bool out_of_four() const { return scale.value_or(4.0) > 3.99 && scale.value_or(4.0) < 4.01; }
    bool is_under(double limit) const { return out_of_four() && value < limit; }
};

// Of several the first; none if it does not open with a number, or words and a number.
std::optional<Gpa> read_gpa(std::string_view text);

}

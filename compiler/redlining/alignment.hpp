// Which section, entry and bullet of one draft is which of another, whatever was moved or reworded.
#pragma once

#include "compiler/redlining/flat.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace quoin::redlining {

struct Match { // of one row: for each thing of a draft, the one of the other
    std::vector<std::optional<std::size_t>> of_old, of_new;
    std::vector<bool> moved; // for each of the new: it stands in another order, or under another

    void add(std::size_t old_one, std::size_t new_one) {
        of_old[old_one] = new_one;
        of_new[new_one] = old_one;
    }
};

struct Alignment {
    Flat before, after;
    Match sections, entries, bullets;
};

// The résumés must live as long.
Alignment align(const model::Resume& before, const model::Resume& after);

}

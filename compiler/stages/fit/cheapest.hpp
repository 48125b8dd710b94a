// The cheapest choice of offers that are worth enough together.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace quoin::fit {

struct Offer {
    std::size_t group = 0; // of one group's offers at most one is taken
    std::int64_t worth = 0;
    std::int64_t cost = 0;
};

// Indices of offers worth `need` or more together, at the least cost there is and, of equals, the
// fewest; none if all the best together are worth less. A group's offers stand next to each other.
std::optional<std::vector<std::size_t>> cheapest(std::span<const Offer> offers, std::int64_t need);

}

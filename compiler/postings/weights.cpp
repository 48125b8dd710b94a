#include "compiler/postings/weights.hpp"

#include "compiler/postings/evidence.hpp"

#include <array>

namespace quoin::postings {

double importance_of(Standing standing) {
    constexpr std::array<double, 4> shares{1, 0.9, 0.95, 0.7};
    return shares[static_cast<std::size_t>(standing)];
}

double weight_of(const Term& term) {
    const double odds = odds_of(term.signs);
    return importance_of(term.standing) * odds / (1 + odds);
}

}

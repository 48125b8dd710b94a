#include "compiler/tailoring/asked.hpp"

namespace quoin::tailoring {

Demand asked_of(const matching::Coverage& coverage) {
    Demand demand;
    for (const matching::TermCoverage& covered : coverage.terms) {
        Asked& asked = demand.emplace_back(Asked{covered.term->words, covered.term->weight, {}});
        for (const matching::Showing& showing : covered.showings)
            if (is_found(showing.how)) asked.spots.push_back(showing.spot);
    }
    return demand;
}

}

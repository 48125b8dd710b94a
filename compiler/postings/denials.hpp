// What a posting says it does not ask for, clause by clause: `License not required, though a card
// must be obtained`.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace quoin::postings {

// A sentence in its comparable form asks for nothing: each of its clauses denies, or none asks.
bool asks_for_nothing(std::string_view lower);

// Where clauses of a sentence deny, between the words that turn it.
class Denials {
public:
    explicit Denials(std::string_view sentence);

    bool at(std::size_t byte) const;

private:
    struct Clause {
        std::size_t end = 0;
        bool denies = false;
    };
    std::vector<Clause> clauses_; // of a sentence that is turned
};

}

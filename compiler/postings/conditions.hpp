// What no résumé shows and a posting asks of whoever takes the work: its hours, what it asks of the
// body, age, checks. A reader is to be ready to answer.
#pragma once

#include "compiler/english/tokens.hpp"
#include "compiler/postings/parts.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace quoin::postings {

struct Condition {
    std::string about; // `hours`, `the body`; of several: `hours, checks`
    std::string sentence;
    std::uint32_t line = 0;
};

std::vector<Condition> conditions_in(std::span<const Statement> statements);

// Where a statement makes conditions, clause by clause: what stands there is told with them whole,
// and is nothing that a résumé would show. `Able to lift 50 lb boats with a buddy, and to splice`
// leaves the splicing.
std::vector<english::Extent> clauses_of_conditions(const Statement& statement);

}

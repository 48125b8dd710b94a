// What no résumé shows and a posting asks of whoever takes the work: its hours, what it asks of the
// body, age, checks. A reader is to be ready to answer.
#pragma once

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

}

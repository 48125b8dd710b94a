// Which of the students are asked for.
#pragma once

#include "compiler/caseload/caseload.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace quoin::caseload {

struct Asked {
    bool due = false;    // not ready, or no draft for too long
    std::string stage{}; // of this stage
    std::string needs{}; // must, should, fit, reading, draft: what is wanting
    std::string check{}; // with a finding of this name
    std::optional<Day> since{},
        until{};           // with the last draft on that day or later, or no later one
    std::size_t first = 0; // of those, so many; 0: all
};

bool is_asked_for(const Student& student, const Asked& asked);
void keep_asked(std::vector<Student>& students, const Asked& asked);

}

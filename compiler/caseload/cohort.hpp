// What a cohort has in common: which findings are most frequent, and so what to teach next.
#pragma once

#include "compiler/caseload/student.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace quoin::caseload {

struct CommonFinding {
    std::string check{};
    trade::Weight weight{};
    std::size_t students = 0, findings = 0;
    std::string example{}; // a line that has it; empty where none may be shown
};

// Those that most students have first, of equals the heaviest.
std::vector<CommonFinding> common_findings(const std::vector<Student>& students);

}

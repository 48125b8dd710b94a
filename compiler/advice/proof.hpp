// A résumé proofread: every check run, what the résumé accepts set aside.
#pragma once

#include "compiler/advice/check.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace quoin::advice {

struct SetAside {
    Finding finding;
    const model::Acceptance* acceptance = nullptr; // of the résumé
};

struct LeftOut { // by an office, which has the check off
    std::string_view check;
    std::size_t count = 0;
    std::string office; // whose rule it is: a sentence
};

struct Proof {
    std::vector<Finding> findings;   // by place
    std::vector<SetAside> set_aside; // by place
    std::vector<Finding> reminders;  // by place; no findings about this page
    std::vector<LeftOut> left_out;   // by check
};

// An acceptance that names no check, or one that found nothing, is a finding too.
Proof run_proof(const ProofContext& context);

// What was set aside stands among the findings again, with the reason that the résumé gives.
void take_back_set_aside(Proof& proof);

const Check* find_check(std::string_view name);  // null if there is none
std::size_t check_number(std::string_view name); // its index in all_checks()
Weight weight_of(const Finding& finding);

}

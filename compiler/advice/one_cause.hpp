// One cause, one finding: of several checks that speak of the same words, the one that says most.
#pragma once

#include "compiler/advice/check.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace quoin::advice {

struct Kin { // checks that may touch the same words for one cause, the one that says most first
    std::span<const std::string_view> checks;
    bool on_one_line = false; // they are of a whole line, not of words in it
};
std::span<const Kin> kin_checks();

void keep_one_of_a_cause(std::vector<Finding>& findings);

}

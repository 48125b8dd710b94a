// The office's rules on the command line: read for all inputs before any is looked at.
#pragma once

#include "compiler/advice/offices.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace quoin::commands {

// False after a fault in a file of rules, which is said: no finding is given by half of them.
bool read_offices(advice::Offices& offices, const std::vector<std::string>& inputs,
                  std::string_view verb);

// Of one input, as it is named: `-` is standard input.
const office::Office* office_of(advice::Offices* offices, const std::string& input);

}

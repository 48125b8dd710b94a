// What an office's rules change, told beside the list of checks.
#pragma once

#include "compiler/advice/check.hpp"
#include "compiler/office/office.hpp"

#include <string>

namespace quoin::commands {

// "should → must for experienced (office.rules:8: reason)", a line each; empty if nothing changes.
std::string effect_on(const advice::Check& check, const office::Office& office);

// The numbers as they are, each with what it was, and what else the office asks for.
std::string numbers_of(const office::Office& office);
std::string asked_by(const office::Office& office);

}

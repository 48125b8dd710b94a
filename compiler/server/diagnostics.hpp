// What is said of a document without being asked: errors, what keeps it off its page, findings.
#pragma once

#include "compiler/server/desk.hpp"

#include <filesystem>
#include <map>

namespace quoin::server {

// An array for each file that the state was read from, which may be empty.
std::map<std::filesystem::path, Json> diagnostics_of(const Desk& desk, const session::State& state);

}

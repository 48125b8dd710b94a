// The entries of a section, the most recent first.
#pragma once

#include "compiler/server/edits.hpp"

#include <cstdint>

namespace quoin::server {

// Of the section that a line from 1 stands in; empty if they are so already, or if not each of them
// has dates and lines of its own.
EditBook entries_by_date(const Desk& desk, const session::State& state, std::uint32_t file,
                         std::uint32_t line);

}

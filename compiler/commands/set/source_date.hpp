// The day that a build states for itself, and the one that a résumé is read on.
#pragma once

#include "compiler/stages/model/document_time.hpp"

#include <cstdint>
#include <optional>

namespace quoin::commands {

// https://reproducible-builds.org/specs/source-date-epoch, version 1.1: decimal seconds, none if
// it is not set. False if it is set to anything else.
bool read_epoch(std::optional<std::int64_t>& epoch);

// What is past and what is to come for who proofreads: the build's day, else the clock's.
model::Date reading_day(const std::optional<std::int64_t>& epoch);

}

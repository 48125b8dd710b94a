// The day that a build states for itself.
#pragma once

#include <cstdint>
#include <optional>

namespace quoin {

// https://reproducible-builds.org/specs/source-date-epoch, version 1.1: decimal seconds, none if
// it is not set. False if it is set to anything else.
bool read_epoch(std::optional<std::int64_t>& epoch);

constexpr const char* epoch_fault = "SOURCE_DATE_EPOCH is not a number of seconds since 1970";

}

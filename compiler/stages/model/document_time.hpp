// The day that a document bears.
#pragma once

#include "compiler/stages/model/resume.hpp"

#include <cstdint>
#include <optional>

namespace quoin::model {

// Seconds since 1970: the build's day if it states one, else the day the writer says the résumé was
// brought up to date, else none; never the clock's.
std::optional<std::int64_t> document_time(const std::optional<std::int64_t>& epoch,
                                          const Settings& settings);

}

// Dates typed in forms that are none, of which it is plain all the same what they mean.
#pragma once

#include "compiler/stages/model/local_dates.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace quoin::model {

// `Sep 2025 - present` of `Sep-2025 – (present)`; none if the text can be read, or not told.
std::optional<std::string> dates_meant(std::string_view text,
                                       const LocalDates& local = LocalDates());

// The text itself if it can be read as dates, or what it means; none if it is no date.
std::optional<std::string> as_dates(std::string_view text, const LocalDates& local = LocalDates());

bool is_span_of_dates(std::string_view text, const LocalDates& local); // which has two ends

}

// The months by name, in English, whole and as they are shortened.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace quoin::trade {

constexpr int months_of_year = 12;
constexpr std::array<std::string_view, months_of_year> month_names{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};

struct NamedMonth {
    int month = 0;      // from 1
    bool whole = false; // not shortened
};

// In small letters or capitals; shortened to three letters, or "Sept". None for any other word.
std::optional<NamedMonth> month_named(std::string_view word);

}

#include "compiler/commands/set/source_date.hpp"

#include "compiler/base/numbers.hpp"

#include <chrono>
#include <cstdlib>

namespace quoin::commands {

bool read_epoch(std::optional<std::int64_t>& epoch) {
    const char* given = std::getenv("SOURCE_DATE_EPOCH");
    if (given == nullptr || *given == '\0') return true;
    constexpr std::int64_t end_of_year_9999 =
        253402300799; // PDF dates have four figures for a year
    epoch = number_from<std::int64_t>(given);
    return epoch && *epoch >= 0 && *epoch <= end_of_year_9999;
}

model::Date reading_day(const std::optional<std::int64_t>& epoch) {
    const auto now =
        epoch
            ? std::chrono::sys_seconds(std::chrono::seconds(*epoch))
            : std::chrono::time_point_cast<std::chrono::seconds>(std::chrono::system_clock::now());
    const std::chrono::year_month_day day(std::chrono::floor<std::chrono::days>(now));
    return {static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
            std::nullopt, static_cast<int>(static_cast<unsigned>(day.day()))};
}

}

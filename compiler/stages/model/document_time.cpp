#include "compiler/stages/model/document_time.hpp"

#include <chrono>

namespace quoin::model {

std::optional<std::int64_t> document_time(const std::optional<std::int64_t>& epoch,
                                          const Settings& settings) {
    if (epoch) return epoch;
    const std::optional<Date>& updated = *settings.updated;
    if (!updated) return std::nullopt;
    const std::chrono::year_month_day day(
        std::chrono::year(updated->year),
        std::chrono::month(static_cast<unsigned>(updated->month.value_or(1))),
        std::chrono::day(static_cast<unsigned>(updated->day.value_or(1))));
    return std::chrono::sys_seconds(std::chrono::sys_days(day)).time_since_epoch().count();
}

}

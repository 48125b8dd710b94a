// Fuzz target: dates. A fault lies inside the text; what is read prints and reads as the same.
#include "compiler/model/dates.hpp"

#include <cstdint>
#include <cstdlib>

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

void drop_day(std::optional<quoin::Date>& date) {
    if (date) date->day.reset();
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto result = quoin::read_dates(text);
    if (const auto* fault = std::get_if<quoin::DateFault>(&result)) {
        require(fault->offset + fault->length <= size);
        require(!fault->text.empty());
        return 0;
    }
    auto range = std::get<quoin::DateRange>(result);
    require(range.start || range.end);
    drop_day(range.start);
    drop_day(range.end);
    for (const auto form : {quoin::DateForm::short_month, quoin::DateForm::long_month,
                            quoin::DateForm::month_slash_year, quoin::DateForm::year_month}) {
        const auto again = quoin::read_dates(quoin::print(range, form));
        require(std::holds_alternative<quoin::DateRange>(again));
        require(std::get<quoin::DateRange>(again) == range);
    }
    return 0;
}

// Fuzz target: dates. A fault lies inside the text; what is read prints and reads as the same.
#include "compiler/stages/model/dates.hpp"

#include "tests/english_dates.hpp"

#include <cstdint>
#include <cstdlib>

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

void drop_day(std::optional<quoin::model::Date>& date) {
    if (date) date->day.reset();
}

}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(data, data + size);
    const auto result = quoin::model::read_dates(text);
    if (const auto* fault = std::get_if<quoin::model::DateFault>(&result)) {
        require(fault->offset + fault->length <= size);
        require(!fault->text.empty());
        return 0;
    }
    auto range = std::get<quoin::model::DateRange>(result);
    require(range.start || range.end);
    drop_day(range.start);
    drop_day(range.end);
    for (const auto form :
         {quoin::trade::DateForm::short_month, quoin::trade::DateForm::long_month,
          quoin::trade::DateForm::month_slash_year, quoin::trade::DateForm::year_month}) {
        const auto again = quoin::model::read_dates(print(range, form, quoin::english_dates()));
        require(std::holds_alternative<quoin::model::DateRange>(again));
        require(std::get<quoin::model::DateRange>(again) == range);
    }
    return 0;
}

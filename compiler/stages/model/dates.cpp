// Dates as the model has them: in EDTF, in print, and in months for ordering.
#include "compiler/stages/model/dates.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/trade/months.hpp"

#include <array>
#include <string_view>

namespace quoin::model {
namespace {

constexpr int months_of_season = 3;

std::string_view short_name(int month) {
    return trade::month_names.at(static_cast<std::size_t>(month - 1)).substr(0, 3);
}

std::string_view season_name(Season season) {
    switch (season) {
    case Season::spring:
        return "Spring";
    case Season::summer:
        return "Summer";
    case Season::autumn:
        return "Fall";
    case Season::winter:
        return "Winter";
    }
    return {};
}

std::string padded(int number, std::size_t width) {
    std::string digits = std::to_string(number);
    return digits.size() < width ? std::string(width - digits.size(), '0') + digits : digits;
}

std::string print_date(const Date& date, trade::DateForm form) {
    const std::string year = padded(date.year, 4);
    if (date.season)
        return std::string{season_name(*date.season)}.append(no_break_space).append(year);
    if (!date.month) return year;
    switch (form) {
    case trade::DateForm::short_month:
        return std::string{short_name(*date.month)}.append(no_break_space).append(year);
    case trade::DateForm::long_month:
        return std::string{trade::month_names.at(static_cast<std::size_t>(*date.month - 1))}
            .append(no_break_space)
            .append(year);
    case trade::DateForm::month_slash_year:
        return padded(*date.month, 2) + "/" + year;
    case trade::DateForm::year_month:
        return year + "-" + padded(*date.month, 2);
    }
    return year;
}

}

std::string edtf(const Date& date) {
    std::string text = padded(date.year, 4);
    if (date.season) return text + "-" + std::to_string(static_cast<int>(*date.season));
    if (date.month) text += "-" + padded(*date.month, 2);
    if (date.month && date.day) text += "-" + padded(*date.day, 2);
    return text;
}

std::string edtf(const DateRange& range) {
    const std::string end = range.end ? edtf(*range.end) : "..";
    return range.start ? edtf(*range.start) + "/" + end : end;
}

std::string print(const DateRange& range, trade::DateForm form) {
    std::string text;
    if (range.start)
        text.append(print_date(*range.start, form))
            .append(no_break_space)
            .append("–")
            .append(no_break_space);
    text += range.end ? print_date(*range.end, form) : "Present";
    if (range.expected) text.append(no_break_space).append("(expected)");
    return text;
}

Months months(const Date& date) {
    const int january = date.year * trade::months_of_year;
    if (date.month) return {january + *date.month - 1, january + *date.month - 1};
    if (!date.season) return {january, january + trade::months_of_year - 1};
    const int quarter = (static_cast<int>(*date.season) - 20) % 4; // winter 0, spring 1, …
    return {january + quarter * months_of_season, january + (quarter + 1) * months_of_season - 1};
}

}

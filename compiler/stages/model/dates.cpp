// Dates as the model has them: in EDTF, in print, and in months for ordering.
#include "compiler/stages/model/dates.hpp"

#include "compiler/base/utf8.hpp"
#include "compiler/trade/months.hpp"

#include <fmt/format.h>

#include <utility>

namespace quoin::model {
namespace {

constexpr int months_of_season = 3;

// `{month}` and `{year}` put into a form, with no-break spaces.
std::string in_form(std::string_view form, std::string_view month, std::string_view year) {
    std::string text(form);
    const auto put = [&](std::string_view what, std::string_view value) {
        if (const auto at = text.find(what); at != std::string::npos)
            text.replace(at, what.size(), value);
    };
    put("{month}", month);
    put("{year}", year);
    return replaced(std::move(text), " ", no_break_space);
}

std::string print_date(const Date& date, trade::DateForm form, const page_words::DateWords& words) {
    const auto named = [&](std::string_view as, const auto& names, int number) {
        return in_form(as, names.at(static_cast<std::size_t>(number)),
                       fmt::format("{:04}", date.year));
    };
    if (date.season)
        return named(words.short_date, words.seasons,
                     static_cast<int>(*date.season) - static_cast<int>(Season::spring));
    if (!date.month) return edtf(date);
    switch (form) {
    case trade::DateForm::short_month:
        return named(words.short_date, words.short_months, *date.month - 1);
    case trade::DateForm::long_month:
        return named(words.long_date, words.months, *date.month - 1);
    case trade::DateForm::month_slash_year:
        return fmt::format("{:02}/{:04}", *date.month, date.year);
    case trade::DateForm::year_month:
        break;
    }
    return fmt::format("{:04}-{:02}", date.year, *date.month);
}

}

std::string edtf(const Date& date) {
    std::string text = fmt::format("{:04}", date.year);
    if (date.season) return text + fmt::format("-{}", static_cast<int>(*date.season));
    if (date.month) text += fmt::format("-{:02}", *date.month);
    if (date.month && date.day) text += fmt::format("-{:02}", *date.day);
    return text;
}

std::string edtf(const DateRange& range) {
    const std::string end = range.end ? edtf(*range.end) : "..";
    return range.start ? edtf(*range.start) + "/" + end : end;
}

std::string print(const DateRange& range, trade::DateForm form,
                  const page_words::DateWords& words) {
    std::string text;
    for (const DateRange& spell : range.spells)
        text += (text.empty() ? "" : ", ") + print(spell, form, words);
    if (!range.remark.empty() && range.spells.empty()) {
        DateRange plain = range;
        plain.remark.clear();
        text = print(plain, form, words);
    }
    if (!range.remark.empty()) text += " (" + range.remark + ')';
    if (!text.empty()) return text;
    if (range.start) text = print_date(*range.start, form, words) + "\u00A0–\u00A0";
    text += range.end ? print_date(*range.end, form, words) : words.present;
    if (range.expected) text += "\u00A0" + words.expected;
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

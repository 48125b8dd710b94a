// Dates as a résumé has them, in the terms of EDTF level 1 (ISO 8601-2:2019): a year, a year and
// month, a year and season (21 spring to 24 winter), a day where one was given; ranges of two.
#pragma once

#include "compiler/base/place.hpp"
#include "compiler/stages/model/local_dates.hpp"
#include "compiler/stages/page_words/words.hpp"
#include "compiler/trade/kinds.hpp"
#include "compiler/trade/months.hpp"

#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace quoin::model {

enum class Season { spring = 21, summer = 22, autumn = 23, winter = 24 };

struct Date {
    int year = 0;
    std::optional<int> month; // 1 to 12
    std::optional<Season> season;
    std::optional<int> day; // read, not printed

    bool operator==(const Date&) const = default;
};

// A month and year in a form that tells of itself: seasons, years alone, dates with a day, and
// `May 2026`, which is both short and long, do not.
struct WrittenDate {
    std::size_t offset = 0, length = 0; // bytes into the text
    Date date;
    trade::DateForm form{};
    Place place; // of it in the source, for who has one
};

struct DateRange {
    std::optional<Date> start; // none: a single date, held in `end`
    std::optional<Date> end;   // none: to the present
    bool expected = false;     // the end lies in the future
    // Of several spells (`Summer 2024, Summer 2025`) each; `start` and `end` are of all together.
    std::vector<DateRange> spells = {};
    std::string remark = {}; // `6 weeks`, in parentheses
    // How it was typed
    std::string typed = {};
    std::vector<WrittenDate> written = {};
    // Days typed month first that could have been meant day first: `01/02/2025`
    std::vector<WrittenDate> either_order = {};
    bool one_year = false; // `Nov-Jan 2026`: the year stands there once, and both dates have it

    // As dates, however they were typed.
    bool operator==(const DateRange& other) const {
        return start == other.start && end == other.end && expected == other.expected &&
               spells == other.spells && remark == other.remark;
    }
};

struct DateFault {
    std::size_t offset = 0; // bytes into the text
    std::size_t length = 0;
    std::string text;      // what was found and what was expected
    std::string mend = {}; // what surely should stand there; mostly empty
};

// In English, and with the words of another language.
std::variant<DateRange, DateFault> read_dates(std::string_view text,
                                              const LocalDates& local = LocalDates());

std::string edtf(const Date& date);
std::string edtf(const DateRange& range); // `2026-06/2026-08`, `2026-06/..`, `2026-22`

// With no-break spaces inside and an en dash between, so that a date never breaks over lines.
std::string print(const DateRange& range, trade::DateForm form, const page_words::DateWords& words);

// Months since year 0 of a date's first and last month, for ordering; a season has its three, a
// year its twelve (winter is counted in the year it is named for: January to March).
struct Months {
    int first = 0;
    int last = 0;
};
Months months(const Date& date);

}

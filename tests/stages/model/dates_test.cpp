// Dates: the forms people write, what is wrong with those that cannot be read, EDTF and print.
#include "compiler/stages/model/dates.hpp"

#include "grammar/dates.hpp"

#include "tests/english_dates.hpp"

#include <doctest/doctest.h>
#include <tao/pegtl/contrib/analyze.hpp>

#include <random>
#include <string>
#include <string_view>

// A word of another language is never empty.
template<typename Name, quoin::grammar::dates::Local What>
struct tao::pegtl::analyze_traits<Name, quoin::grammar::dates::local<What>>
    : tao::pegtl::analyze_any_traits<> {};

using quoin::model::Date;
using quoin::model::DateFault;
using quoin::model::DateRange;
using quoin::trade::DateForm;

namespace {

// EDTF, with ` (expected)` after, or the fault with its place.
std::string read(std::string_view text) {
    const auto result = quoin::model::read_dates(text);
    if (const auto* fault = std::get_if<DateFault>(&result))
        return std::to_string(fault->offset) + "+" + std::to_string(fault->length) + ": " +
               fault->text;
    const auto& range = std::get<DateRange>(result);
    return edtf(range) + (range.expected ? " (expected)" : "");
}

struct Case {
    std::string_view typed;
    std::string_view read;
};

}

TEST_CASE("the grammar of dates has no loop without progress") {
    CHECK(tao::pegtl::analyze<quoin::grammar::dates::text>() == 0);
}

TEST_CASE("dates in the forms people write") {
    const Case cases[] = {
        {"Jun 2026", "2026-06"},
        {"June 2026", "2026-06"},
        {"06/2026", "2026-06"},
        {"6/2026", "2026-06"},
        {"2026-06", "2026-06"},
        {"2026-6", "2026-06"},
        {"2026/06", "2026-06"},
        {"06-2026", "2026-06"},
        {"Summer 2026", "2026-22"},
        {"2026", "2026"},
        {"Sept. 2025", "2025-09"},
        {"Sept 2025", "2025-09"},
        {"Sep. 2025", "2025-09"},
        {"september 2025", "2025-09"},
        {"JUNE 2026", "2026-06"},
        {"May, 2025", "2025-05"},
        {"May2025", "2025-05"},
        {"Fall 2025", "2025-23"},
        {"Autumn 2025", "2025-23"},
        {"winter 2025", "2025-24"},
        {"Spring, 2025", "2025-21"},
        {"May 12, 2025", "2025-05-12"},
        {"May 12th, 2025", "2025-05-12"},
        {"12 May 2025", "2025-05-12"},
        {"1st May 2025", "2025-05-01"},
        {"05/12/2025", "2025-05-12"},
        {"2026-06-01", "2026-06-01"},
        {"Feb 29, 2024", "2024-02-29"},
        {"Jun '26", "2026-06"},
        {"Jun ’98", "1998-06"},
        {"Fall '25", "2025-23"},
        {"  Jun\t2026 ", "2026-06"},
        {"Jun\u00A02026", "2026-06"},
        {"1900", "1900"},
        {"2100", "2100"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
    }
}

TEST_CASE("every month's names, short and long, in any case") {
    const std::string_view names[] = {"january",   "february", "march",    "april",
                                      "may",       "june",     "july",     "august",
                                      "september", "october",  "november", "december"};
    for (std::size_t i = 0; i < 12; ++i) {
        const std::string expected =
            std::string{"2026-"} + (i < 9 ? "0" : "") + std::to_string(i + 1);
        std::string upper{names[i]};
        for (char& letter : upper)
            letter = static_cast<char>(letter - 0x20);
        for (const std::string& name : {std::string{names[i]}, upper, upper.substr(0, 3),
                                        std::string{names[i].substr(0, 3)} + "."}) {
            CAPTURE(name);
            CHECK(read(name + " 2026") == expected);
        }
    }
}

TEST_CASE("ranges") {
    const Case cases[] = {
        {"Jun 2026 - Aug 2026", "2026-06/2026-08"},
        {"Jun 2026-Aug 2026", "2026-06/2026-08"},
        {"Jun 2026 – Aug 2026", "2026-06/2026-08"},
        {"Jun 2026 — Aug 2026", "2026-06/2026-08"},
        {"Jun 2026 -- Aug 2026", "2026-06/2026-08"},
        {"Jun 2026 to Aug 2026", "2026-06/2026-08"},
        {"Jun 2026 To: Aug 2026", "2026-06/2026-08"}, // after the label `From:`
        {"Jun 2026 through Aug 2026", "2026-06/2026-08"},
        {"Jun 2026 until Aug 2026", "2026-06/2026-08"},
        {"from Jun 2026 to Aug 2026", "2026-06/2026-08"},
        {"06/2026 - 08/2026", "2026-06/2026-08"},
        {"06/2026-08/2026", "2026-06/2026-08"},
        {"2026-06 - 2026-08", "2026-06/2026-08"},
        {"2026-06-2026-08", "2026-06/2026-08"},
        {"2023-2024", "2023/2024"},
        {"2023–2024", "2023/2024"},
        {"2023 to 2024", "2023/2024"},
        {"2023/2024", "2023/2024"},
        {"2023-24", "2023/2024"},
        {"2023–24", "2023/2024"},
        {"2023/24", "2023/2024"},
        {"2023 - 24", "2023/2024"},
        {"2011–12", "2011/2012"},
        {"2011-12", "2011-12"}, // ISO 8601: December
        {"2012-13", "2012/2013"},
        {"1999-00", "1999/2000"},
        {"May-August 2025", "2025-05/2025-08"},
        {"May - Aug. 2025", "2025-05/2025-08"},
        {"Spring - Fall 2025", "2025-21/2025-23"},
        {"Spring 2024 - Fall 2025", "2024-21/2025-23"},
        {"Jun 3 - Aug 14, 2025", "2025-06-03/2025-08-14"},
        {"June 3-14, 2025", "2025-06-03/2025-06-14"},
        {"Jun 3, 2025 - Aug 14, 2025", "2025-06-03/2025-08-14"},
        {"Jun '25 - Aug '26", "2025-06/2026-08"},
        {"Jun 2026 - present", "2026-06/.."},
        {"Jun 2026 - Present", "2026-06/.."},
        {"2024 - ongoing", "2024/.."},
        {"2024-current", "2024/.."},
        {"2024 to now", "2024/.."},
        {"since 2024", "2024/.."},
        {"Since May 2024", "2024-05/.."},
        {"from 2024", "2024/.."},
        {"Aug 2026 - Jun 2026", "2026-08/2026-06"}, // a finding for proof, not a fault
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
    }
}

TEST_CASE("expected dates") {
    for (const std::string_view typed :
         {"May 2027 (expected)", "expected May 2027", "May 2027 expected", "Expected: May 2027",
          "anticipated May 2027", "May 2027, anticipated", "(expected) May 2027",
          "(expected May 2027)", "Exp. May 2027", "May 2027 (Projected)"}) {
        CAPTURE(typed);
        CHECK(read(typed) == "2027-05 (expected)");
    }
    CHECK(read("Aug 2023 - May 2027 (expected)") == "2023-08/2027-05 (expected)");
    CHECK(read("Aug 2023 - expected May 2027") == "2023-08/2027-05 (expected)");
    CHECK(read("2023-27 (expected)") == "2023/2027 (expected)");
}

TEST_CASE("what is wrong with a date, and where") {
    const Case cases[] = {
        {"13/2024", "0+2: '13' is no month; expected 01 to 12"},
        {"2024-00", "5+2: '00' is no month; expected 01 to 12, or a later year as in '2023-24'"},
        {"2024-13", "5+2: '13' is no month; expected 01 to 12, or a later year as in '2023-24'"},
        {"2024-13-01", "5+2: '13' is no month; expected 01 to 12"},
        {"25/12/2025", "2025-12-25"},
        {"Agust 2025", "0+5: 'Agust' is no month or season; did you mean 'August'?"},
        {"Jun 2025 - Setpember 2025",
         "11+9: 'Setpember' is no month or season; did you mean 'September'?"},
        {"Sumer 2025", "0+5: 'Sumer' is no month or season; did you mean 'Summer'?"},
        {"2024 - presnt", "7+6: 'presnt' is no month or season; did you mean 'present'?"},
        {"Thermidor 2025",
         "0+9: 'Thermidor' is no month or season; expected a date such as 'Jun 2026', "
         "'06/2026', 'Summer 2026' or '2026'"},
        {"Jun 26", "4+2: '26' is no year of four figures: write '2026' if it is the year"},
        {"06/26", "3+2: '26' is no year of four figures: write '2026' if it is the year"},
        {"5/12/25", "5+2: '25' is no year of four figures: write '2025' if it is the year"},
        {"26", "0+2: '26' is no year of four figures: write '2026' if it is the year"},
        {"20266", "0+5: '20266' is no year of four figures; expected one such as '2026'"},
        {"Jun 1026", "4+4: '1026' is no year of a résumé; expected 1900 to 2100"},
        {"1899", "0+4: '1899' is no year of a résumé; expected 1900 to 2100"},
        {"2101", "0+4: '2101' is no year of a résumé; expected 1900 to 2100"},
        {"Feb 29, 2025", "4+2: '29' is no day of 2025-02; expected 1 to 28"},
        {"Feb 29, 2100", "4+2: '29' is no day of 2100-02; expected 1 to 28"},
        {"Jun 31, 2026", "4+2: '31' is no day of 2026-06; expected 1 to 30"},
        {"2026-06-00", "8+2: '00' is no day of 2026-06; expected 1 to 30"},
        {"Feb 30 - Mar 2, 2024", "4+2: '30' is no day of 2024-02; expected 1 to 29"},
        {"June 3-31, 2025", "7+2: '31' is no day of 2025-06; expected 1 to 30"},
        {"May", "0+3: no year after 'May'; expected one, as in 'Jun 2026'"},
        {"May - August", "0+3: no year after 'May'; expected one, as in 'Jun 2026'"},
        {"Summer", "0+6: no year after 'Summer'; expected one, as in 'Jun 2026'"},
        {"Jun 2026 - Aug", "11+3: no year after 'Aug'; expected one, as in 'Jun 2026'"},
        {"2024 -", "5+1: no date after '-'; expected an end, or 'present' for what goes on"},
        {"2024 to ", "5+2: no date after 'to'; expected an end, or 'present' for what goes on"},
        {"- 2024", "0+1: no date before '-'; expected a start, as in 'Jun 2026 - Aug 2026'"},
        {"until 2024",
         "0+5: no date before 'until'; expected a start, as in 'Jun 2026 - Aug 2026'"},
        {"present", "0+7: no date before 'present'; expected a range, as in 'Jun 2026 - present'"},
        {"Jun 2026 x",
         "9+1: 'x' is left over after the date; expected nothing more, or ' - ' before a "
         "second date"},
        {"",
         "0+0: no date here; expected one such as 'Jun 2026', '06/2026', 'Summer 2026' or '2026'"},
        {"expected",
         "8+0: no date here; expected one such as 'Jun 2026', '06/2026', 'Summer 2026' or '2026'"},
        {"(?)", "0+3: '(?)' is no date; expected one such as 'Jun 2026', '06/2026', 'Summer 2026' "
                "or '2026'"},
        {"2024 - present (expected)", "15+10: '(expected)' cannot go with a range to the present; "
                                      "expected an end, as in 'May 2027 "
                                      "(expected)'"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.typed);
        CHECK(read(one.typed) == one.read);
    }
}

// EDTF specification (Library of Congress; ISO 8601-2:2019), level 0 and level 1.
TEST_CASE("EDTF strings") {
    CHECK(edtf(Date{1985, 4, {}, 12}) == "1985-04-12");
    CHECK(edtf(Date{1985, 4, {}, {}}) == "1985-04");
    CHECK(edtf(Date{1985, {}, {}, {}}) == "1985");
    CHECK(edtf(DateRange{Date{1964, {}, {}, {}}, Date{2008, {}, {}, {}}, false}) == "1964/2008");
    CHECK(edtf(DateRange{Date{2004, 6, {}, {}}, Date{2006, 8, {}, {}}, false}) ==
          "2004-06/2006-08");
    CHECK(edtf(DateRange{Date{2004, 2, {}, 1}, Date{2005, 2, {}, 8}, false}) ==
          "2004-02-01/2005-02-08");
    CHECK(edtf(DateRange{Date{1985, 4, {}, {}}, {}, false}) == "1985-04/..");
    CHECK(edtf(Date{2001, {}, quoin::model::Season::spring, {}}) == "2001-21");
    CHECK(edtf(Date{2001, {}, quoin::model::Season::summer, {}}) == "2001-22");
    CHECK(edtf(Date{2001, {}, quoin::model::Season::autumn, {}}) == "2001-23");
    CHECK(edtf(Date{2001, {}, quoin::model::Season::winter, {}}) == "2001-24");
}

TEST_CASE("print") {
    const auto in = [](std::string_view typed, DateForm form) {
        std::string text = print(std::get<DateRange>(quoin::model::read_dates(typed)), form,
                                 quoin::english_dates());
        for (auto at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0"))
            text.replace(at, 2, "~");
        CHECK(text.find(' ') == std::string::npos);
        return text;
    };
    const std::string_view range = "Jun 3 2026 - Sept 2026";
    CHECK(in(range, DateForm::short_month) == "Jun~2026~–~Sep~2026");
    CHECK(in(range, DateForm::long_month) == "June~2026~–~September~2026");
    CHECK(in(range, DateForm::month_slash_year) == "06/2026~–~09/2026");
    CHECK(in(range, DateForm::year_month) == "2026-06~–~2026-09");
    for (const DateForm form : {DateForm::short_month, DateForm::long_month,
                                DateForm::month_slash_year, DateForm::year_month}) {
        CHECK(in("autumn 2025", form) == "Fall~2025");
        CHECK(in("2023-24", form) == "2023~–~2024");
        CHECK(in("Summer 2024 - ongoing", form) == "Summer~2024~–~Present");
    }
    CHECK(in("expected May 2027", DateForm::short_month) == "May~2027~(expected)");
    CHECK(in("May-August 2025", DateForm::short_month) == "May~2025~–~Aug~2025");
}

TEST_CASE("what is printed is read as what was printed") {
    std::mt19937 random(8601);
    const auto any = [&random] {
        Date date{1900 + static_cast<int>(random() % 201), {}, {}, {}};
        const auto kind = random() % 3;
        if (kind == 1) date.month = 1 + static_cast<int>(random() % 12);
        if (kind == 2) date.season = static_cast<quoin::model::Season>(21 + random() % 4);
        return date;
    };
    for (int round = 0; round < 2000; ++round) {
        DateRange range;
        if (random() % 2 == 0) range.start = any();
        if (!range.start || random() % 4 != 0) range.end = any();
        range.expected = range.end && random() % 3 == 0;
        for (const DateForm form : {DateForm::short_month, DateForm::long_month,
                                    DateForm::month_slash_year, DateForm::year_month}) {
            const std::string text = print(range, form, quoin::english_dates());
            CAPTURE(text);
            const auto again = quoin::model::read_dates(text);
            REQUIRE(std::holds_alternative<DateRange>(again));
            CHECK(std::get<DateRange>(again) == range);
        }
    }
}

TEST_CASE("months for ordering") {
    const auto of = [](const Date& date) {
        const quoin::model::Months months = quoin::model::months(date);
        return std::pair{months.first - 2026 * 12, months.last - 2026 * 12};
    };
    CHECK(of({2026, 1, {}, {}}) == std::pair{0, 0});
    CHECK(of({2026, 12, {}, {}}) == std::pair{11, 11});
    CHECK(of({2026, {}, {}, {}}) == std::pair{0, 11});
    CHECK(of({2026, {}, quoin::model::Season::winter, {}}) == std::pair{0, 2});
    CHECK(of({2026, {}, quoin::model::Season::spring, {}}) == std::pair{3, 5});
    CHECK(of({2026, {}, quoin::model::Season::summer, {}}) == std::pair{6, 8});
    CHECK(of({2026, {}, quoin::model::Season::autumn, {}}) == std::pair{9, 11});
}

TEST_CASE("hostile texts are refused, at a place inside them") {
    for (const std::string_view part :
         {"-", "1", "May ", "a", " ", "'", "2026-", "(", "May,", "é", "\xFF", "to "}) {
        std::string typed;
        while (typed.size() < (std::size_t{1} << 20))
            typed += part;
        const auto result = quoin::model::read_dates(typed);
        CAPTURE(part);
        REQUIRE(std::holds_alternative<DateFault>(result));
        const auto& fault = std::get<DateFault>(result);
        CHECK(fault.offset + fault.length <= typed.size());
        CHECK(fault.text.size() < 300);
    }
}

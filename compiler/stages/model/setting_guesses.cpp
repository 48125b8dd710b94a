// Common practice: how forms, word processors and registrars call these things.
#include "compiler/stages/model/setting_guesses.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/stages/model/dates.hpp"
#include "compiler/trade/limits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <variant>

namespace quoin::model {
namespace {

struct ValueGuess {
    std::string_view label, typed, means;
};

constexpr std::array value_guesses{
    ValueGuess{"stage", "student", "undergraduate"},
    ValueGuess{"stage", "college student", "undergraduate"},
    ValueGuess{"stage", "undergrad", "undergraduate"},
    ValueGuess{"stage", "freshman", "undergraduate"},
    ValueGuess{"stage", "sophomore", "undergraduate"},
    ValueGuess{"stage", "junior", "undergraduate"},
    ValueGuess{"stage", "senior", "undergraduate"},
    ValueGuess{"stage", "graduate", "recent graduate"},
    ValueGuess{"stage", "new graduate", "recent graduate"},
    ValueGuess{"stage", "new grad", "recent graduate"},
    ValueGuess{"stage", "recent grad", "recent graduate"},
    ValueGuess{"stage", "entry level", "recent graduate"},
    ValueGuess{"stage", "entry-level", "recent graduate"},
    ValueGuess{"stage", "grad student", "graduate applicant"},
    ValueGuess{"stage", "graduate student", "graduate applicant"},
    ValueGuess{"stage", "masters student", "graduate applicant"},
    ValueGuess{"stage", "phd student", "graduate applicant"},
    ValueGuess{"stage", "professional", "experienced"},
    ValueGuess{"stage", "mid-career", "experienced"},
    ValueGuess{"paper", "us letter", "letter"},
    ValueGuess{"paper", "us-letter", "letter"},
    ValueGuess{"paper", "letter size", "letter"},
    ValueGuess{"paper", "8.5x11", "letter"},
    ValueGuess{"paper", "8.5 x 11", "letter"},
    ValueGuess{"paper", "a4 paper", "a4"},
    ValueGuess{"dates-as", "mm/yyyy", "06/2026"},
    ValueGuess{"dates-as", "yyyy-mm", "2026-06"},
    ValueGuess{"dates-as", "month yyyy", "June 2026"},
    ValueGuess{"dates-as", "mmmm yyyy", "June 2026"},
    ValueGuess{"dates-as", "month year", "June 2026"},
    ValueGuess{"dates-as", "long", "June 2026"},
    ValueGuess{"dates-as", "mmm yyyy", "Jun 2026"},
    ValueGuess{"dates-as", "mon yyyy", "Jun 2026"},
    ValueGuess{"dates-as", "short", "Jun 2026"},
    ValueGuess{"language", "english", "en-US"},
    ValueGuess{"language", "us english", "en-US"},
    ValueGuess{"language", "american english", "en-US"},
    ValueGuess{"language", "american", "en-US"},
    ValueGuess{"language", "british english", "en-GB"},
    ValueGuess{"language", "uk english", "en-GB"},
    ValueGuess{"language", "british", "en-GB"},
    ValueGuess{"language", "french", "fr"},
    ValueGuess{"language", "spanish", "es"},
    ValueGuess{"language", "german", "de"},
    ValueGuess{"pages", "one", "1"},
    ValueGuess{"pages", "two", "2"},
    ValueGuess{"pages", "one page", "1"},
    ValueGuess{"pages", "two pages", "2"},
    ValueGuess{"hyphenate", "true", "yes"},
    ValueGuess{"hyphenate", "on", "yes"},
    ValueGuess{"hyphenate", "false", "no"},
    ValueGuess{"hyphenate", "off", "no"},
};

// Numbers in the value, with `..` between two, whatever unit stands after them. Of `1-2` pages the
// most is the second.
std::vector<std::string> numbers_in(std::string_view typed) {
    std::vector<std::string> numbers;
    for (std::size_t at = 0; (at = typed.find_first_of(".0123456789", at)) != typed.npos;) {
        const std::size_t end = std::min(typed.find_first_not_of(".0123456789", at), typed.size());
        numbers.emplace_back(trimmed(typed.substr(at, end - at), "."));
        at = end;
    }
    return numbers;
}

double inches_of(std::string_view unit) {
    constexpr double of_centimetre = 1 / 2.54, of_millimetre = of_centimetre / 10,
                     of_point = 1 / trade::points_per_inch;
    if (unit.find("cm") != unit.npos || unit.find("centi") != unit.npos) return of_centimetre;
    if (unit.find("mm") != unit.npos || unit.find("milli") != unit.npos) return of_millimetre;
    if (unit.find("pt") != unit.npos || unit.find("point") != unit.npos) return of_point;
    return 1;
}

std::string in_inches(const std::string& number, double inches) {
    double value = 0;
    std::from_chars(number.data(), number.data() + number.size(), value);
    return inches == 1 ? number : fmt::format("{:.2g}", value * inches);
}

std::string without_unit(std::string_view label, const std::string& typed) {
    std::vector<std::string> numbers = numbers_in(typed);
    if (numbers.empty() || numbers.size() > 2) return {};
    if (label == "pages") return numbers.back();
    if (label == "margins")
        for (std::string& number : numbers)
            number = in_inches(number, inches_of(typed));
    return numbers.size() == 1 ? numbers.front() : numbers.front() + ".." + numbers.back();
}

std::string as_calendar_date(std::string_view typed) {
    const auto read = read_dates(typed);
    const auto* range = std::get_if<DateRange>(&read);
    const bool single = range && !range->start && range->end && range->end->month;
    return single ? edtf(*range->end) : "";
}

}

std::string meant_by_setting(std::string_view label, std::string_view typed) {
    const std::string small = lower_case(typed);
    for (const ValueGuess& guess : value_guesses)
        if (guess.label == label && guess.typed == small) return std::string(guess.means);
    if (label == "updated") return as_calendar_date(typed);
    if (label == "margins" || label == "size" || label == "pages")
        return without_unit(label, small);
    return {};
}

}

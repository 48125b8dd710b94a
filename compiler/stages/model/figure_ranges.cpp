#include "compiler/stages/model/figure_ranges.hpp"

#include "compiler/base/ascii.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string>

namespace quoin::model {
namespace {

bool belongs_to_figure(char c) {
    return is_figure(c) || c == ',' || c == '.' || c == ':';
}

struct RangeFigure {
    std::string digits; // with a decimal point, without signs that part thousands
    double factor = 1;
    bool whole = true;

    double value() const { return std::strtod(digits.c_str(), nullptr) * factor; }
};

// The figure that `text` begins with, after a sign of money; `rest` is what follows it.
RangeFigure figure_at_front(std::string_view text, std::string_view& rest) {
    const std::size_t begin = std::min(text.find_first_of("0123456789"), text.size());
    std::size_t end = begin;
    while (end < text.size() && belongs_to_figure(text[end]))
        ++end;
    while (end > begin && !is_figure(text[end - 1]))
        --end;
    RangeFigure figure;
    for (const char c : text.substr(begin, end - begin)) {
        if (c != ',') figure.digits += c == ':' ? '.' : c;
        figure.whole = figure.whole && is_figure(c);
    }
    rest = text.substr(end);
    if (rest.empty()) return figure;
    const bool word_ends = rest.size() == 1 || !is_ascii_letter(rest[1]);
    if (word_ends && (rest[0] == 'k' || rest[0] == 'K')) figure.factor = 1e3;
    if (word_ends && rest[0] == 'M') figure.factor = 1e6;
    if (word_ends && rest[0] == 'B') figure.factor = 1e9;
    return figure;
}

bool counts_something(std::string_view after) {
    return after.size() > 1 && after[0] == ' ' && is_small_letter(after[1]);
}

// Of the numeral that `text` begins with; 0 if it is not written as numerals are.
int roman_value(std::string_view text) {
    constexpr std::array<std::string_view, 30> numerals{
        "I",   "II",   "III",   "IV",   "V",   "VI",   "VII",   "VIII",   "IX",   "X",
        "XI",  "XII",  "XIII",  "XIV",  "XV",  "XVI",  "XVII",  "XVIII",  "XIX",  "XX",
        "XXI", "XXII", "XXIII", "XXIV", "XXV", "XXVI", "XXVII", "XXVIII", "XXIX", "XXX"};
    const std::string_view numeral = text.substr(0, text.find_first_not_of("IVX"));
    const auto found = std::ranges::find(numerals, numeral);
    return found == numerals.end() ? 0 : static_cast<int>(found - numerals.begin()) + 1;
}

}

bool is_figure_range(std::string_view before, std::string_view from_hyphen) {
    std::string_view after_first, after;
    const RangeFigure first = figure_at_front(before, after_first);
    const RangeFigure second = figure_at_front(from_hyphen, after);
    const bool plain = first.whole && second.whole && first.factor == second.factor;
    const std::size_t figures = first.digits.size(), further = second.digits.size();
    if (plain && further == 4 && figures == 5) return false; // a postal code
    if (plain && further == 4 && figures == 3 && !counts_something(after)) return false;
    if (plain && figures == 4 && further == 2) // of years
        return second.digits > first.digits.substr(2);
    // "9:30-5:00", "5-10k", "$1-2M": hours go round, and a sign at the end is of both
    if (before.find(':') != std::string_view::npos) return true;
    if (first.factor == 1 && second.factor > 1) return true;
    return second.value() > first.value();
}

bool is_roman_range(std::string_view before, std::string_view from_hyphen) {
    const std::string_view second = from_hyphen.substr(1);
    const int first = roman_value(before), last = roman_value(second);
    const std::string_view after =
        second.substr(std::min(second.find_first_not_of("IVX"), second.size()));
    const bool of_current_and_voltage = before == "I" && last == 5 && counts_something(after);
    return first > 0 && last > first && !of_current_and_voltage;
}

}

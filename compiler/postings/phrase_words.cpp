#include "compiler/postings/phrase_words.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/trade/months.hpp"

#include <algorithm>
#include <iterator>

namespace quoin::postings {

namespace {

bool is_unit_of_time(std::string_view lower) {
    constexpr std::string_view units[] = {
        "hour",  "hours",  "day",  "days",    "week",     "weeks", "month",  "months", "year",
        "years", "minute", "time", "quarter", "quarters", "pound", "pounds", "mile",   "person",
        "seat",  "step",   "plus", "yr",      "yrs",      "hr",    "hrs",    "wk",     "mo"};
    return std::ranges::find(units, lower) != std::end(units);
}

}

bool is_grade(std::string_view lower) {
    constexpr std::string_view schedules[] = {"gs", "gg", "gl", "wg", "wl", "ws", "nf"};
    const std::size_t hyphen = lower.find('-');
    return hyphen != lower.npos && all_figures(lower.substr(hyphen + 1)) &&
           std::ranges::find(schedules, lower.substr(0, hyphen)) != std::end(schedules);
}

bool counts_in_words(std::string_view lower) {
    constexpr std::string_view numbers[] = {
        "one",   "two",   "three",  "four",   "five",    "six",    "seven",   "eight",
        "nine",  "ten",   "eleven", "twelve", "fifteen", "twenty", "thirty",  "forty",
        "fifty", "sixty", "ninety", "half",   "full",    "part",   "several", "multi"};
    const std::size_t hyphen = lower.find('-');
    return hyphen != lower.npos && is_unit_of_time(lower.substr(lower.rfind('-') + 1)) &&
           std::ranges::find(numbers, lower.substr(0, hyphen)) != std::end(numbers);
}

bool counts_something(const std::string& lower) {
    const std::size_t hyphen = lower.find('-');
    if (hyphen == lower.npos) {
        const std::size_t letters =
            std::min(lower.find_first_not_of("0123456789.,/"), lower.size());
        constexpr std::string_view measures[] = {"",   "h",  "hr", "hrs", "lb",  "lbs", "k", "m",
                                                 "am", "pm", "th", "st",  "nd",  "rd",  "x", "mg",
                                                 "ft", "in", "%",  "+",   "a.m", "p.m"};
        return !is_figure(lower.front()) ||
               std::ranges::find(measures, std::string_view(lower).substr(letters)) !=
                   std::end(measures);
    }
    const std::string_view unit = std::string_view(lower).substr(hyphen + 1);
    return is_unit_of_time(unit) || all_figures(lower.substr(hyphen + 1));
}

bool is_time_name(const std::string& lower) {
    constexpr std::string_view days[] = {"monday", "tuesday",  "wednesday", "thursday",
                                         "friday", "saturday", "sunday"};
    if (lower.find(':') != lower.npos) return true; // 6:10
    const bool month = lower.size() > 2 && lower != "may" && lower != "march" &&
                       trade::month_named(lower).has_value();
    const std::string_view day =
        lower.ends_with('s') ? std::string_view(lower).substr(0, lower.size() - 1) : lower;
    return month || std::ranges::find(days, day) != std::end(days);
}

bool is_contraction(const std::string& lower) {
    const std::size_t at = lower.rfind('\'');
    if (at == lower.npos) return false;
    const std::string_view before = std::string_view(lower).substr(0, at);
    if (!lower.ends_with("'s")) return !lower.ends_with("s'");
    constexpr std::string_view subjects[] = {"he",   "she",   "it",   "that", "who",
                                             "here", "there", "what", "let"};
    return std::ranges::find(subjects, before) != std::end(subjects);
}

bool is_address(std::string_view lower) {
    return lower.find('@') != lower.npos || lower.find("www.") == 0 ||
           (lower.find('.') != lower.npos && lower.size() - lower.rfind('.') > 3 &&
            !lower.ends_with(".js"));
}

bool ends_as_adjective(std::string_view lower) {
    constexpr std::string_view endings[] = {"ible", "able", "ful", "less", "ous", "est"};
    return lower.size() > 6 && std::ranges::any_of(endings, [&](std::string_view ending) {
               return lower.ends_with(ending);
           });
}

bool has_telephone(std::string_view text) {
    constexpr std::string_view form = "999-9999";
    for (std::size_t i = 0; i + form.size() <= text.size(); ++i) {
        const bool begins = i == 0 || !is_figure(text[i - 1]);
        const auto fits = [&](char shown, char c) {
            return shown == '-' ? c == '-' : is_figure(c);
        };
        if (begins &&
            std::equal(form.begin(), form.end(), text.begin() + static_cast<long>(i), fits))
            return true;
    }
    return false;
}

}

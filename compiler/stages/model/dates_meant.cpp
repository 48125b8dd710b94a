#include "compiler/stages/model/dates_meant.hpp"

#include "compiler/base/ascii.hpp"
#include "compiler/base/lists.hpp"
#include "compiler/base/phrases.hpp"
#include "compiler/base/utf8.hpp"
#include "compiler/stages/model/dates.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <variant>
#include <vector>

namespace quoin::model {
namespace {

struct Rewrite {
    std::string_view typed, means;
};

// Common practice: how forms, chats and notes have the two ends of a range.
constexpr std::array<Rewrite, 23> of_words{{{"till date", "- present"},
                                            {"present day", "present"},
                                            {"this day", "present"},
                                            {"still there", "present"},
                                            {"still here", "present"},
                                            {"still working", "present"},
                                            {"still going", "present"},
                                            {"until now", "- present"},
                                            {"to date", "- present"},
                                            {"to-date", "- present"},
                                            {"onwards", "- present"},
                                            {"onward", "- present"},
                                            {"starting", ""},
                                            {"started", ""},
                                            {"start", ""},
                                            {"began", ""},
                                            {"ending", "-"},
                                            {"ended", "-"},
                                            {"end", "-"},
                                            {"finished", "-"},
                                            {"qtr", "quarter"},
                                            {"of", ""},
                                            {"and", ","}}};
constexpr std::array<Rewrite, 13> of_signs{{{"(", " "},
                                            {")", " "},
                                            {"[", " "},
                                            {"]", " "},
                                            {":", " "},
                                            {"+", " - present"},
                                            {"...", " - "},
                                            {"..", " - "},
                                            {"\u2026", " - "},
                                            {"|", " - "},
                                            {"=>", " - "},
                                            {">", " - "},
                                            {", ,", ","}}};

constexpr std::array<std::string_view, 5> season_words{"spring", "summer", "fall", "autumn",
                                                       "winter"};

std::string with_words(std::string text) {
    for (const Rewrite& row : of_words)
        if (const auto at = find_phrase(lower_case(text), row.typed); at != std::string::npos)
            text.replace(at, row.typed.size(), row.means);
    return text;
}

std::string with_signs(std::string text) {
    for (const Rewrite& row : of_signs)
        text = replaced(std::move(text), row.typed, row.means);
    return text;
}

// `Sep-2025`, `1-Jun-2025`: what parts a month's name from its figures is no dash between two
// dates.
std::string with_blanks(std::string text) {
    for (std::size_t at = 1; at + 1 < text.size(); ++at) {
        const bool parts = text[at] == '-' || text[at] == '/' || text[at] == '.';
        const bool year_before = at >= 4 && all_figures(text.substr(at - 4, 4));
        const bool before_name = is_figure(text[at - 1]) && is_ascii_letter(text[at + 1]);
        const bool behind_name = is_ascii_letter(text[at - 1]) && is_figure(text[at + 1]);
        if (parts && (behind_name || (before_name && !year_before))) text[at] = ' ';
    }
    return text;
}

// `15/6/26` whole, so that the last two figures are its year; `Sep-25`, as spreadsheets have it.
bool ends_in_short_year(std::string_view word, std::string_view above, std::string_view typed) {
    const std::size_t begin = word.find_last_not_of("0123456789") + 1; // npos + 1 is 0
    if (word.size() - begin != 2) return false;
    if (std::ranges::count(word, '/') == 2)
        return word.find_first_not_of("0123456789/") == word.npos;
    if (begin != 0 || above.empty()) return false;
    const bool hyphen = typed.find(std::string(above) + '-' + std::string(word)) != typed.npos;
    return is_one_of(lower_case(above), season_words) || hyphen;
}

std::string with_whole_years(const std::string& text, std::string_view typed) {
    std::string whole, above;
    for (const std::string_view word : pieces_of(text, " ")) {
        if (word.empty()) continue;
        std::string next(word);
        const std::string_view bare = trimmed(word, ",;");
        if (ends_in_short_year(bare, above, typed))
            next.insert(static_cast<std::size_t>(bare.end() - word.begin()) - 2, "20");
        whole += (whole.empty() ? "" : " ") + next;
        above = bare;
    }
    return whole;
}

// `20250615`
std::string with_hyphens(std::string text) {
    constexpr std::size_t year = 4, month = 7, all = 8;
    if (text.size() != all || !all_figures(text)) return text;
    text.insert(year, "-");
    return text.insert(month, "-");
}

bool reads(std::string_view text, const LocalDates& local) {
    return std::holds_alternative<DateRange>(read_dates(text, local));
}

std::string with_single_blanks(std::string_view text) {
    std::string single;
    for (const std::string_view word : pieces_of(text, " "))
        if (!word.empty()) single.append(single.empty() ? "" : " ").append(word);
    return single;
}

std::optional<std::string> by_words_and_signs(std::string_view text, const LocalDates& local) {
    const std::string signs = with_blanks(with_signs(with_words(std::string(text))));
    const std::string whole = replaced(with_whole_years(signs, text), "- -", "-");
    const std::string meant = with_hyphens(std::string(trimmed(whole, " ,;.*_\"")));
    return reads(meant, local) ? std::optional{meant} : std::nullopt;
}

// `from 11/2024`, and `from 11/2024 - 08/2025`
std::string without_from(std::string text) {
    constexpr std::string_view from = "from ";
    if (!text.starts_with(from)) return text;
    text.erase(0, from.size());
    return text.find('-') == text.npos ? text + " - present" : text;
}

// `seit 11/2024`; none where two languages have it otherwise.
std::optional<std::string> in_other_words(std::string_view text, const LocalDates& local) {
    std::optional<std::string> found;
    for (const LocalDates& other : local.others()) {
        const std::string english = without_from(with_single_blanks(other.in_english(text)));
        if (english == text) continue;
        const auto meant =
            reads(english, local) ? std::optional{english} : by_words_and_signs(english, local);
        if (!meant || meant == found) continue;
        if (found) return std::nullopt;
        found = meant;
    }
    return found;
}

// `2wks`, `6 weeks`, `part-time`: how long or how, which tells of no other date.
bool is_remark(std::string_view text) {
    constexpr std::array<std::string_view, 18> spans{
        "wk", "wks", "week", "weeks", "day", "days", "mo",   "mos",   "month",
        "hr", "hrs", "hour", "hours", "yr",  "yrs",  "year", "years", "months"};
    constexpr std::array<std::string_view, 16> manners{
        "part-time", "part time", "full-time",  "full time",  "seasonal", "temporary",
        "volunteer", "unpaid",    "remote",     "weekends",   "evenings", "nights",
        "on call",   "per diem",  "seasonally", "on weekends"};
    const std::string small = lower_case(trimmed(text, " ,;:.()"));
    const std::size_t figures = small.find_first_not_of("0123456789");
    if (figures == 0 || figures > 2) return is_one_of(small, manners);
    return is_one_of(trimmed(std::string_view{small}.substr(figures), " -"), spans);
}

// `July 2023 (2wks)` of `July 2023, 2wks`; of `weekends, Jan 2024` the same.
std::optional<std::string> with_remark(std::string_view text, const LocalDates& local) {
    constexpr std::string_view between = " ,;:";
    for (std::size_t at = text.find_first_of(between); at != text.npos;
         at = text.find_first_of(between, at + 1)) {
        std::string_view dates = text.substr(0, at), remark = text.substr(at);
        if (is_remark(dates)) std::swap(dates, remark);
        dates = trimmed(dates, between);
        if (is_remark(remark) && reads(dates, local))
            return std::string(dates) + " (" + std::string(trimmed(remark, " ,;:.()")) + ')';
    }
    return std::nullopt;
}

}

std::optional<std::string> dates_meant(std::string_view text, const LocalDates& local) {
    constexpr std::size_t longest = 80;
    if (text.size() > longest || !has_digit(text) || reads(text, local)) return std::nullopt;
    if (auto meant = by_words_and_signs(text, local)) return meant;
    if (auto meant = in_other_words(text, local)) return meant;
    return with_remark(text, local);
}

std::optional<std::string> as_dates(std::string_view text, const LocalDates& local) {
    if (reads(text, local)) return std::string(text);
    return dates_meant(text, local);
}

bool is_span_of_dates(std::string_view text, const LocalDates& local) {
    const auto read = read_dates(text, local);
    const auto* range = std::get_if<DateRange>(&read);
    return range && range->start;
}

}

// Order of dates of differing precision.
#include "compiler/advice/date_order.hpp"

#include "compiler/trade/months.hpp"

namespace quoin::advice {

namespace {

// The months that a term of the season's name may take up in US colleges (common practice).
model::Months widest(const model::Date& date) {
    if (!date.season) return months(date);
    const int january = date.year * trade::months_of_year;
    switch (*date.season) {
    case model::Season::spring:
        return {january, january + 5};
    case model::Season::summer:
        return {january + 4, january + 8};
    case model::Season::autumn:
        return {january + 7, january + 11};
    case model::Season::winter:
        break;
    }
    return {january - 2, january + 11}; // of the year before, or of this one's end
}

bool is_season_before(const model::Date& a, const model::Date& b) {
    if (a.year != b.year) return a.year < b.year;
    if (*a.season == model::Season::winter || *b.season == model::Season::winter) return false;
    return *a.season < *b.season;
}

}

bool surely_before(const model::Date& a, const model::Date& b) {
    if (a.season && b.season) return is_season_before(a, b);
    if (a.day && b.day && a.year == b.year && a.month == b.month) return *a.day < *b.day;
    return widest(a).last < widest(b).first;
}

bool ends_before_start(const model::DateRange& range) {
    return range.start && range.end && surely_before(*range.end, *range.start);
}

bool out_of_order(const model::DateRange& above, const model::DateRange& below) {
    if (!above.end) return false;
    return !below.end || surely_before(*above.end, *below.end);
}

bool goes_on(const model::DateRange& range, const model::Date& today) {
    return !range.end || widest(*range.end).first >= months(today).first;
}

bool may_go_on(const model::DateRange& range, const model::Date& today) {
    return !range.end || !is_over(*range.end, today);
}

bool is_incoming(const model::DateRange& range, const model::Date& today) {
    if (range.start) return months(today).last < widest(*range.start).first;
    return range.end && range.expected && may_go_on(range, today);
}

bool ends_far_ahead(const model::DateRange& range, const model::Date& today) {
    constexpr int far = 10; // years
    return range.start && range.end && range.end->year >= today.year + far;
}

int months_between(const model::Date& from, const model::Date& to) {
    return months(to).first - months(from).first;
}

const model::Date& later(const model::Date& a, const model::Date& b) {
    return surely_before(a, b) ? b : a;
}

bool is_over(const model::Date& date, const model::Date& day) {
    return widest(date).last < months(day).first;
}

}

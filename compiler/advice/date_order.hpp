// Which of two dates is the earlier, where that is sure.
#pragma once

#include "compiler/stages/model/dates.hpp"

namespace quoin::advice {

// A season may begin and end months around its calendar ones, for colleges count by terms.
bool surely_before(const model::Date& a, const model::Date& b);

bool ends_before_start(const model::DateRange& range);

// The end of `above` is surely before that of `below`; what goes on to the present ends last.
bool out_of_order(const model::DateRange& above, const model::DateRange& below);

// It goes on to the present, or its end is surely not before `today`, as a month in the future is.
bool goes_on(const model::DateRange& range, const model::Date& today);
// The same, or it cannot be told: this year, this month.
bool may_go_on(const model::DateRange& range, const model::Date& today);
// It has not begun: its start is surely after `today`, or it is a single date to come.
bool is_incoming(const model::DateRange& range, const model::Date& today);

// By a slip of a figure, for nothing is planned so far: 2091.
bool ends_far_ahead(const model::DateRange& range, const model::Date& today);

// Whole months from the one to the other, negative if `to` is the earlier; by their first months.
int months_between(const model::Date& from, const model::Date& to);
const model::Date& later(const model::Date& a, const model::Date& b);

// The date is over on `day`: its last month is before that of `day`.
bool is_over(const model::Date& date, const model::Date& day);

}

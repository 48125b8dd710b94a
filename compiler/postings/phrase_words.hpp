// What a word is that no term has in it. All take small letters.
#pragma once

#include <string>
#include <string_view>

namespace quoin::postings {

// three-quarter, two-year; not: three-phase
bool counts_in_words(std::string_view lower);
bool is_grade(std::string_view lower); // of a public pay schedule: GS-07
// A figure that counts hours, weeks, pounds; `10-key`, `70-seat` are words.
bool counts_something(const std::string& lower);
bool is_time_name(const std::string& lower);   // friday, june, 6:10
bool is_contraction(const std::string& lower); // you'll, don't, she's; a possessive is none
bool is_address(std::string_view lower);
bool ends_as_adjective(std::string_view lower);

// 555-0103
bool has_telephone(std::string_view text);

}

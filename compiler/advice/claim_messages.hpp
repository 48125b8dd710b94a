// What is said of values that cannot be and of roles that cannot be so, as messages.hpp says the
// rest.
#pragma once

#include "compiler/advice/finding_row.hpp"
#include "compiler/base/message.hpp"

namespace quoin::advice::messages {

// --- values

inline constexpr FindingRow impossible_value{"{} cannot be: {}", "see which figure has the slip"};
inline constexpr Message too_hot = "nothing is so hot where {} stands";
inline constexpr Message too_cold = "nothing is colder than -459.67°F, which is -273.15°C";
inline constexpr Message beyond_acids = "pH runs from 0 to 14";
inline constexpr Message beyond_whole = "no share is more than the whole";
inline constexpr Message beyond_percentiles = "percentiles end before 100";
inline constexpr Message beyond_solution = "water does not hold so much of it";
inline constexpr Message beyond_pulse = "no heart beats so fast";
inline constexpr Message beyond_pressure = "no blood is under such pressure";
inline constexpr Message beyond_speed = "nothing there goes so fast";
inline constexpr Message beyond_day = "a day has 24 hours";
inline constexpr Message beyond_clock = "no clock shows it";
inline constexpr Message beyond_month = "{} has {} days";

// --- forms

inline constexpr FindingRow unit_in_two_forms{"{} stands here, and {} in line {}",
                                              "write one page in one unit and one notation"};
inline constexpr FindingRow large_in_words{"{} stands in words, and others of its size in figures",
                                           "write it in figures"};
inline constexpr FindingRow no_state{"{} is no state of the US", "see which letters have the slip"};
inline constexpr FindingRow no_unit{"{} says no unit", "add it, such as K, °C or °F"};
inline constexpr FindingRow ampersand{"'&' stands for 'and' in a sentence", "write 'and'"};
inline constexpr FindingRow stray_capital{"{} is no name, and has a capital within the line",
                                          "write it small"};
inline constexpr FindingRow title_capitals{"the words of this bullet have capitals, as in a title",
                                           "write all but names small"};
inline constexpr FindingRow unfinished{"this bullet ends in {}, as if more were to follow",
                                       "say what follows, or stop before it"};
inline constexpr FindingRow unparallel{"{} breaks off from the verbs before it",
                                       "give all verbs of the line one form"};
inline constexpr FindingRow years_alone{"{} gives years alone, and {} gives months",
                                        "add the months, as the others have them"};
inline constexpr FindingRow date_in_figures{"{} is a date in figures",
                                            "write the month in a word, as the page does"};

// --- roles

inline constexpr FindingRow two_full_time{"{} and {} are both called full-time, over {} at once",
                                          "see which dates have the slip, or say 'part-time'"};
inline constexpr FindingRow beyond_licence{
    "{} takes a licence that {} does not have",
    "say what you did under whom, such as 'Recorded symptoms for the nurse'"};
inline constexpr FindingRow inflated_title{"{} is a large title for {}",
                                           "'Owner' or 'Founder' says it, and is believed"};
inline constexpr FindingRow fanciful_title{"{} is a title that no reader looks for",
                                           "name the post as others in the trade do"};
inline constexpr FindingRow blames{"{} speaks ill of those you worked for or with",
                                   "say what you did; the rest is for no reader"};
inline constexpr FindingRow work_email{"this address is your employer's, {}",
                                       "give one of your own: an employer reads its mail"};
inline constexpr FindingRow unreachable{"{} opens on your own machine alone",
                                        "give an address that others can open"};
inline constexpr FindingRow no_portfolio{
    "{} is your field, and no link leads to your work",
    "add a line such as 'link: Portfolio <https://ottolinebrandt.example>'"};
inline constexpr FindingRow telling_link{"this link has the word {}",
                                         "give a page that you would show to an employer"};
inline constexpr FindingRow not_expected{"{} is still to come",
                                         "write 'expected' behind it, as in 'May 2027 (expected)'"};
inline constexpr FindingRow general_course{"the course {} is one that everybody takes",
                                           "give its room to a course of your field"};
inline constexpr FindingRow of_childhood{"{} is of years long before college",
                                         "something of your college years tells more"};
inline constexpr FindingRow saying{"{} tells nothing of your work",
                                   "use the line for something that you did"};
inline constexpr FindingRow unlawful_preference{"{} tells of a choice that the law forbids",
                                                "say how many you hired, and for what work"};
inline constexpr Message under_a_year = "less than a year";
inline constexpr FindingRow class_differs{"{} is said here, and the degree is {} of study away",
                                          "see which of the two has the slip"};
inline constexpr FindingRow goals_differ{"{} is sought here, and {} in the headline",
                                         "see which of the two this application is for"};

}

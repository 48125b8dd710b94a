// What is said of sentences, their signs and their letters, and of what stands on the page twice,
// as messages.hpp says the rest.
#pragma once

#include "compiler/advice/finding_row.hpp"
#include "compiler/base/message.hpp"

namespace quoin::advice::messages {

// --- sentences and their signs

inline constexpr FindingRow run_on{
    "{} begins a second sentence, and no more than a comma joins it",
    "make it a bullet of its own, or join it with 'which', 'and' or 'so that'"};
inline constexpr FindingRow odd_sign{"{}"};
inline constexpr Message sign_at_pause = "read the line aloud, and put the sign where you pause";
inline constexpr Message one_sign = "take one of them out";
inline constexpr Message space_behind = "put a space behind it";
inline constexpr Message other_half = "put it where it belongs, or take this one out";
inline constexpr Message sign_at_figure = "write figure and sign as one, as in '34%' and '$640'";
inline constexpr Message see_number = "see which figure has the slip";
inline constexpr Message doubled_sign = "a sign stands twice";
inline constexpr Message unspaced_sign = "no space behind this sign";
inline constexpr Message stray_comma =
    "a comma stands behind 'and' or its like, and closes nothing";
inline constexpr Message comma_before_that = "no comma stands before 'that'; 'which' may have one";
inline constexpr Message comma_at_end = "a comma ends this, as if more were to follow";
inline constexpr Message misplaced_sign =
    "in the US the percent stands right behind its figure, and the dollar before it";
inline constexpr Message misgrouped = "behind the comma of a number stand three figures";
inline constexpr Message lone_parenthesis = "a parenthesis has lost its other half";
inline constexpr Message lone_bracket = "a bracket has lost its other half";
inline constexpr Message lone_quote = "a quotation mark has lost its other half";
inline constexpr FindingRow exclaimed{"an exclamation mark", "end without it; the fact is enough"};
inline constexpr FindingRow smiley{"a smiley", "leave it out"};
inline constexpr FindingRow all_in_capitals{"this line is all in capitals",
                                            "write it as the other lines are written"};
inline constexpr FindingRow slang{"{} is a word for talk and messages",
                                  "write what you would say to a customer in a letter"};

// --- small things

inline constexpr FindingRow small_opening{"{} opens with a small letter, and {} with capitals",
                                          "give it its capital"};
inline constexpr FindingRow small_name{"{} is a name, and begins with a small letter",
                                       "give it its capital"};
inline constexpr FindingRow small_initials{"{} is made of initials, and has small letters"};
inline constexpr FindingRow species_upright{"{} looks like the Latin name of a species",
                                            "put it in italics, between slashes"};
inline constexpr FindingRow disagreement{"{} and {} do not agree in number"};
inline constexpr FindingRow no_apostrophe{"{} owns what follows, and has no apostrophe to say so"};
inline constexpr FindingRow one_of_several{"{} stands for one, behind {}"};
inline constexpr FindingRow several_of_one{"{} stands for several, behind {}"};
inline constexpr FindingRow before_measured{"{} measures what follows, and takes the singular"};
inline constexpr FindingRow plural_with_apostrophe{
    "{} means several, and a plural has no apostrophe"};
inline constexpr Message write_instead = "write '{}'";

// --- what is said in two places, or left blank

inline constexpr FindingRow degree_claimed{
    "{} claims what {} is still to bring",
    "say 'student' or 'candidate', and leave the title until it is awarded"};
inline constexpr FindingRow other_degree{
    "{} is spoken of, and no degree of that kind stands in the page's education",
    "name the degree that you study for, in both places alike"};
inline constexpr FindingRow figures_differ{"{} stands here, and {} in line {}",
                                           "see which of the two has the slip"};
inline constexpr FindingRow hours_differ{
    "{} hours stand here, and the {} places below that tell of them come to {}",
    "see which of them has the slip"};
inline constexpr FindingRow shorter_than_dates{"these dates hold {}, and {} in line {} is shorter",
                                               "see which of the two has the slip"};
inline constexpr FindingRow long_summer{
    "{} is a summer's work by its name, and these dates hold {}",
    "see whether the year is right; several summers are written 'Summer 2024, Summer 2025'"};
inline constexpr FindingRow beyond_promotion{
    "this position ends after {} began, in {}, though that is the step up from it",
    "see which of the two has the slip"};
inline constexpr FindingRow both_go_on{
    "this position goes on, though {} has followed it since {} and all its lines tell of the past",
    "end it in the month that the next one began, if that is so"};
inline constexpr FindingRow goes_on_closed{
    "these dates go on, and line {} says that it is over: {}", "see which of the two has the slip"};
inline constexpr FindingRow too_few_seasons{"{} are more than the dates in line {} hold",
                                            "see which of the two has the slip"};
inline constexpr FindingRow before_dates{"{} is before this work began, in {}",
                                         "see which of the two has the slip"};
inline constexpr FindingRow after_dates{"{} is after this work ended, in {}",
                                        "see which of the two has the slip"};
inline constexpr FindingRow left_blank{"{} was to be filled in",
                                       "put in what belongs there, or leave the line out"};
inline constexpr FindingRow said_twice{"this bullet says again what line {} has said",
                                       "keep the one that tells more, and use the room"};
inline constexpr FindingRow ends_ahead{
    "{} ends in the future", "write 'present' for what goes on, or 'expected' behind its end"};
inline constexpr FindingRow ends_far_ahead{"{} ends many years ahead",
                                           "see which figure has the slip"};
inline constexpr FindingRow name_elsewhere{"{} stands here, and {} in line {}",
                                           "write the name in one way everywhere"};
inline constexpr FindingRow made_name{"{} is written {} by those who make it"};
inline constexpr FindingRow gap{"nothing on the page accounts for the time from {} to {}",
                                "say in a line what you did, or be ready to be asked"};
inline constexpr FindingRow below_older{"{} stands below {}, which is older",
                                        "put the most recent first"};
inline constexpr FindingRow harmful_pastime{"{} may put off a reader before you have met",
                                            "name another interest, or use the line otherwise"};
inline constexpr FindingRow beyond_course{"{} stands here, and {} in line {}",
                                          "claim what you would speak in the interview"};
inline constexpr FindingRow drivers_number{
    "{} looks like the number of a driver's licence",
    "take it out; it serves whoever would use it in your name, and 'valid driver's license' is all "
    "that an employer asks"};
inline constexpr FindingRow too_fast{"{} is more than one person can do",
                                     "see which figure has the slip, or say who did it with you"};
inline constexpr FindingRow unmeasured{
    "{} is nothing that anybody measures",
    "say what showed it: a survey, complaints, guests who came again"};

}

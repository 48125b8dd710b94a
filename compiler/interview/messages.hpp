// What an interview says: of answers that will not do, of how it goes on, and in the source it
// makes.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::interview::messages {

// Answers
inline constexpr Message no_choice = "{} is none of these; type a number or a name from the list{}";
inline constexpr Message too_long =
    "That is longer than a résumé's line can be; say it in {} characters, or fewer";
inline constexpr Message not_utf_8 = "That holds bytes that are no text in UTF-8; type it again";
inline constexpr Message unprinted_signs =
    "That holds signs that do not print, such as those of the arrow keys; type it again";
inline constexpr Message type_again = "Type it again, or '!' to keep it as it is.";
inline constexpr Message type_again_or_comment =
    "Type it again, or '!' to keep it as a comment, to be mended later.";
inline constexpr Message nothing_to_keep = "There is nothing to keep; type an answer.";
inline constexpr Message is_set = "That is a setting or a heading, not a group of skills; give "
                                  "the group another name.";
inline constexpr Message group_needs_colon =
    "{} names no group; write its name, a colon, and what is in it, such as '{}'";

// The way through
inline constexpr Message welcome =
    "This makes a first draft, one question at a time. Skip what you are not sure of: everything "
    "can be changed later, and nothing leaves this machine.";
inline constexpr Message signs =
    "Enter alone skips a question. Type ? for help, < to go back, = to see what is there, > to "
    "skip to the next section, >> to finish, . to leave and go on later.";
inline constexpr Message keys = "The arrow keys edit a line, and bring back those typed before.";
inline constexpr Message first_question = "This is the first question.";
inline constexpr Message nothing_there = "Nothing is there yet.";
inline constexpr Message it_is_now = "It is now: {}\n  Enter keeps it; - takes it out.";
inline constexpr Message taken_out = "Taken out.";
inline constexpr Message for_example = "For example: {}";
inline constexpr Message another = "Another one, or Enter to go on: {}.";
inline constexpr Message tense_goes_on =
    "It goes on, so begin with a verb in the present: 'Train'.";
inline constexpr Message tense_has_ended = "It has ended, so begin with a verb in the past: "
                                           "'Trained'.";

// What is kept
inline constexpr Message kept_comment =
    "Answers so far. The same command goes on from here; this file goes when the draft is written.";
inline constexpr Message another_run =
    "'{}' is in use by another run of 'quoin begin'; go on there, or end that one first";
inline constexpr Message other_version =
    "these answers were kept by another version of quoin, which this one cannot read; expected "
    "'{}' in the first line";
inline constexpr Message no_spot = "{} names no question; expected the line as quoin wrote it, "
                                   "such as 'next: Heading / 1 / name / 1'";
inline constexpr Message no_such_section = "{} is no section that is asked about{}";
inline constexpr Message no_such_label = "{} is not asked about in this section{}";
inline constexpr Message no_section_yet =
    "expected a line such as 'section: Heading' above this one";
inline constexpr Message no_answer_line = "{} is no answer; expected 'label: answer' or '- answer'";
inline constexpr Message answered_twice = "{} is answered twice; keep one of the two lines";

// In the source
inline constexpr Message how_entries_go =
    "A blank line ends an entry; in a section, the most recent stands first.";
inline constexpr Message group_hint = "Another kind: what you can do, parted by commas";
inline constexpr Message opening_comment =
    "A first draft. Lines that begin with # are notes to yourself: they are never printed.";
inline constexpr Message how_comments_go =
    "To add what a note asks for, take out its # and write your own words after the colon.";
inline constexpr Message updated_hint =
    "updated: the day you last looked this over, such as 2026-11-03";
inline constexpr Message could_not_be_read = "This could not be read; 'quoin help markup' says how "
                                             "it is written:";
inline constexpr Message not_asked_for = "Answers to questions of another stage or field:";

}

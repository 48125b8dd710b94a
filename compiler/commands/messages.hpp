// What can be wrong with what was asked for, and what a verb says of it.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::commands::messages {

inline constexpr Message internal_error = "internal error: {}; please report it";
inline constexpr Message epoch = "SOURCE_DATE_EPOCH is not a number of seconds since 1970";
inline constexpr Message dash_twice = "standard input can be read once; give - once";
inline constexpr Message dash_not_alone = "standard input is one résumé; give - alone";

inline constexpr Message nothing_changed =
    "{}: note: nothing that it is made of has changed since it was set";
inline constexpr Message watch_input = "standard input is read once, and does not change; name a "
                                       "file to --watch";

// Outputs
inline constexpr Message output_no_folder =
    "'{}' is not a folder; with several files, {} names the folder they go to";
inline constexpr Message json_and_output =
    "standard output holds one thing, the JSON; name a file for what is written";
inline constexpr Message deps_without_file =
    "--deps needs an output that is a file; name one with -o";
inline constexpr Message one_target_for_two = "two outputs would be written to '{}'";
inline constexpr Message source_is_pdf =
    "'{}' has the name of a PDF; name the text that the PDF is made from, such as 'draft.resume'";
inline constexpr Message source_overwritten =
    "'{}' is a source and would be overwritten; name another output with -o";

// A first draft
inline constexpr Message no_such_choice = "--{} takes one of {}, not {}{}";
inline constexpr Message draft_is_there =
    "'{}' is there already and is not written over; name another with -o";
inline constexpr Message questions_need_a_file =
    "answers are kept beside the draft; name a file with -o, or give --stage and --field for a "
    "draft without questions";
inline constexpr Message draft_written =
    "'{}' is written. Next, 'quoin set {}' makes the page, and 'quoin proof {}' says what to mend.";
inline constexpr Message draft_came_meanwhile =
    "'{}' was not there before and is not written over; move it away, and '{}' goes on";
inline constexpr Message draft_not_written = "{}; the answers are kept, and '{}' goes on";
inline constexpr Message goes_on_from = "Going on from '{}'.";
inline constexpr Message kept_not_read =
    "nothing was changed; mend '{}' at that line, or move it away to begin anew";
inline constexpr Message answers_kept = "Your answers are kept in '{}'; '{}' goes on from here.";
inline constexpr Message input_ended = "standard input ended before the last question. {}";
inline constexpr Message nobody_answers =
    "standard input ended before the first answer; begin in a terminal, or give --stage and "
    "--field for a draft without questions";

// Postings
inline constexpr Message no_posting =
    "a résumé and a posting are required; write 'quoin match FILE POSTING'";
inline constexpr Message posting_first =
    "the résumé's source comes first and the posting after it, and '{}' is the posting";
inline constexpr Message posting_is_resume =
    "this is a résumé's source, not a posting; give the résumé first and the posting after it";
inline constexpr Message posting_empty =
    "there is no word in it; give the whole text of a posting, as text, HTML or PDF";
inline constexpr Message posting_too_short =
    "{} is too little for a posting; give the whole text of one, as text, HTML or PDF";
inline constexpr Message posting_not_english =
    "the posting is not in English, the one language whose terms can be read as yet";
inline constexpr Message posting_asks_nothing =
    "nothing in it asks for a skill, a credential, a language or a field of study";
inline constexpr Message posting_of_images =
    "the PDF holds pictures and no text; copy the posting's text into a file";

inline constexpr Message more_findings = "{} more findings; '--format json' lists all of them";
inline constexpr Message mends_offered = "'quoin mend {}' makes {} of these changes";

// A page that is held by too little
inline constexpr Message thin_page = "the {} page is only {} full; fill it to a third at least, or "
                                     "cut and set 'pages: {}'";

// For a posting
inline constexpr Message resume_and_posting =
    "a résumé and a posting are required, as in 'quoin tailor everything.resume posting.txt -o "
    "draft.resume'";
inline constexpr Message tailored_needs_output =
    "an output is required, for the résumé itself is never changed: name one with -o";
inline constexpr Message kept_is_too_long =
    "contact, education and what is tagged {{keep}} are there for any posting, and too long by "
    "themselves";

// Checks and mends
inline constexpr Message no_check = "there is no check {}{}";
inline constexpr Message office_at_fault =
    "the office's rules are at fault, and nothing is judged by half of them: mend them, or give "
    "--no-office";
inline constexpr Message marked_over_source = "--marked would write over the résumé itself";
inline constexpr Message marked_and_more = "standard output holds one thing; give --marked a file";
inline constexpr Message summary_no_sarif =
    "--summary is text or JSON, and does not go with --format sarif";
inline constexpr Message summary_or_roster = "--roster is a line, --summary is several; give one";

// A caseload
inline constexpr Message no_day = "--{} is a day, as in 2026-11-29, and not {}";
inline constexpr Message cohort_or_terms = "--cohort and --terms are two views; give one";
inline constexpr Message no_count = "--first is a number from 1, and not {}";
inline constexpr Message list_is_long =
    "standard input names more than {} files; give the folders that they are in";

inline constexpr Message no_entry =
    "no entry {}; expected its number on the page, or words of it, as in '--entry 2' or '--entry "
    "\"Salish Tidal Trust\"'";
inline constexpr Message deps_cannot_hold =
    "make has no way to read {}, for the {} in it; give it another name";
inline constexpr Message no_scan_of_input =
    "a PDF is read back and forth, so that standard input cannot be scanned; name a file";
inline constexpr Message not_scanned = "it could not be scanned: {}";

// Redlines
inline constexpr Message redline_three =
    "two drafts are compared, and {} were named; write 'quoin redline OLD NEW'";
inline constexpr Message redline_since_two =
    "--since compares one file with an earlier draft of it, and two were named";
inline constexpr Message redline_input_alone =
    "standard input has no earlier draft; write 'quoin redline OLD -'";
inline constexpr Message redline_itself =
    "'{}' was named twice, so that nothing changed; 'quoin redline {}' compares it with its last "
    "commit";
inline constexpr Message redline_no_page =
    "no page can show both drafts: the new one cannot be set, or not with the signs of the old one";
inline constexpr Message redline_marked_over = "--marked would write over one of the drafts";

// From an old document
inline constexpr Message not_transcribed = "it could not be read: {}";
inline constexpr Message transcribed = "'{}' is made of '{}': {}, {}, {}";
inline constexpr Message guesses_marked = "; below comments that begin '# guessed': {}";

}

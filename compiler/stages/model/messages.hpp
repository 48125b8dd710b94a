// What can be wrong with what a résumé says.
#pragma once

#include "compiler/base/message.hpp"

namespace quoin::model::messages {

// The whole file
inline constexpr Message says_nothing =
    "nothing but comments and blank lines; expected a line such as 'name: Ottoline Brandt'";
inline constexpr Message name_as_comment =
    "a line that begins with '#' is a comment, which is not printed: write 'name: {}'";
inline constexpr Message no_name =
    "no name; expected a line such as 'name: Ottoline Brandt' above the first section";

// Labels in the wrong place
inline constexpr Message unknown_label = "unknown label {}{}";
inline constexpr Message unknown_label_in = "unknown label {} in {}{}";
inline constexpr Message expected_in_heading =
    "; expected a contact field or a setting, or a 'section:' line above it";
inline constexpr Message expected_labels = "; expected {}";
inline constexpr Message not_in_heading = "{} does not belong in the heading block; it is a field "
                                          "of {}; expected a 'section:' line above it";
inline constexpr Message not_in_section =
    "{} does not belong in {}; it is a field of {}; expected {}";
inline constexpr Message belongs_in_heading =
    "{} is a {} and belongs in the heading block, above the first 'section:' line";
inline constexpr Message belongs_in_entry = "{} belongs in an entry, below a 'section:' line";
inline constexpr Message belongs_under_a_title = "{} belongs right under a 'section:' line";
inline constexpr Message belongs_under_its_title = "{} belongs right under its 'section:' line";

// Twice
inline constexpr Message stands_twice = "'{}' stands twice; keep one of them";
inline constexpr Message set_twice = "{} is set twice, first in line {}; keep one of them";
inline constexpr Message field_stands_twice = "{} stands twice, first in line {}; {}";
inline constexpr Message keep_one_contact = "keep one, or tag both for different builds";
inline constexpr Message new_entry = "a blank line starts a new entry";

// Values
inline constexpr Message setting_meant = "{} is not how the markup has it: write '{}: {}'";
inline constexpr Message runs_backwards = "{} runs backwards; write {}";
inline constexpr Message out_of_bounds = "{} {} is out of bounds; expected {}";
inline constexpr Message cannot_be = "{} cannot be {}; expected {}{}";
inline constexpr Message not_in_calendar =
    "{} is not in the calendar; expected a date such as '2026-11-03'";
inline constexpr Message no_items =
    "{} has nothing between its separators; expected items, or no such line";

// Tags
inline constexpr Message no_tag = "expected a tag, such as 'lab' or '!lab', found {}";
inline constexpr Message takes_no_tags =
    "{} holds for every build; expected no tags after its value";
inline constexpr Message braces_after_for =
    "expected tags without braces after 'for:', such as 'for: lab field'";
inline constexpr Message for_stands_twice = "'for' stands twice in this entry; expected all tags "
                                            "on one line, such as 'for: lab field'";
inline constexpr Message for_no_entry =
    "'for' has no entry to keep; to keep a whole section, write the tags after its title, such as "
    "'section: Projects {{lab}}'";

// Sections and bullets
inline constexpr Message section_cannot_hold = "a section cannot hold {}; expected {}{}";
inline constexpr Message cannot_tell_what_it_holds =
    "cannot tell what the section {} holds; expected a line such as 'holds: experience' right "
    "under it, with one of {}";
inline constexpr Message no_column = "'column' cannot be {}; expected 'side', or no such line";
inline constexpr Message bullet_in_heading =
    "a bullet belongs to an entry; expected a 'section:' line above it";
inline constexpr Message no_bullets = "{} has no bullets: write '{}'";
inline constexpr Message second_level_alone = "a bullet of the second level has none of the first "
                                              "above it; expected '- ' before its text";

inline constexpr Message entry_in_heading =
    "an entry stands in no section: write 'section: {}' and a blank line above it";

inline constexpr Message entry_strayed =
    "an entry stands below a list: move it to the section '{}', above";

// Files taken in
inline constexpr Message include_in_entry =
    "'include' takes in whole sections; expected a blank line above and below it";
inline constexpr Message entry_below_include =
    "an entry below 'include' is in no section; expected a 'section:' line above it";
inline constexpr Message heading_in_included_file =
    "{} does not belong in an included file, which gives sections only; move it to {}, above the "
    "first 'section:' line";
inline constexpr Message included_here = "{} is included here";
inline constexpr Message path_leads_out = "{} leads out of the folder of the résumé; expected a "
                                          "path below it, such as 'parts/projects.resume'";
inline constexpr Message link_leads_out =
    "{} is a link that leads out of the folder of the résumé; expected a file in it";
inline constexpr Message no_file = "no file {}; its path is read from the folder of this file";
inline constexpr Message is_folder = "{} is a folder; expected a file in it";
inline constexpr Message no_regular_file = "{} is not a regular file";
inline constexpr Message circle =
    "files include each other in a circle: {}; take one of these lines out";
inline constexpr Message included_too_deep =
    "files include one another more than {} deep; expected fewer steps";
inline constexpr Message included_too_often = "more than {} files are taken in; expected fewer";
inline constexpr Message included_too_much =
    "the files taken in are larger than 1 MiB all told; a résumé is a few kilobytes of text";

// Labels that are guessed, and lines without one
inline constexpr Message guessed_label = "{} is '{}' here";
inline constexpr Message both = "{}; and {}";
inline constexpr Message guessed_field = "{} is '{}' here: write '{}: {}'";
inline constexpr Message guessed_below =
    "{} is '{}' here, a field of {}; expected a 'section:' line above it";
inline constexpr Message guessed_address =
    "{} is 'link' here, and its value a whole address, such as 'name.example/page'";
inline constexpr Message has_no_place = "{} has no place here: {}";
inline constexpr Message gpa_of = "{} is 'gpa' here: write 'gpa: {} ({})'";
inline constexpr Message goes_into = "; what has no field of its own goes into '{}'";
inline constexpr Message guessed_bullets =
    "what {} tells goes into bullets: write '- text', one a line";
inline constexpr Message ditto =
    "{} stands for the line above, and is printed as it stands: write '{}: {}'";
inline constexpr Message guessed_section =
    "{} has a section of its own: write 'section: {}' with a blank line above it, and the text on "
    "the line below";
inline constexpr Message pieces_of_one = "{} are one line here: write '{}: {}'";
inline constexpr Message range_on_two_lines = "'{}' and '{}' are one line here: write '{}: {}'";
inline constexpr Message bare_field = "{} has no label: write '{}: {}'";
inline constexpr Message colon_forgotten = "'{}' needs a colon after it, as in '{}: value'";
inline constexpr Message bare_group =
    "{} has no label, and the other groups have one: write '{}', or begin the line with a "
    "space if it goes on with the one above, or take it out";
inline constexpr Message references_offered =
    "{} says what every reader takes for granted: take the line out";
inline constexpr Message of_paper =
    "{} stands on paper, and the page says it by itself: take the line out";
inline constexpr Message bracket_alone =
    "{} is a sign of another format, and no line of the markup: take the line out";
inline constexpr Message question_of_form =
    "{} is a question of a form, which no résumé has: take the line out";
inline constexpr Message answers_form_with =
    "{} is a question of a form, and its answer a field: write '{}: {}'";
inline constexpr Message says_nothing_here = "{} says nothing: take the line out";
inline constexpr Message table_heading =
    "{} heads a table, which the markup has none of: take the line out; what stands below it is "
    "labelled line by line";
inline constexpr Message fold_not_indented =
    "{} goes on with the line above: begin it with a space, or with '- ' if it is a bullet of its "
    "own";
inline constexpr Message bare_in_entry =
    "{} has no label: write '{}: {}', or '- {}' if it is a bullet";
inline constexpr Message bare_bullet = "{} has no dash: write '- {}'";
inline constexpr Message bare_fields = "{} says several things: give each a line of its own: {}";
inline constexpr Message bare_fields_below =
    "{} says several things of another entry: leave a blank line above it, and give each a line of "
    "its own: {}";
inline constexpr Message bare_label =
    "{} is no label here: write '{}: {}' if that is what it is called";
inline constexpr Message bare_dated = "{} is no label here: write '{}: {}', and below it '{}: {}'";
inline constexpr Message bare_in_heading = "{} has no label: write 'headline: {}' if it says who "
                                           "you are, open a section above it, such as 'section: "
                                           "Summary', or take it out";

inline constexpr Message bare_prose =
    "{} stands in no section: open one above it, such as 'section: Summary', or take it out";
inline constexpr Message pages_wished = "{} is no line of the markup: write 'pages: {}'";

inline constexpr Message dates_meant = "{} is no form of dates: write '{}'";
inline constexpr Message expires_in_value =
    "{} is a field of its own: write 'expires: {}' on the line below";
inline constexpr Message either_order =
    "{} can be read month first or day first: write '{}' or '{}', whichever is meant";

// Signs of other markups and programs
inline constexpr Message ends_in_sign = "'{}' at the end of the value is printed: take it out";
inline constexpr Message begins_in_sign =
    "'{}' before the value is printed: one colon ends the label; take it out";
inline constexpr Message numbered_title =
    "the number '{}' is printed, and a portal may not know the title with it: write 'section: {}'";
inline constexpr Message label_in_value =
    "'{}:' is printed within this value: a field has a line of its own";
inline constexpr Message no_words =
    "{} says nothing to a reader or a portal: write the words themselves";
inline constexpr Message label_repeated =
    "'{}:' stands twice, and the second is printed: take it out";
inline constexpr Message dash_repeated =
    "'{}' is printed before the bullet's text: the dash alone opens it; take it out";
inline constexpr Message in_printed_quotes =
    "the quotes around the value are printed: write '{}' without them";
inline constexpr Message comment_in_line =
    "'#' opens no comment within a line, so it is printed: a comment stands on a line of its own, "
    "with '#' in the first column";
inline constexpr Message other_link = "this is no link here and is set as typed: write {}";
inline constexpr Message link_meant = "{} is no link: write 'link: {}'";
inline constexpr Message html_sign =
    "{} is set as typed: type the character itself, and '*strong*' or '/emphasis/' for marks";
inline constexpr Message no_inch_sign = "two apostrophes are set as quotes: write ' in' for inches";
inline constexpr Message backquote =
    "backquotes are no marks and are printed: take them out, or write '*text*' for strong";
inline constexpr Message in_printed_brackets =
    "the brackets around the list are printed: write '{}' without them";
inline constexpr Message bullet_of_label =
    "this is a bullet, and '{}:' is printed in it: a field starts in the first column, as "
    "'{}: value'";
inline constexpr Message tag_or_text =
    "'{{{}}}' is a tag, which is not printed: it keeps the line for builds that ask for it; "
    "braces that are text are typed '\\{{{}}}'";
inline constexpr Message path_in_italics =
    "{} is set in italics without its slashes: write '\\/' for a slash that is to be printed";
inline constexpr Message backslash_left_out =
    "a backslash before {} is not printed: write '\\\\' for one that is";

// Entries torn apart
inline constexpr Message torn_by_a_line =
    "the blank line at {} ends the entry, and what stands below is only the rest of it; it is read "
    "as one entry: close it up";
inline constexpr Message torn_by_lines =
    "the blank lines at {} end the entry, and what stands below is only the rest of it; it is read "
    "as one entry: close it up";

}

// What each thing that can be wrong is called: one table for all the grammars, keyed by the rule
// that matches the wrong thing. `{}` takes what was found.
#pragma once

#include "compiler/base/message.hpp"
#include "grammar/dates.hpp"
#include "grammar/inline.hpp"
#include "grammar/lines.hpp"
#include "grammar/office.hpp"
#include "grammar/settings.hpp"
#include "grammar/theme.hpp"

#include <tuple>

namespace quoin::grammar {

template<typename Rule>
struct Wrong {
    Message message;
};

inline constexpr std::tuple messages{
    // Lines of a résumé or a theme (grammar/lines.hpp)
    Wrong<lines::section_without_title>{
        "{} has no title: write one after the colon, as in 'section: Education'"},
    Wrong<lines::field_without_value>{
        "{} has no value: write one after the colon, or take the line out"},
    Wrong<lines::bullet_without_text>{
        "{} has no text: write the bullet after it, or take the line out"},
    Wrong<lines::nothing_tagged>{
        "{} has tags and nothing else: write the text that they are for before them"},
    Wrong<lines::foreign_comment>{"{} is no comment here: a line that begins with '#' is one"},
    Wrong<lines::line_of_dashes>{"a line that only rules off is no part of the markup: a blank "
                                 "line ends an entry, and 'section: TITLE' opens a section"},
    Wrong<lines::bullet_too_deep>{
        "{} is one level too many: a bullet is '- text' or, one level deeper, '-- text'"},
    Wrong<lines::bullet_without_space>{
        "{} needs a space after it to open a bullet, as in '- text'"},
    Wrong<lines::foreign_bullet>{"{} opens no bullet: write '- text'"},
    Wrong<lines::indented_bullet>{"an indented line goes on with the line above: a bullet starts "
                                  "in the first column, and '-- text' is one level deeper"},
    Wrong<lines::equals_for_colon>{
        "{} was found where a label and a colon were expected, as in 'label: value'"},
    Wrong<lines::foreign_colon>{
        "{} ends in a sign that only looks like a colon: type ':' after the label"},
    Wrong<lines::marked_label>{"{} has marks around its label, as other formats have: write the "
                               "label and a colon alone, as in 'label: value'"},
    Wrong<lines::fold_of_nothing>{"{} is indented, so it goes on with the line above, and there is "
                                  "none: start it in the first column"},
    Wrong<lines::unknown_line>{
        "{} is no line of the markup: expected 'label: value', '- text' or 'section: TITLE'; a "
        "line that goes on with the one above starts with a space"},
    Wrong<lines::conflict_line>{
        "{} was left by a merge of two drafts: keep one of the versions that "
        "stand between these lines, and take the lines out"},
    Wrong<lines::tags_missing>{
        "{} names no tag: write tags as in '{{lab field}}', or '\\{{' for a brace that is text"},
    Wrong<lines::tags_unclosed>{
        "{} is not closed: write tags as in '{{lab field}}', or '\\{{' for a brace that is text"},
    Wrong<lines::tags_ill_formed>{
        "{} is no list of tags: words of letters, digits, '-' and '_' with spaces between, as in "
        "'{{lab !field}}'; write '\\{{' for a brace that is text"},
    Wrong<lines::tags_apart>{
        "{} has tags in two pairs of braces: write them in one, as in '{{lab field}}'"},
    Wrong<lines::tags_before_stop>{"{} has a stop after the tags: the text's own stop stands "
                                   "before them, as in 'text. {{lab}}'"},

    // Inline text (grammar/inline.hpp)
    Wrong<inline_text::open_mark>{
        "{} opens a mark that nothing closes on this line, so it is set as typed; close it before "
        "a space or a closing sign, or write '\\' before it"},
    Wrong<inline_text::doubled_mark>{"{} is no mark, so it is set as typed; expected one sign on "
                                     "each side, as in '*text*', or '\\' before each"},
    Wrong<inline_text::lone_backslash>{
        "expected a character after {}, found the end of the line, so it is set as typed; a "
        "backslash to be printed is written '\\\\'"},
    Wrong<inline_text::open_address>{
        "expected '>' after the address that begins here; a '<' to be printed is written '\\<'"},
    Wrong<inline_text::other_scheme>{
        "no link can be made with the scheme {}; expected 'http', 'https', 'mailto' or 'tel', or "
        "'\\<' for a '<' to be printed"},
    Wrong<inline_text::address_end>{
        "the address {} is not complete; expected one such as 'https://name.example/page', "
        "'mailto:name@school.example' or 'tel:+1-360-555-0142'"},
    Wrong<inline_text::address_blank>{
        "a space cannot stand in an address; leave it out, or write '%20' if it belongs there"},
    Wrong<inline_text::address_percent>{"expected two hexadecimal digits after '%' in an address; "
                                        "a percent sign of its own is written '%25'"},
    Wrong<inline_text::address_character>{
        "{} cannot stand here in an address (RFC 3986); write it percent-encoded if it belongs "
        "there, as in '%C3%A9' for 'é'"},
    Wrong<inline_text::no_address>{"{} is no address; expected one such as 'name.example/page', or "
                                   "'Portfolio <https://name.example/page>'"},
    Wrong<inline_text::second_address>{"a second address in one link; expected one, with the "
                                       "further ones in 'link:' lines of their own"},

    // Dates (grammar/dates.hpp)
    Wrong<dates::wrong_year>{"{} is no year of four figures; expected one such as '2026'"},
    Wrong<dates::year_bounds>{"{} is no year of a résumé; expected 1900 to 2100"},
    Wrong<dates::month>{"{} is no month; expected 01 to 12"},
    Wrong<dates::short_end>{"{} is no month; expected 01 to 12, or a later year as in '2023-24'"},
    Wrong<dates::day_of_month>{"{} is no day of {}; expected 1 to {}"},
    Wrong<dates::letter_in_year>{
        "{} has a letter among its figures: write the figure 0 for 'O', and 1 for 'l'"},
    Wrong<dates::short_of_century>{"{} is no year of four figures: write '20{}' if it is the year"},
    Wrong<dates::vague_word>{"{} cannot stand in a date: leave it out, as in 'Jun 2026'"},
    Wrong<dates::words_within>{"{} is no date: leave out the word between the season and the year, "
                               "or name the month, as in 'Mar 2026'"},
    Wrong<dates::open_question>{"{} leaves the date open: write '(expected)' after a date to come, "
                                "as in 'May 2027 (expected)', or take it out"},
    Wrong<dates::no_year>{"no year after {}; expected one, as in 'Jun 2026'"},
    Wrong<dates::unknown_word>{"{} is no month or season; expected a date such as 'Jun 2026', "
                               "'06/2026', 'Summer 2026' or '2026'"},
    Wrong<dates::misspelt_word>{"{} is no month or season; did you mean {}?"},
    Wrong<dates::no_date>{
        "{} is no date; expected one such as 'Jun 2026', '06/2026', 'Summer 2026' or '2026'"},
    Wrong<dates::nothing>{
        "no date here; expected one such as 'Jun 2026', '06/2026', 'Summer 2026' or '2026'"},
    Wrong<dates::no_end>{"no date after {}; expected an end, or 'present' for what goes on"},
    Wrong<dates::no_start>{"no date before {}; expected a start, as in 'Jun 2026 - Aug 2026'"},
    Wrong<dates::backwards>{"{} runs backwards: write the start first, as in 'Jun 2026 - present'"},
    Wrong<dates::only_present>{"no date before {}; expected a range, as in 'Jun 2026 - present'"},
    Wrong<dates::expected_present>{
        "{} cannot go with a range to the present; expected an end, as in 'May 2027 (expected)'"},
    Wrong<dates::left_over>{
        "{} is left over after the date; expected nothing more, or ' - ' before a second date"},

    // Values of settings (grammar/settings.hpp)
    Wrong<settings::pages_value>{
        "expected the most pages allowed, such as '2' or '1..2', found {}"},
    Wrong<settings::size_value>{
        "expected a text size in points without the unit, such as '11' or '10.5..11.5', found {}"},
    Wrong<settings::margins_value>{
        "expected margins in inches without the unit, such as '0.75' or '0.6..0.8', found {}"},
    Wrong<settings::language_value>{"expected a BCP 47 language tag, such as 'en-US', found {}"},
    Wrong<settings::updated_value>{"expected an ISO 8601 date, such as '2026-11-03', found {}"},
    Wrong<settings::accept_value>{"expected the name of a check and a reason, such as 'gpa-form "
                                  "(the school gives none)', found {}"},
    Wrong<settings::foreign_value>{"expected words and the tag of their language, such as 'Les "
                                   "Cahiers du littoral (fr)', several parted by ';', found {}"},
    Wrong<settings::abbreviations_value>{
        "expected an abbreviation and what it is short for, such as 'CTD (conductivity, "
        "temperature, and depth)', several parted by ';', found {}"},

    // Themes and patterns (grammar/theme.hpp)
    Wrong<theme::preferred>{"expected a number such as 10.8, found {}"},
    Wrong<theme::least>{"expected the least value, as in '10.8 (10..12)', found {}"},
    Wrong<theme::dots>{"expected '..' between the bounds, as in '10.8 (10..12)', found {}"},
    Wrong<theme::most>{"expected the greatest value, as in '10.8 (10..12)', found {}"},
    Wrong<theme::closing_bracket>{"expected ')' after the bounds, found {}"},
    Wrong<theme::end_of_value>{"expected nothing after the value, found {}"},
    Wrong<theme::hash>{"expected a colour such as #1a2b3c, found {}"},
    Wrong<theme::channels>{"expected six hexadecimal digits, as in #1a2b3c, found {}"},
    Wrong<theme::coordinate>{"expected a number from 0 to 100, found {}"},
    Wrong<theme::close_path>{
        "expected 'Z' to end the outline, or 'L' or 'C' to go on with it, found {}"},
    Wrong<theme::outlines>{"expected an outline such as 'M 10 10 L 90 10 L 90 90 Z', found {}"},
    Wrong<theme::end_of_path>{"expected a further outline, which opens with 'M', found {}"},
    Wrong<theme::field_name>{"expected a field's name, as in '{{role}}', found {}"},
    Wrong<theme::field_end>{"expected '}}' after the field's name, found {}"},
    Wrong<theme::escaped>{"expected a character after '\\', found {}"},
    Wrong<theme::strong_end>{"expected '*' to end the strong text, found {}"},
    Wrong<theme::emphasis_end>{
        "expected '/' to end the emphasis, found {}; a '/' to be printed is written '\\/'"},
    Wrong<theme::group_end>{"expected ']' to end the group, found {}"},
    Wrong<theme::end_of_pattern>{"expected the pattern to go on, found {}; a sign to be printed is "
                                 "written after '\\', and groups nest two deep at most"},

    // Values of an office's rules (grammar/office.hpp)
    Wrong<office::check_name>{"expected the name of a check, as in 'gpa-unsaid', found {}"},
    Wrong<office::wording>{"expected words, as in 'synergy (say who worked with whom)', found {}"},
    Wrong<office::listed_name>{"expected a name, found {}"},
    Wrong<office::choice>{"expected a word, found {}"},
    Wrong<office::remark>{"expected words between the parentheses, found {}"},
    Wrong<office::remark_end>{"expected ')', found {}"},
    Wrong<office::items_end>{"expected ';' and what comes next, or nothing more, found {}"},
    Wrong<office::limit_start>{"expected a number such as '4' or '3.2', found {}"},
    Wrong<office::limit_end>{"expected a number after '..', as in '3..5', found {}"},
    Wrong<office::limit_rest>{"expected nothing after the number but a reason in parentheses, "
                              "found {}"}};

// A rule without a message of its own is one that cannot be wrong; asking for its message does not
// compile.
template<typename Rule>
inline constexpr Message message = std::get<Wrong<Rule>>(messages).message;

}

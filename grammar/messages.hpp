// What each thing that can be wrong is called: one table for all the grammars, keyed by the rule
// that matches the wrong thing. `{}` takes the text that was found, cut to a readable length.
#pragma once

#include <string_view>

namespace quoin::grammar {

// A rule without a message of its own is one that cannot be wrong; asking for its message does not
// compile.
template<typename Rule>
inline constexpr std::string_view message = [] {
    static_assert(sizeof(Rule) == 0, "this rule has no message");
    return std::string_view{};
}();

// Lines of a résumé or a theme (grammar/lines.hpp)

namespace lines {
struct section_without_title;
struct field_without_value;
struct bullet_without_text;
struct nothing_tagged;
struct line_of_dashes;
struct bullet_too_deep;
struct bullet_without_space;
struct foreign_bullet;
struct indented_bullet;
struct equals_for_colon;
struct foreign_colon;
struct label_without_colon;
struct fold_of_nothing;
struct unknown_line;
struct tags_missing;
struct tags_unclosed;
struct tags_ill_formed;
struct tags_apart;
struct tags_before_stop;
}

template<>
inline constexpr std::string_view message<lines::section_without_title> =
    "'{}' has no title: write one after the colon, as in 'section: Education'";
template<>
inline constexpr std::string_view message<lines::field_without_value> =
    "'{}' has no value: write one after the colon, or take the line out";
template<>
inline constexpr std::string_view message<lines::bullet_without_text> =
    "'{}' has no text: write the bullet after it, or take the line out";
template<>
inline constexpr std::string_view message<lines::nothing_tagged> =
    "'{}' has tags and nothing else: write the text that they are for before them";
template<>
inline constexpr std::string_view message<lines::line_of_dashes> =
    "a line of dashes is no part of the markup: a blank line ends an entry, and 'section: "
    "TITLE' opens a section";
template<>
inline constexpr std::string_view message<lines::bullet_too_deep> =
    "'{}' is one level too many: a bullet is '- text' or, one level deeper, '-- text'";
template<>
inline constexpr std::string_view message<lines::bullet_without_space> =
    "'{}' needs a space after its dash, as in '- text'";
template<>
inline constexpr std::string_view message<lines::foreign_bullet> =
    "'{}' opens no bullet: write '- text'";
template<>
inline constexpr std::string_view message<lines::indented_bullet> =
    "an indented line goes on with the line above: a bullet starts in the first column, and "
    "'-- text' is one level deeper";
template<>
inline constexpr std::string_view message<lines::equals_for_colon> =
    "'{}' was found where a label and a colon were expected, as in 'label: value'";
template<>
inline constexpr std::string_view message<lines::foreign_colon> =
    "'{}' ends in a sign that only looks like a colon: type ':' after the label";
template<>
inline constexpr std::string_view message<lines::label_without_colon> =
    "'{}' needs a colon after it, as in 'label: value'; a line that goes on with the one "
    "above starts with a space";
template<>
inline constexpr std::string_view message<lines::fold_of_nothing> =
    "'{}' is indented, so it goes on with the line above, and there is none: start it in the "
    "first column";
template<>
inline constexpr std::string_view message<lines::unknown_line> =
    "'{}' is no line of the markup: expected 'label: value', '- text' or 'section: TITLE'; a "
    "line that goes on with the one above starts with a space";
template<>
inline constexpr std::string_view message<lines::tags_missing> =
    "'{}' names no tag: write tags as in '{lab field}', or '\\{' for a brace that is text";
template<>
inline constexpr std::string_view message<lines::tags_unclosed> =
    "'{}' is not closed: write tags as in '{lab field}', or '\\{' for a brace that is text";
template<>
inline constexpr std::string_view message<lines::tags_ill_formed> =
    "'{}' is no list of tags: words of letters, digits, '-' and '_' with spaces between, as "
    "in '{lab !field}'; write '\\{' for a brace that is text";
template<>
inline constexpr std::string_view message<lines::tags_apart> =
    "'{}' has tags in two pairs of braces: write them in one, as in '{lab field}'";
template<>
inline constexpr std::string_view message<lines::tags_before_stop> =
    "'{}' has a stop after the tags: the text's own stop stands before them, as in 'text. "
    "{lab}'";

// Inline text (grammar/inline.hpp)

namespace inline_text {
struct open_mark;
struct doubled_mark;
struct lone_backslash;
struct open_address;
struct other_scheme;
struct address_end;
struct address_blank;
struct address_percent;
struct address_character;
struct no_address;
struct second_address;
}

template<>
inline constexpr std::string_view message<inline_text::open_mark> =
    "{} opens a mark that nothing closes on this line, so it is set as typed; close it before a "
    "space or a closing sign, or write '\\' before it";
template<>
inline constexpr std::string_view message<inline_text::doubled_mark> =
    "{} is no mark, so it is set as typed; expected one sign on each side, as in '*text*', or "
    "'\\' before each";
template<>
inline constexpr std::string_view message<inline_text::lone_backslash> =
    "expected a character after {}, found the end of the line, so it is set as typed; a backslash "
    "to be printed is written '\\\\'";
template<>
inline constexpr std::string_view message<inline_text::open_address> =
    "expected '>' after the address that begins here; a '<' to be printed is written '\\<'";
template<>
inline constexpr std::string_view message<inline_text::other_scheme> =
    "no link can be made with the scheme {}; expected 'http', 'https', 'mailto' or 'tel', or "
    "'\\<' for a '<' to be printed";
template<>
inline constexpr std::string_view message<inline_text::address_end> =
    "the address {} is not complete; expected one such as 'https://name.example/page', "
    "'mailto:name@school.example' or 'tel:+1-360-555-0142'";
template<>
inline constexpr std::string_view message<inline_text::address_blank> =
    "a space cannot stand in an address; leave it out, or write '%20' if it belongs there";
template<>
inline constexpr std::string_view message<inline_text::address_percent> =
    "expected two hexadecimal digits after '%' in an address; a percent sign of its own is "
    "written '%25'";
template<>
inline constexpr std::string_view message<inline_text::address_character> =
    "{} cannot stand here in an address (RFC 3986); write it percent-encoded if it belongs there, "
    "as in '%C3%A9' for 'é'";
template<>
inline constexpr std::string_view message<inline_text::no_address> =
    "{} is no address; expected one such as 'name.example/page', or 'Portfolio "
    "<https://name.example/page>'";
template<>
inline constexpr std::string_view message<inline_text::second_address> =
    "a second address in one link; expected one, with the further ones in 'link:' lines of their "
    "own";

// Dates (grammar/dates.hpp)

namespace dates {
struct no_year;
struct unknown_word;
struct misspelt_word;
struct no_date;
struct no_end;
struct no_start;
struct only_present;
struct nothing;
struct left_over;
struct year_bounds;
struct day_of_month;
struct expected_present;
struct wrong_year;
struct month;
struct short_end;
}

template<>
inline constexpr std::string_view message<dates::wrong_year> =
    "{} is no year of four figures; expected one such as '2026'";
template<>
inline constexpr std::string_view message<dates::year_bounds> =
    "{} is no year of a résumé; expected 1900 to 2100";
template<>
inline constexpr std::string_view message<dates::month> = "{} is no month; expected 01 to 12";
template<>
inline constexpr std::string_view message<dates::short_end> =
    "{} is no month; expected 01 to 12, or a later year as in '2023-24'";
template<>
inline constexpr std::string_view message<dates::day_of_month> =
    "{} is no day of {}; expected 1 to {}";
template<>
inline constexpr std::string_view message<dates::no_year> =
    "no year after {}; expected one, as in 'Jun 2026'";
template<>
inline constexpr std::string_view message<dates::unknown_word> =
    "{} is no month or season; expected a date such as 'Jun 2026', '06/2026', 'Summer 2026' or "
    "'2026'";
template<>
inline constexpr std::string_view message<dates::misspelt_word> =
    "{} is no month or season; did you mean {}?";
template<>
inline constexpr std::string_view message<dates::no_date> =
    "{} is no date; expected one such as 'Jun 2026', '06/2026', 'Summer 2026' or '2026'";
template<>
inline constexpr std::string_view message<dates::nothing> =
    "no date here; expected one such as 'Jun 2026', '06/2026', 'Summer 2026' or '2026'";
template<>
inline constexpr std::string_view message<dates::no_end> =
    "no date after {}; expected an end, or 'present' for what goes on";
template<>
inline constexpr std::string_view message<dates::no_start> =
    "no date before {}; expected a start, as in 'Jun 2026 - Aug 2026'";
template<>
inline constexpr std::string_view message<dates::only_present> =
    "no date before {}; expected a range, as in 'Jun 2026 - present'";
template<>
inline constexpr std::string_view message<dates::expected_present> =
    "{} cannot go with a range to the present; expected an end, as in 'May 2027 (expected)'";
template<>
inline constexpr std::string_view message<dates::left_over> =
    "{} is left over after the date; expected nothing more, or ' - ' before a second date";

// Values of settings (grammar/settings.hpp)

namespace settings {
struct pages_value;
struct size_value;
struct margins_value;
struct language_value;
struct updated_value;
struct accept_value;
struct foreign_value;
struct abbreviations_value;
}

template<>
inline constexpr std::string_view message<settings::pages_value> =
    "expected the most pages allowed, such as '1', found '{}'";
template<>
inline constexpr std::string_view message<settings::size_value> =
    "expected a text size in points without the unit, such as '11' or '10.5..11.5', found '{}'";
template<>
inline constexpr std::string_view message<settings::margins_value> =
    "expected margins in inches without the unit, such as '0.75' or '0.6..0.8', found '{}'";
template<>
inline constexpr std::string_view message<settings::language_value> =
    "expected a BCP 47 language tag, such as 'en-US', found '{}'";
template<>
inline constexpr std::string_view message<settings::updated_value> =
    "expected an ISO 8601 date, such as '2026-11-03', found '{}'";
template<>
inline constexpr std::string_view message<settings::accept_value> =
    "expected the name of a check and a reason, such as 'gpa-form (the school gives none)', "
    "found '{}'";
template<>
inline constexpr std::string_view message<settings::foreign_value> =
    "expected words and the tag of their language, such as 'Les Cahiers du littoral (fr)', several "
    "parted by ';', found '{}'";
template<>
inline constexpr std::string_view message<settings::abbreviations_value> =
    "expected an abbreviation and what it is short for, such as 'CTD (conductivity, temperature, "
    "and depth)', several parted by ';', found '{}'";

// Themes and patterns (grammar/theme.hpp)

namespace theme {
struct preferred;
struct least;
struct dots;
struct most;
struct closing_bracket;
struct end_of_value;
struct hash;
struct channels;
struct field_name;
struct field_end;
struct coordinate;
struct close_path;
struct outlines;
struct end_of_path;
struct escaped;
struct strong_end;
struct emphasis_end;
struct group_end;
struct end_of_pattern;
}

template<>
inline constexpr std::string_view message<theme::preferred> =
    "expected a number such as 10.8, found '{}'";
template<>
inline constexpr std::string_view message<theme::least> =
    "expected the least value, as in '10.8 (10..12)', found '{}'";
template<>
inline constexpr std::string_view message<theme::dots> =
    "expected '..' between the bounds, as in '10.8 (10..12)', found '{}'";
template<>
inline constexpr std::string_view message<theme::most> =
    "expected the greatest value, as in '10.8 (10..12)', found '{}'";
template<>
inline constexpr std::string_view message<theme::closing_bracket> =
    "expected ')' after the bounds, found '{}'";
template<>
inline constexpr std::string_view message<theme::end_of_value> =
    "expected nothing after the value, found '{}'";
template<>
inline constexpr std::string_view message<theme::hash> =
    "expected a colour such as #1a2b3c, found '{}'";
template<>
inline constexpr std::string_view message<theme::channels> =
    "expected six hexadecimal digits, as in #1a2b3c, found '{}'";
template<>
inline constexpr std::string_view message<theme::coordinate> =
    "expected a number from 0 to 100, found '{}'";
template<>
inline constexpr std::string_view message<theme::close_path> =
    "expected 'Z' to end the outline, or 'L' or 'C' to go on with it, found '{}'";
template<>
inline constexpr std::string_view message<theme::outlines> =
    "expected an outline such as 'M 10 10 L 90 10 L 90 90 Z', found '{}'";
template<>
inline constexpr std::string_view message<theme::end_of_path> =
    "expected a further outline, which opens with 'M', found '{}'";
template<>
inline constexpr std::string_view message<theme::field_name> =
    "expected a field's name, as in '{role}', found '{}'";
template<>
inline constexpr std::string_view message<theme::field_end> =
    "expected '}' after the field's name, found '{}'";
template<>
inline constexpr std::string_view message<theme::escaped> =
    "expected a character after '\\', found '{}'";
template<>
inline constexpr std::string_view message<theme::strong_end> =
    "expected '*' to end the strong text, found '{}'";
template<>
inline constexpr std::string_view message<theme::emphasis_end> =
    "expected '/' to end the emphasis, found '{}'; a '/' to be printed is written '\\/'";
template<>
inline constexpr std::string_view message<theme::group_end> =
    "expected ']' to end the group, found '{}'";
template<>
inline constexpr std::string_view message<theme::end_of_pattern> =
    "expected the pattern to go on, found '{}'; a sign to be printed is written after '\\', and "
    "groups nest two deep at most";

}

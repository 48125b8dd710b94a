// Dates of a résumé, as people write them: single dates and ranges of two. Rules below "Faults"
// match what is no date, so that a message can say what is wrong with it in particular.
#pragma once

#include <tao/pegtl.hpp>

#include <cstddef>
#include <string_view>

namespace quoin::grammar::dates {

namespace pegtl = tao::pegtl;

// Words of the résumé's own language, which are known only when that is: the first state of a parse
// says how much of the input is one.
enum class Local { month, spring, summer, autumn, winter, present, expected, to, since, of };
constexpr std::size_t local_count = 10;
template<Local What>
struct local {
    using rule_t = local;
    using subs_t = pegtl::empty_list;

    template<pegtl::apply_mode, pegtl::rewind_mode, template<typename...> class,
             template<typename...> class, typename Input, typename Words, typename... States>
    static bool match(Input& in, const Words& words, States&&...) {
        const std::size_t length =
            words.length_at(std::string_view(in.current(), in.size(0)), What);
        in.bump(length);
        return length > 0;
    }
};

// Blanks and words
struct blank : pegtl::sor<pegtl::one<' ', '\t'>, pegtl::utf8::one<0xA0>> {};
struct blanks : pegtl::star<blank> {};
struct gap : pegtl::star<pegtl::sor<blank, pegtl::one<','>, local<Local::of>>> {};
struct letter : pegtl::sor<pegtl::alpha, pegtl::utf8::range<0xC0, 0x24F>> {};
struct word_end : pegtl::not_at<letter> {};
struct figures_end : pegtl::not_at<pegtl::digit> {};
template<char... Letters>
struct word : pegtl::seq<pegtl::istring<Letters...>, word_end> {};

template<char... Letters>
struct some_word
    : pegtl::seq<pegtl::istring<Letters...>, pegtl::opt<pegtl::one<'s', 'S'>>, word_end> {};

// `Jan`, `Jan.`, `January`: the start, and the rest or none
template<typename Start, typename Rest>
struct name : pegtl::seq<Start, pegtl::opt<Rest>, word_end, pegtl::opt<pegtl::one<'.'>>> {};
template<char... Letters>
using part = pegtl::istring<Letters...>;
struct month_name
    : pegtl::sor<
          name<part<'j', 'a', 'n'>, part<'u', 'a', 'r', 'y'>>,
          name<part<'f', 'e', 'b'>, part<'r', 'u', 'a', 'r', 'y'>>,
          name<part<'m', 'a', 'r'>, part<'c', 'h'>>, name<part<'a', 'p', 'r'>, part<'i', 'l'>>,
          name<part<'m', 'a', 'y'>, pegtl::failure>, name<part<'j', 'u', 'n'>, part<'e'>>,
          name<part<'j', 'u', 'l'>, part<'y'>>, name<part<'a', 'u', 'g'>, part<'u', 's', 't'>>,
          name<part<'s', 'e', 'p'>,
               pegtl::seq<part<'t'>, pegtl::opt<part<'e', 'm', 'b', 'e', 'r'>>>>,
          name<part<'o', 'c', 't'>, part<'o', 'b', 'e', 'r'>>,
          name<part<'n', 'o', 'v'>, part<'e', 'm', 'b', 'e', 'r'>>,
          name<part<'d', 'e', 'c'>, part<'e', 'm', 'b', 'e', 'r'>>, local<Local::month>> {};

struct spring : pegtl::sor<some_word<'s', 'p', 'r', 'i', 'n', 'g'>, local<Local::spring>> {};
struct summer : pegtl::sor<some_word<'s', 'u', 'm', 'm', 'e', 'r'>, local<Local::summer>> {};
struct autumn : pegtl::sor<some_word<'f', 'a', 'l', 'l'>, some_word<'a', 'u', 't', 'u', 'm', 'n'>,
                           local<Local::autumn>> {};
struct winter : pegtl::sor<some_word<'w', 'i', 'n', 't', 'e', 'r'>, local<Local::winter>> {};
struct season : pegtl::sor<spring, summer, autumn, winter> {};
struct term : pegtl::sor<word<'s', 'e', 'm', 'e', 's', 't', 'e', 'r'>, word<'t', 'e', 'r', 'm'>,
                         word<'q', 'u', 'a', 'r', 't', 'e', 'r'>> {}; // `Fall Semester 2024`
struct each                                                           // `each summer 2022-2025`
    : pegtl::sor<word<'e', 'a', 'c', 'h'>, word<'e', 'v', 'e', 'r', 'y'>> {};
struct year_of_study
    : pegtl::sor<word<'a', 'y'>, pegtl::seq<pegtl::sor<word<'a', 'c', 'a', 'd', 'e', 'm', 'i', 'c'>,
                                                       word<'s', 'c', 'h', 'o', 'o', 'l'>>,
                                            pegtl::plus<blank>, word<'y', 'e', 'a', 'r'>>> {};
struct academic_year : pegtl::seq<year_of_study, blanks> {};
struct class_of // `Class of 2027`, `Graduated May 2026`
    : pegtl::seq<
          pegtl::sor<pegtl::seq<word<'c', 'l', 'a', 's', 's'>, pegtl::plus<blank>, word<'o', 'f'>>,
                     word<'g', 'r', 'a', 'd', 'u', 'a', 't', 'e', 'd'>>,
          pegtl::plus<blank>> {};
struct closing_term // `2025-26 academic year`, `Fall 2026 semester`
    : pegtl::seq<pegtl::plus<blank>, pegtl::sor<year_of_study, term>> {};

struct present
    : pegtl::sor<word<'p', 'r', 'e', 's', 'e', 'n', 't'>, word<'o', 'n', 'g', 'o', 'i', 'n', 'g'>,
                 word<'c', 'u', 'r', 'r', 'e', 'n', 't', 'l', 'y'>,
                 word<'c', 'u', 'r', 'r', 'e', 'n', 't'>, word<'n', 'o', 'w'>,
                 pegtl::seq<word<'i', 'n'>, pegtl::plus<blank>,
                            word<'p', 'r', 'o', 'g', 'r', 'e', 's', 's'>>,
                 word<'t', 'o', 'd', 'a', 'y'>, word<'p', 'r', 'e', 's'>, local<Local::present>> {};

struct expected_word
    : pegtl::seq<pegtl::sor<word<'e', 'x', 'p', 'e', 'c', 't', 'e', 'd'>,
                            word<'a', 'n', 't', 'i', 'c', 'i', 'p', 'a', 't', 'e', 'd'>,
                            word<'p', 'r', 'o', 'j', 'e', 'c', 't', 'e', 'd'>,
                            word<'p', 'l', 'a', 'n', 'n', 'e', 'd'>,
                            word<'g', 'r', 'a', 'd', 'u', 'a', 't', 'i', 'n', 'g'>,
                            word<'e', 'x', 'p'>, local<Local::expected>>,
                 pegtl::opt<pegtl::one<'.', ':'>>,
                 pegtl::opt<blanks, word<'g', 'r', 'a', 'd', 'u', 'a', 't', 'i', 'o', 'n'>>> {};
struct expected
    : pegtl::sor<expected_word,
                 pegtl::seq<pegtl::one<'('>, blanks, expected_word, blanks, pegtl::one<')'>>> {};

// Years, months and days in figures. Whether they are in their bounds is looked at afterwards.
struct year : pegtl::seq<pegtl::rep<4, pegtl::digit>, figures_end> {};
struct two_figures : pegtl::seq<pegtl::rep<2, pegtl::digit>, figures_end> {};
struct apostrophe : pegtl::sor<pegtl::one<'\''>, pegtl::utf8::one<0x2018, 0x2019>> {};
struct short_year : pegtl::seq<apostrophe, two_figures> {}; // `'26`
struct month : pegtl::seq<pegtl::rep_min_max<1, 2, pegtl::digit>, figures_end> {};
struct iso_month : month {};
struct day : pegtl::seq<pegtl::rep_min_max<1, 2, pegtl::digit>, figures_end> {};
struct ordinal : pegtl::sor<word<'s', 't'>, word<'n', 'd'>, word<'r', 'd'>, word<'t', 'h'>,
                            word<'e', 'r'>, pegtl::one<'.'>> {};
struct named_day : pegtl::seq<day, pegtl::opt<ordinal>> {};
struct wrong_year : pegtl::plus<pegtl::digit> {};
struct letter_or_figure : pegtl::sor<pegtl::digit, pegtl::one<'O', 'o', 'I', 'l'>> {};
struct letter_in_year // `2O27`
    : pegtl::seq<pegtl::at<pegtl::digit>, pegtl::rep<4, letter_or_figure>, figures_end, word_end> {
};
struct any_year : pegtl::sor<year, short_year, letter_in_year, wrong_year> {};

struct hyphen : pegtl::one<'-'> {};
struct slash : pegtl::one<'/'> {};

// Single dates
struct iso_day : pegtl::seq<year, hyphen, iso_month, hyphen, day> {}; // 2026-06-01
struct slash_day : pegtl::seq<month, slash, day, slash, any_year> {}; // 06/01/2026
struct hyphen_day                                                     // 6-1-2026
    : pegtl::seq<month, hyphen, day, hyphen, any_year> {};
struct past_months // a day that can be no month
    : pegtl::seq<pegtl::sor<pegtl::seq<pegtl::one<'1'>, pegtl::range<'3', '9'>>,
                            pegtl::seq<pegtl::one<'2'>, pegtl::digit>,
                            pegtl::seq<pegtl::one<'3'>, pegtl::range<'0', '1'>>>,
                 figures_end> {};
struct day_slash // 15/08/2024
    : pegtl::seq<pegtl::at<past_months>, day, slash, month, slash, any_year> {};
struct dot : pegtl::one<'.'> {};
struct dot_day : pegtl::seq<day, dot, month, dot, any_year> {};                     // 15.08.2024
struct dot_month : pegtl::seq<month, dot, year> {};                                 // 08.2024
struct year_month : pegtl::seq<year, pegtl::sor<hyphen, slash, dot>, iso_month> {}; // 2026-06
struct month_year : pegtl::seq<month, pegtl::sor<hyphen, slash>, year> {};          // 06/2026
struct month_two : pegtl::seq<month, slash, wrong_year> {};                         // 06/26
struct name_day : pegtl::seq<month_name, gap, named_day, gap, any_year> {};         // Jun 1, 2026
struct day_name : pegtl::seq<named_day, gap, month_name, gap, any_year> {};         // 1 Jun 2026
struct name_year : pegtl::seq<month_name, gap, any_year> {};                        // Jun 2026
struct year_name : pegtl::seq<year, pegtl::plus<blank>, month_name> {};             // 2026 Jun
struct season_year                                                                  // Summer 2026
    : pegtl::seq<pegtl::opt<each, blanks>, season, gap, pegtl::opt<term, gap>, any_year> {};
struct date : pegtl::sor<iso_day, day_slash, slash_day, hyphen_day, dot_day, dot_month, year_month,
                         month_year, month_two, name_day, day_name, name_year, season_year,
                         year_name, any_year> {};

// Between the dates of a range
struct dash : pegtl::sor<pegtl::string<'-', '>'>, pegtl::utf8::one<U'\u2192'>, pegtl::two<'-'>,
                         hyphen, pegtl::one<'~'>,
                         pegtl::utf8::one<0x2010, 0x2011, 0x2012, 0x2013, 0x2014, 0x2015, 0x2212>> {
};
struct until : pegtl::sor<word<'u', 'n', 't', 'i', 'l'>, word<'t', 'i', 'l', 'l'>> {};
struct to : pegtl::sor<pegtl::seq<word<'t', 'o'>, pegtl::opt<pegtl::one<':'>>>,
                       word<'t', 'h', 'r', 'o', 'u', 'g', 'h'>, word<'t', 'h', 'r', 'u'>, until,
                       local<Local::to>> {};
struct separator : pegtl::sor<dash, to> {};
struct between : pegtl::seq<blanks, separator, blanks> {};
struct from : pegtl::seq<pegtl::sor<word<'f', 'r', 'o', 'm'>, local<Local::since>>, blanks> {};
struct since : pegtl::sor<pegtl::seq<word<'s', 'i', 'n', 'c', 'e'>, blanks>, from> {};

// Ranges. `2023-24` is two years, as 24 is no month; so is `2011–12`, as a month has a hyphen.
struct month_figures : pegtl::seq<pegtl::sor<pegtl::seq<pegtl::one<'0'>, pegtl::range<'1', '9'>>,
                                             pegtl::seq<pegtl::one<'1'>, pegtl::range<'0', '2'>>>,
                                  figures_end> {};
struct short_end : two_figures {};
struct close_between : pegtl::seq<pegtl::sor<hyphen, slash>, pegtl::not_at<month_figures>> {};
struct wide_between : pegtl::seq<pegtl::not_at<pegtl::sor<hyphen, slash>, pegtl::digit>, between> {
};
struct range_tail : pegtl::not_at<pegtl::sor<hyphen, slash>, pegtl::digit> {};
struct only_year : year {};
struct years
    : pegtl::seq<only_year, pegtl::sor<close_between, wide_between>, short_end, range_tail> {};
struct iso_date : pegtl::sor<iso_day, pegtl::seq<year, hyphen, iso_month>> {};
struct iso_interval // 2025-09-01/2026-05-15, as ISO 8601-1, section 5.5, has it
    : pegtl::seq<iso_date, slash, iso_date> {};
struct whole_years : pegtl::seq<only_year, slash, only_year> {}; // 2025/2026
struct start_day : pegtl::seq<gap, named_day> {};
struct part_month : pegtl::seq<month_name, pegtl::opt<start_day>> {};
struct part_start : pegtl::sor<part_month, season> {};
struct end_day : pegtl::seq<named_day, gap, any_year> {};
struct part_end : pegtl::sor<name_day, name_year, season_year> {};
struct one_year : pegtl::seq<part_start, between, part_end> {}; // May-August 2025
struct start_of_month : pegtl::seq<month_name, start_day> {};
struct one_month : pegtl::seq<start_of_month, between, end_day> {}; // June 3-14, 2025

// Faults
struct letters : pegtl::plus<letter> {};
struct vague_word
    : pegtl::sor<word<'e', 'a', 'r', 'l', 'y'>, word<'l', 'a', 't', 'e'>, word<'m', 'i', 'd'>,
                 word<'c', 'i', 'r', 'c', 'a'>, word<'a', 'b', 'o', 'u', 't'>,
                 word<'a', 'r', 'o', 'u', 'n', 'd'>, word<'a', 'p', 'p', 'r', 'o', 'x'>> {};
struct words_within // `Spring Break 2026`
    : pegtl::seq<season, pegtl::plus<blank>, letters, pegtl::plus<blank>, year> {};
struct short_of_century : wrong_year {};
struct no_year : part_start {};
struct unknown_word : letters {};
struct misspelt_word : letters {};
struct no_date : pegtl::plus<pegtl::any> {};
struct wrong_date : pegtl::sor<words_within, vague_word, no_year, unknown_word, no_date> {};
struct no_end : separator {};
struct no_start : separator {};
struct backwards : pegtl::seq<present, between, date> {};
struct only_present : present {};
struct nothing : pegtl::eof {};
struct open_question : pegtl::one<'?'> {};
struct left_over : pegtl::plus<pegtl::any> {};
struct year_bounds : year {};
struct day_of_month : day {};
struct expected_present : expected {};

struct end : pegtl::seq<pegtl::opt<expected, blanks>, pegtl::sor<present, date, wrong_date>> {};
struct cut_off : pegtl::seq<blanks, no_end, blanks, pegtl::eof> {};
struct range : pegtl::seq<date, pegtl::sor<cut_off, pegtl::seq<between, end>>> {};
struct since_range : pegtl::seq<since, pegtl::sor<date, wrong_date>> {};
struct from_range : pegtl::seq<from, pegtl::sor<one_month, one_year, range>> {};
struct wrong_start : pegtl::sor<nothing, no_start, backwards, only_present, wrong_date> {};
struct body : pegtl::sor<years, iso_interval, whole_years,
                         pegtl::seq<academic_year, pegtl::sor<years, whole_years>>, one_month,
                         one_year, from_range, since_range, range, date, wrong_start> {};

struct closing : pegtl::seq<gap, expected> {};
struct in_parentheses
    : pegtl::seq<pegtl::one<'('>, blanks, expected, blanks, date, blanks, pegtl::one<')'>> {};
struct text : pegtl::seq<blanks, pegtl::opt<class_of>,
                         pegtl::sor<in_parentheses, pegtl::seq<pegtl::opt<expected, blanks>, body>>,
                         pegtl::opt<closing_term>, pegtl::opt<closing>, blanks,
                         pegtl::opt<open_question>, blanks, pegtl::opt<left_over>> {};

}

// Values of settings: numbers and intervals of them, a language tag, a date, checks set aside.
// Each rule that ends in `_value` matches a whole value, without spaces around it.
#pragma once

#include <tao/pegtl.hpp>

namespace quoin::grammar::settings {

namespace pegtl = tao::pegtl;

struct setting_blanks : pegtl::star<pegtl::blank> {};

// `11`, `0.75`, `.75`; `10.5..11.5`
struct whole_part : pegtl::plus<pegtl::digit> {};
struct fraction : pegtl::seq<pegtl::one<'.'>, pegtl::plus<pegtl::digit>> {};
struct number : pegtl::sor<pegtl::seq<whole_part, pegtl::opt<fraction>>, fraction> {};
struct between : pegtl::seq<setting_blanks, pegtl::two<'.'>, setting_blanks> {};
struct interval : pegtl::seq<number, pegtl::opt<between, number>> {};
struct size_value : pegtl::seq<interval, pegtl::eof> {};
struct margins_value : pegtl::seq<interval, pegtl::eof> {};

// `2`; `1..2`, which says the same
struct from_one_page : pegtl::seq<pegtl::one<'1'>, between> {};
struct page_count : pegtl::plus<pegtl::digit> {};
struct pages_value : pegtl::seq<pegtl::opt<from_one_page>, page_count, pegtl::eof> {};

// BCP 47, that is RFC 5646, section 2.1, without the grandfathered tags, which are all deprecated.
struct subtag_end : pegtl::not_at<pegtl::alnum> {};
template<unsigned Least, unsigned Most, typename Character>
struct subtag : pegtl::seq<pegtl::rep_min_max<Least, Most, Character>, subtag_end> {};
template<typename... Rules>
struct further : pegtl::seq<pegtl::one<'-'>, Rules...> {};
struct extended_language : pegtl::rep_opt<3, further<subtag<3, 3, pegtl::alpha>>> {};
struct primary_language : pegtl::sor<pegtl::seq<subtag<2, 3, pegtl::alpha>, extended_language>,
                                     subtag<4, 8, pegtl::alpha>> {};
struct script : subtag<4, 4, pegtl::alpha> {};
struct region : pegtl::sor<subtag<2, 2, pegtl::alpha>, subtag<3, 3, pegtl::digit>> {};
struct variant : pegtl::sor<subtag<5, 8, pegtl::alnum>,
                            pegtl::seq<pegtl::at<pegtl::digit>, subtag<4, 4, pegtl::alnum>>> {};
struct singleton : pegtl::seq<pegtl::not_at<pegtl::one<'x', 'X'>>, subtag<1, 1, pegtl::alnum>> {};
struct extension : pegtl::seq<singleton, pegtl::plus<further<subtag<2, 8, pegtl::alnum>>>> {};
struct private_use
    : pegtl::seq<pegtl::one<'x', 'X'>, pegtl::plus<further<subtag<1, 8, pegtl::alnum>>>> {};
struct language_tag
    : pegtl::seq<primary_language, pegtl::opt<further<script>>, pegtl::opt<further<region>>,
                 pegtl::star<further<variant>>, pegtl::star<further<extension>>,
                 pegtl::opt<further<private_use>>> {};
struct language_value : pegtl::seq<pegtl::sor<private_use, language_tag>, pegtl::eof> {};

// ISO 8601-1, extended format: `2026-11-03`, or with reduced precision `2026-11`
struct updated_year : pegtl::rep<4, pegtl::digit> {};
struct updated_month : pegtl::rep<2, pegtl::digit> {};
struct updated_day : pegtl::rep<2, pegtl::digit> {};
struct updated_value : pegtl::seq<updated_year, pegtl::one<'-'>, updated_month,
                                  pegtl::opt<pegtl::one<'-'>, updated_day>, pegtl::eof> {};

// `check-name (reason)`; the reason may hold parentheses of its own, one deep
struct check_name
    : pegtl::seq<pegtl::alpha, pegtl::star<pegtl::sor<pegtl::alnum, pegtl::one<'-'>>>> {};
struct inner_parentheses
    : pegtl::seq<pegtl::one<'('>, pegtl::star<pegtl::not_one<'(', ')'>>, pegtl::one<')'>> {};
struct reason : pegtl::plus<pegtl::sor<inner_parentheses, pegtl::not_one<'(', ')'>>> {};
struct acceptance : pegtl::seq<check_name, setting_blanks, pegtl::one<'('>, setting_blanks, reason,
                               pegtl::one<')'>> {};
struct acceptance_separator : pegtl::seq<setting_blanks, pegtl::one<';'>, setting_blanks> {};
struct accept_value : pegtl::seq<pegtl::list<acceptance, acceptance_separator>, pegtl::eof> {};

// `words (their language)`, `abbreviation (what it is short for)`
struct glossed_words : pegtl::plus<pegtl::not_one<'(', ')', ';'>> {};
struct gloss_text : pegtl::plus<pegtl::sor<inner_parentheses, pegtl::not_one<'(', ')'>>> {};
struct gloss
    : pegtl::seq<glossed_words, pegtl::one<'('>, setting_blanks, gloss_text, pegtl::one<')'>> {};
struct glosses : pegtl::seq<pegtl::list<gloss, acceptance_separator>, pegtl::eof> {};
struct foreign_value : glosses {};
struct abbreviations_value : glosses {};

}

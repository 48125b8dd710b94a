// The grammar of an office's rules: the values of their lines. The labelled lines around them are
// those of grammar/lines.hpp. Each rule that ends in `_value` matches a whole value.
#pragma once

#include <tao/pegtl.hpp>

namespace quoin::grammar::office {

namespace pegtl = tao::pegtl;

struct office_blanks : pegtl::star<pegtl::blank> {};

// `(…)` after what it is said of; it may hold parentheses of its own, one deep
struct inner_remark
    : pegtl::seq<pegtl::one<'('>, pegtl::star<pegtl::not_one<'(', ')'>>, pegtl::one<')'>> {};
struct remark : pegtl::plus<pegtl::sor<inner_remark, pegtl::not_one<'(', ')'>>> {};
struct remark_end : pegtl::one<')'> {};
struct remarked
    : pegtl::seq<pegtl::one<'('>, office_blanks, pegtl::must<remark>, pegtl::must<remark_end>> {};
struct after_item : pegtl::seq<office_blanks, pegtl::opt<remarked>, office_blanks> {};

// Items that `;` parts
struct items_end : pegtl::eof {};
template<typename Item>
struct items : pegtl::seq<office_blanks, Item, pegtl::star<pegtl::one<';'>, office_blanks, Item>,
                          pegtl::must<items_end>> {};

// `gpa-unsaid (our employers ask for it); high-school`
struct check_name : pegtl::seq<pegtl::plus<pegtl::sor<pegtl::alnum, pegtl::one<'-', '_'>>>> {};
struct ruling : pegtl::seq<pegtl::must<check_name>, after_item> {};
struct rulings_value : items<ruling> {};

// `synergy (say who worked with whom); utilized`
struct wording : pegtl::plus<pegtl::not_one<'(', ')', ';'>> {};
struct worded : pegtl::seq<pegtl::must<wording>, after_item> {};
struct words_value : items<worded> {};

// `Marrow Bay Kelp Co-op; Lantern Street Coffee (Dock Road)`
struct listed_name : pegtl::plus<pegtl::not_one<';'>> {};
struct names_value : items<pegtl::must<listed_name>> {};

// `turnstone, sanderling`
struct choice : pegtl::plus<pegtl::not_one<',', ';'>> {};
struct choices_value
    : pegtl::seq<office_blanks, pegtl::must<choice>,
                 pegtl::star<pegtl::one<',', ';'>, office_blanks, pegtl::must<choice>>> {};

// `3.2`; `3..5`; either with `(…)`
struct office_digits : pegtl::plus<pegtl::digit> {};
struct limit_number
    : pegtl::sor<pegtl::seq<office_digits, pegtl::opt<pegtl::one<'.'>, office_digits>>,
                 pegtl::seq<pegtl::one<'.'>, office_digits>> {};
struct limit_start : limit_number {};
struct limit_end : limit_number {};
struct limit_dots : pegtl::seq<office_blanks, pegtl::two<'.'>, office_blanks> {};
struct limit_rest : pegtl::eof {};
struct limit_value : pegtl::seq<office_blanks, pegtl::must<limit_start>,
                                pegtl::opt<limit_dots, pegtl::must<limit_end>>, after_item,
                                pegtl::must<limit_rest>> {};

}

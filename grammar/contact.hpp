// Phone numbers and mail addresses, as far as they can be linked.
#pragma once

#include <tao/pegtl.hpp>

namespace quoin::grammar::contact {

namespace pegtl = tao::pegtl;

// `(360) 555-0142`, `+1 360 555 0142 ext. 12`; the `(0)` that is not dialled from abroad is read
// over after a `+`.
struct no_break_space : pegtl::string<'\xC2', '\xA0'> {};
struct blank : pegtl::sor<pegtl::blank, no_break_space> {};
struct unicode_hyphen
    : pegtl::sor<pegtl::string<'\xE2', '\x80', '\x90'>, pegtl::string<'\xE2', '\x80', '\x91'>,
                 pegtl::string<'\xE2', '\x80', '\x93'>> {};
struct visual_separator : pegtl::sor<pegtl::one<'-', '.', '(', ')', '/'>, blank, unicode_hyphen> {};
struct global_sign : pegtl::one<'+'> {};
struct trunk_zero : pegtl::string<'(', '0', ')'> {};
struct phone_digit : pegtl::digit {};
struct extension_sign
    : pegtl::seq<pegtl::sor<TAO_PEGTL_ISTRING("extension"), TAO_PEGTL_ISTRING("ext"),
                            pegtl::istring<'x'>, pegtl::one<'#'>>,
                 pegtl::opt<pegtl::one<'.'>>> {};
struct extension_digits : pegtl::plus<pegtl::digit> {};
struct extension : pegtl::seq<pegtl::opt<pegtl::one<','>>, pegtl::star<blank>, extension_sign,
                              pegtl::star<blank>, extension_digits> {};
struct global_number
    : pegtl::seq<global_sign, pegtl::plus<pegtl::sor<phone_digit, trunk_zero, visual_separator>>> {
};
struct local_number : pegtl::plus<pegtl::sor<phone_digit, visual_separator>> {};
struct phone_value
    : pegtl::seq<pegtl::sor<global_number, local_number>, pegtl::opt<extension>, pegtl::eof> {};

// RFC 5322, section 3.2.3 and 3.4.1, without comments, quoted strings and domain literals
struct atext
    : pegtl::sor<pegtl::alnum, pegtl::one<'!', '#', '$', '%', '&', '\'', '*', '+', '-', '/', '=',
                                          '?', '^', '_', '`', '{', '|', '}', '~'>> {};
struct dot_atom : pegtl::list<pegtl::plus<atext>, pegtl::one<'.'>> {};
struct address_value : pegtl::seq<dot_atom, pegtl::one<'@'>, dot_atom, pegtl::eof> {};

// The whole of RFC 5322, section 3.4.1, without comments and folds: a quoted string may stand
// before the `@` (section 3.2.4) and a domain literal after it
struct quoted_pair : pegtl::seq<pegtl::one<'\\'>, pegtl::range<' ', '~'>> {};
struct quoted_text : pegtl::sor<quoted_pair, pegtl::one<' ', '!'>, pegtl::range<'#', '['>,
                                pegtl::range<']', '~'>> {};
struct quoted_string : pegtl::seq<pegtl::one<'"'>, pegtl::star<quoted_text>, pegtl::one<'"'>> {};
struct domain_text : pegtl::sor<pegtl::range<'!', 'Z'>, pegtl::range<'^', '~'>> {};
struct domain_literal : pegtl::seq<pegtl::one<'['>, pegtl::plus<domain_text>, pegtl::one<']'>> {};
struct local_part : pegtl::sor<dot_atom, quoted_string> {};
struct addr_spec
    : pegtl::seq<local_part, pegtl::one<'@'>, pegtl::sor<dot_atom, domain_literal>, pegtl::eof> {};

}

// Inline text: the pieces that a value's text is made of, left to right. Which marks and quotes
// belong together is decided from the pieces (compiler/stages/model/text_marks.cpp): a grammar that
// paired them itself would read the rest of the text again for each mark left open.
#pragma once

#include <tao/pegtl.hpp>
#include <tao/pegtl/contrib/uri.hpp>

namespace quoin::grammar::inline_text {

namespace pegtl = tao::pegtl;

// Signs
struct character : pegtl::sor<pegtl::utf8::any, pegtl::any> {};
struct blank : pegtl::one<' ', '\t'> {};
struct blanks : pegtl::plus<blank> {};
struct mark : pegtl::one<'*', '/', '_'> {};
struct marks : pegtl::plus<mark> {};
struct double_quote : pegtl::one<'"'> {};
struct opening_sign : pegtl::one<'(', '['> {};
struct typed_dash : pegtl::utf8::one<0x2013, 0x2014> {};
struct typed_opening_quote : pegtl::utf8::one<0x2018, 0x201C> {};
struct closing_sign : pegtl::sor<pegtl::one<'.', ',', ';', ':', '!', '?', ')', ']', '-'>,
                                 typed_dash, pegtl::utf8::one<0x2019, 0x201D, 0x2026>> {};

// `\*`; a backslash with nothing after it is reported
struct escape : pegtl::seq<pegtl::one<'\\'>, character> {};
struct lone_backslash : pegtl::one<'\\'> {};

// Words. A mark between two characters of a word is plain text: `and/or`, `snake_case`, `2*3`.
struct two_hyphens : pegtl::two<'-'> {};
struct three_dots : pegtl::seq<pegtl::string<'.', '.', '.'>,
                               pegtl::not_at<pegtl::sor<pegtl::alnum, pegtl::one<'.', '/'>>>> {};
struct no_word : pegtl::sor<blank, mark, double_quote, opening_sign, pegtl::one<'\\', '<', '\''>,
                            two_hyphens, three_dots> {};
struct word_character : pegtl::seq<pegtl::not_at<no_word>, character> {};
struct inner_before
    : pegtl::seq<pegtl::not_at<pegtl::sor<typed_dash, typed_opening_quote>>, word_character> {};
struct inner_after : pegtl::seq<pegtl::not_at<closing_sign>, word_character> {};
struct inner_marks : pegtl::seq<inner_before, marks, pegtl::at<inner_after>> {};
struct word : pegtl::plus<pegtl::sor<inner_marks, word_character>> {};

// A hyphen between two figures: `12-15`, `$1.2M-$1.5M`, `9:00-5:30`, `2019 - 2021`; but not the
// hyphens of telephone numbers, ISO 8601 dates and other numbers of more than two groups.
struct digits : pegtl::plus<pegtl::digit> {};
struct sign_before : pegtl::sor<pegtl::one<'$', '~'>, pegtl::utf8::one<0xA3, 0x20AC>> {};
struct sign_after
    : pegtl::sor<pegtl::one<'%'>,
                 pegtl::seq<pegtl::one<'k', 'K', 'M', 'B'>, pegtl::not_at<pegtl::alnum>>> {};
struct figure : pegtl::seq<pegtl::opt<sign_before>, digits,
                           pegtl::star<pegtl::one<','>, pegtl::rep<3, pegtl::digit>>,
                           pegtl::opt<pegtl::one<'.', ':'>, digits>, pegtl::opt<sign_after>> {};
struct range_hyphen : pegtl::one<'-'> {};
struct between_figures : pegtl::sor<range_hyphen, pegtl::seq<blank, range_hyphen, blank>> {};
struct leading_zero : pegtl::seq<pegtl::one<'0'>, pegtl::digit> {};
struct further_group : pegtl::seq<pegtl::one<'-'>, pegtl::digit> {};
struct second_figure : pegtl::seq<figure, pegtl::not_at<pegtl::sor<further_group, pegtl::digit>>> {
};
struct figures // `555-0142` and `2026-06` are no ranges
    : pegtl::sor<pegtl::seq<pegtl::at<leading_zero>, figure, between_figures, second_figure>,
                 pegtl::seq<figure, between_figures, pegtl::not_at<leading_zero>, second_figure>> {
};
struct figure_range // up to the hyphen
    : pegtl::seq<pegtl::at<figures>, figure, pegtl::opt<blank>, range_hyphen> {};

struct group_sign : pegtl::one<'-', '.', ' '> {};
struct country_code
    : pegtl::seq<pegtl::one<'+'>, pegtl::rep_min_max<1, 3, pegtl::digit>, group_sign> {};
struct area_code : pegtl::sor<pegtl::seq<pegtl::one<'('>, pegtl::rep<3, pegtl::digit>,
                                         pegtl::one<')'>, pegtl::opt<group_sign>>,
                              pegtl::seq<pegtl::rep<3, pegtl::digit>, group_sign>> {};
struct telephone
    : pegtl::seq<pegtl::opt<country_code>, area_code, pegtl::rep<3, pegtl::digit>, group_sign,
                 pegtl::rep<4, pegtl::digit>, pegtl::not_at<pegtl::digit>> {};

// Dashes: `word--word` and `word -- word`. A `--` with a space on one side only is left as typed.
struct spaced_dash : pegtl::seq<blanks, two_hyphens, pegtl::at<blank>> {};
struct closed_dash
    : pegtl::seq<two_hyphens, pegtl::not_at<pegtl::sor<pegtl::one<'-'>, blank, pegtl::eof>>> {};
struct hyphens : pegtl::plus<pegtl::one<'-'>> {};

// `-40`, which stands where a word begins; `...`; `I-III`, up to the hyphen
struct minus : pegtl::seq<pegtl::one<'-'>, pegtl::at<pegtl::digit>> {};
struct ellipsis : three_dots {};
struct roman : pegtl::plus<pegtl::one<'I', 'V', 'X'>> {};
struct roman_range
    : pegtl::seq<roman,
                 pegtl::at<pegtl::seq<pegtl::one<'-'>, roman,
                                      pegtl::not_at<pegtl::sor<pegtl::alnum, pegtl::one<'-'>>>>>,
                 pegtl::one<'-'>> {};

// An apostrophe that begins a word: `'90s`, `'n'`, `'til`
struct elided_word : pegtl::sor<pegtl::istring<'e', 'm'>, pegtl::istring<'t', 'i', 'l'>,
                                pegtl::istring<'t', 'i', 's'>, pegtl::istring<'t', 'w', 'a', 's'>,
                                pegtl::istring<'r', 'o', 'u', 'n', 'd'>,
                                pegtl::istring<'c', 'a', 'u', 's', 'e'>, pegtl::istring<'n'>> {};
struct elided
    : pegtl::seq<pegtl::sor<pegtl::seq<pegtl::rep<2, pegtl::digit>, pegtl::opt<pegtl::one<'s'>>>,
                            elided_word>,
                 pegtl::not_at<pegtl::alnum>> {};
struct apostrophe : pegtl::seq<pegtl::one<'\''>, pegtl::at<elided>> {};
struct single_quote : pegtl::one<'\''> {};

// Links, with the delimiters of RFC 3986, appendix C
struct scheme_name
    : pegtl::seq<pegtl::alpha, pegtl::plus<pegtl::sor<pegtl::alnum, pegtl::one<'+', '-', '.'>>>> {};
struct web_scheme : pegtl::seq<pegtl::istring<'h', 't', 't', 'p'>, pegtl::opt<pegtl::one<'s', 'S'>>,
                               pegtl::one<':'>> {};
struct mail_scheme : pegtl::istring<'m', 'a', 'i', 'l', 't', 'o', ':'> {};
struct telephone_scheme : pegtl::istring<'t', 'e', 'l', ':'> {};
struct known_scheme : pegtl::sor<web_scheme, mail_scheme, telephone_scheme> {};
struct address : pegtl::star<pegtl::not_one<'<', '>'>> {};
struct delimited : pegtl::seq<pegtl::one<'<'>, address, pegtl::one<'>'>> {};
struct link : pegtl::seq<pegtl::at<pegtl::one<'<'>, known_scheme>, delimited> {};
struct open_address // `<https://…` and no `>`
    : pegtl::seq<pegtl::at<pegtl::one<'<'>, known_scheme>, pegtl::one<'<'>> {};
struct other_scheme // `<ftp://…>`; but `vector<std::string>` is none
    : pegtl::seq<pegtl::one<'<'>, scheme_name, pegtl::one<':'>, pegtl::not_at<pegtl::one<':'>>,
                 pegtl::plus<pegtl::not_one<'<', '>', ' ', '\t'>>, pegtl::one<'>'>> {};
struct less_than : pegtl::one<'<'> {};

struct space : blanks {};
struct mark_run : marks {};
struct other : character {};
struct piece : pegtl::sor<spaced_dash, space, escape, lone_backslash, link, open_address,
                          other_scheme, less_than, telephone, figure_range, roman_range, minus,
                          ellipsis, word, mark_run, double_quote, apostrophe, single_quote,
                          closed_dash, hyphens, opening_sign, other> {};
struct text : pegtl::seq<pegtl::star<piece>, pegtl::eof> {};

// URIs of the four schemes: RFC 3986 for http and https, RFC 6068 for mailto, RFC 3966 for tel.
struct percent_encoded : pegtl::seq<pegtl::one<'%'>, pegtl::xdigit, pegtl::xdigit> {};
struct name_character
    : pegtl::sor<pegtl::uri::unreserved, percent_encoded, pegtl::uri::sub_delims> {};
struct path_character : pegtl::sor<name_character, pegtl::one<':', '@'>> {};
struct query : pegtl::star<pegtl::sor<path_character, pegtl::one<'/', '?'>>> {};
struct query_and_fragment
    : pegtl::seq<pegtl::opt<pegtl::one<'?'>, query>, pegtl::opt<pegtl::one<'#'>, query>> {};
struct path : pegtl::star<pegtl::one<'/'>, pegtl::star<path_character>> {};
struct user
    : pegtl::seq<pegtl::star<pegtl::sor<name_character, pegtl::one<':'>>>, pegtl::one<'@'>> {};
struct later_version
    : pegtl::seq<pegtl::one<'v', 'V'>, pegtl::plus<pegtl::xdigit>, pegtl::one<'.'>,
                 pegtl::plus<
                     pegtl::sor<pegtl::uri::unreserved, pegtl::uri::sub_delims, pegtl::one<':'>>>> {
};
struct literal_host
    : pegtl::seq<pegtl::one<'['>, pegtl::sor<later_version, pegtl::uri::IPv6address>,
                 pegtl::one<']'>> {};
struct host : pegtl::sor<literal_host, pegtl::plus<name_character>> {};
struct authority
    : pegtl::seq<pegtl::opt<user>, host, pegtl::opt<pegtl::one<':'>, pegtl::star<pegtl::digit>>> {};
struct web_address : pegtl::seq<web_scheme, pegtl::two<'/'>, authority, path, query_and_fragment> {
};
struct mail_domain
    : pegtl::sor<literal_host, pegtl::plus<pegtl::sor<pegtl::alnum, pegtl::one<'-', '.'>>>> {};
struct mailbox : pegtl::seq<pegtl::plus<pegtl::not_at<pegtl::one<','>>, name_character>,
                            pegtl::one<'@'>, mail_domain> {};
struct mail_address : pegtl::seq<mail_scheme, pegtl::list<mailbox, pegtl::one<','>>,
                                 pegtl::opt<pegtl::one<'?'>, query>> {};
struct visual_separator : pegtl::one<'-', '.', '(', ')'> {};
struct telephone_parameter
    : pegtl::seq<pegtl::one<';'>, pegtl::plus<pegtl::sor<pegtl::uri::unreserved, percent_encoded,
                                                         pegtl::one<'=', '+', ':', '&', '$'>>>> {};
struct telephone_address
    : pegtl::seq<telephone_scheme, pegtl::opt<pegtl::one<'+'>>, pegtl::star<visual_separator>,
                 pegtl::digit, pegtl::star<pegtl::sor<pegtl::digit, visual_separator>>,
                 pegtl::star<telephone_parameter>> {};
struct known_address : pegtl::sor<web_address, mail_address, telephone_address> {};

// What can be wrong where a URI cannot go on
struct address_end : pegtl::eof {};
struct address_blank : blank {};
struct address_percent : pegtl::one<'%'> {};
struct address_character : character {};
struct wrong_in_address
    : pegtl::sor<address_end, address_blank, address_percent, address_character> {};

// The whole of a `link:` field: `Portfolio <https://…>`, or an address without its scheme
struct delimited_end : pegtl::seq<pegtl::one<'<'>, address, pegtl::one<'>'>, pegtl::eof> {};
struct link_label : pegtl::until<pegtl::at<delimited_end>> {};
struct labelled_link : pegtl::seq<link_label, delimited_end> {};
struct domain_label
    : pegtl::seq<pegtl::alnum, pegtl::star<pegtl::sor<pegtl::alnum, pegtl::one<'-'>>>> {};
struct top_label
    : pegtl::seq<pegtl::alpha, pegtl::plus<pegtl::sor<pegtl::alnum, pegtl::one<'-'>>>> {};
struct domain // with one dot at least, or `localhost` would be an address and so would any word
    : pegtl::seq<pegtl::plus<domain_label, pegtl::one<'.'>, pegtl::at<pegtl::alnum>>, top_label> {};
struct domain_end : pegtl::sor<pegtl::eof, pegtl::one<'/', '?', '#', ':'>> {};
struct bare_mailbox : pegtl::seq<mailbox, pegtl::eof> {};
struct bare_web : pegtl::seq<domain, domain_end> {};
struct no_address : pegtl::success {};
struct second_address : pegtl::success {};

// Findings about marks
struct open_mark : mark {};
struct doubled_mark : pegtl::seq<mark, mark> {};

}

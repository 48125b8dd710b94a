// The grammar of themes: the values of their settings, and the patterns that arrange the fields of
// an entry on a line. The labelled lines around them are those of grammar/lines.hpp.
#pragma once

#include <tao/pegtl.hpp>

namespace quoin::grammar::theme {

namespace pegtl = tao::pegtl;

struct spaces : pegtl::star<pegtl::blank> {};
struct end_of_value : pegtl::eof {};

// `10.8` or, with bounds, `10.8 (10..12)`

struct figures : pegtl::plus<pegtl::digit> {};
struct number : pegtl::seq<figures, pegtl::opt<pegtl::one<'.'>, figures>> {};
struct preferred : number {};
struct least : number {};
struct most : number {};
struct dots : pegtl::two<'.'> {};
struct closing_bracket : pegtl::one<')'> {};
struct bounds : pegtl::seq<pegtl::one<'('>, spaces, pegtl::must<least>, spaces, pegtl::must<dots>,
                           spaces, pegtl::must<most>, spaces, pegtl::must<closing_bracket>> {};
struct preference : pegtl::seq<pegtl::must<preferred>, spaces, pegtl::opt<bounds>, spaces,
                               pegtl::must<end_of_value>> {};
struct plain_number : pegtl::seq<pegtl::must<preferred>, spaces, pegtl::must<end_of_value>> {};

// `#1a2b3c`: sRGB, two hexadecimal digits each for red, green and blue

struct hash : pegtl::one<'#'> {};
struct channels : pegtl::rep<6, pegtl::xdigit> {};
struct colour : pegtl::must<hash, channels, end_of_value> {};

// `M 10 20 L 90 20 C 95 20 95 25 90 30 Z`: an icon's outline, the steps and letters of SVG 1.1 path
// data (section 8.3) in absolute places

struct coordinate : number {};
struct parted : pegtl::star<pegtl::sor<pegtl::blank, pegtl::one<','>>> {};
struct point : pegtl::seq<pegtl::must<coordinate>, parted, pegtl::must<coordinate>, parted> {};
struct move_to : pegtl::seq<pegtl::one<'M'>, parted, point> {};
struct line_to : pegtl::seq<pegtl::one<'L'>, parted, point> {};
struct curve_to : pegtl::seq<pegtl::one<'C'>, parted, point, point, point> {};
struct close_path : pegtl::seq<pegtl::one<'Z'>, parted> {};
struct outline
    : pegtl::seq<move_to, pegtl::plus<pegtl::sor<line_to, curve_to>>, pegtl::must<close_path>> {};
struct outlines : pegtl::plus<outline> {};
struct end_of_path : pegtl::eof {};
struct path : pegtl::seq<pegtl::must<outlines>, pegtl::must<end_of_path>> {};

// `*{role}*[, /{employer}/][, {dates}]`
//
// The rules carry how many groups may still open and whether strong and emphasis may, so that what
// nests is bounded and no rule calls itself.

struct field_name : pegtl::plus<pegtl::sor<pegtl::lower, pegtl::one<'-'>>> {};
struct field_end : pegtl::one<'}'> {};
struct field : pegtl::if_must<pegtl::one<'{'>, field_name, field_end> {};

struct escaped : pegtl::utf8::any {};
struct escape : pegtl::if_must<pegtl::one<'\\'>, escaped> {};
struct words : pegtl::plus<pegtl::utf8::not_one<'{', '}', '[', ']', '*', '/', '\\'>> {};

struct strong_begin : pegtl::one<'*'> {};
struct strong_end : pegtl::one<'*'> {};
struct emphasis_begin : pegtl::one<'/'> {};
struct emphasis_end : pegtl::one<'/'> {};
struct group_begin : pegtl::one<'['> {};
struct group_end : pegtl::one<']'> {};

template<int Groups, bool Strong, bool Emphasis>
struct items;

template<int Groups, bool Strong, bool Emphasis>
struct strong : pegtl::seq<strong_begin, items<Groups, false, Emphasis>, pegtl::must<strong_end>> {
};
template<int Groups, bool Emphasis>
struct strong<Groups, false, Emphasis> : pegtl::failure {};

template<int Groups, bool Strong, bool Emphasis>
struct emphasis
    : pegtl::seq<emphasis_begin, items<Groups, Strong, false>, pegtl::must<emphasis_end>> {};
template<int Groups, bool Strong>
struct emphasis<Groups, Strong, false> : pegtl::failure {};

template<int Groups, bool Strong, bool Emphasis>
struct group
    : pegtl::seq<group_begin, items<Groups - 1, Strong, Emphasis>, pegtl::must<group_end>> {};
template<bool Strong, bool Emphasis>
struct group<0, Strong, Emphasis> : pegtl::failure {};

template<int Groups, bool Strong, bool Emphasis>
struct items
    : pegtl::star<
          pegtl::sor<words, field, escape, group<Groups, Strong, Emphasis>,
                     strong<Groups, Strong, Emphasis>, emphasis<Groups, Strong, Emphasis>>> {};

struct end_of_pattern : pegtl::eof {};
struct pattern : pegtl::seq<items<2, true, true>, pegtl::must<end_of_pattern>> {};

}

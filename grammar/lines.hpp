// The lines of a résumé or a theme file, after language.md, "Lines". Text comes in as UTF-8 with LF
// line ends. A line that is none of the right forms is matched by a rule that is named after what
// is wrong with it (messages.hpp has a message for each), so that reading goes on below it.
#pragma once

#include <tao/pegtl.hpp>

namespace quoin::grammar::lines {

namespace pegtl = tao::pegtl;

// Actions run only for what is committed: R is looked at before it is matched.
template<typename... R>
struct committed : pegtl::seq<pegtl::at<R...>, R...> {};

struct space : pegtl::one<' ', '\t'> {};
struct visible : pegtl::not_one<' ', '\t', '\n'> {};
struct line_end : pegtl::sor<pegtl::one<'\n'>, pegtl::eof> {};
struct words : pegtl::list<pegtl::plus<visible>, pegtl::plus<space>> {};

struct blank : pegtl::sor<pegtl::seq<pegtl::star<space>, pegtl::one<'\n'>>,
                          pegtl::seq<pegtl::plus<space>, pegtl::eof>> {};

// `# …` in the first column
struct comment_text : pegtl::seq<pegtl::star<space>, pegtl::opt<words>> {};
struct comment : pegtl::seq<pegtl::one<'#'>, comment_text, pegtl::star<space>, line_end> {};

// A line that starts with a space goes on with the one above; comments between do not part them.
struct folding : pegtl::seq<pegtl::star<space>, pegtl::one<'\n'>, pegtl::star<comment>,
                            pegtl::plus<space>, pegtl::at<visible>> {};
struct fold : committed<folding> {};
struct gap : pegtl::sor<fold, pegtl::plus<space>> {};
struct value_end : pegtl::seq<pegtl::not_at<folding>, pegtl::star<space>, line_end> {};
struct node_end : value_end {};

// An indented bullet is only a fold; its sign betrays what was meant.
struct bullet_sign
    : pegtl::utf8::one<U'•', U'◦', U'▪', U'▫', U'‣', U'·', U'●', U'○', U'■', U'□', U'►', U'➢', U'➤',
                       U'➔', U'→', U'»', U'✓', U'✔', U'❖', U'◆', U'\uF0B7'> {};
struct indented_bullet
    : pegtl::at<pegtl::sor<pegtl::one<'-', '*'>, pegtl::utf8::one<U'–', U'—'>, bullet_sign>,
                space> {};

// `{lab !field}` at the end of a value
struct escape : pegtl::seq<pegtl::one<'\\'>, pegtl::one<'{', '}', '\\'>> {};
struct tag_character : pegtl::ranges<'a', 'z', 'A', 'Z', '0', '9', '-', '-', '_', '_'> {};
struct tag : pegtl::seq<pegtl::opt<pegtl::one<'!'>>, pegtl::plus<tag_character>> {};
struct tag_group : pegtl::seq<pegtl::one<'{'>, pegtl::star<gap>, pegtl::list<tag, pegtl::plus<gap>>,
                              pegtl::star<gap>, pegtl::one<'}'>> {};
struct tags : committed<tag_group, pegtl::at<value_end>> {};

// Braces at the end of a value that are no tags. Text in braces elsewhere is text.
struct brace_content
    : pegtl::star<pegtl::sor<gap, escape, pegtl::not_one<'{', '}', ' ', '\t', '\n'>>> {};
struct brace_group : pegtl::seq<pegtl::one<'{'>, brace_content, pegtl::one<'}'>> {};
struct tags_missing
    : pegtl::disable<pegtl::one<'{'>, pegtl::star<gap>, pegtl::one<'}'>, pegtl::at<value_end>> {};
struct tags_unclosed : pegtl::disable<pegtl::one<'{'>, brace_content, pegtl::at<value_end>> {};
struct tags_ill_formed : pegtl::disable<brace_group, pegtl::at<value_end>> {};
struct tags_apart : pegtl::disable<tag_group, pegtl::star<gap>, tag_group, pegtl::at<value_end>> {};
struct tags_before_stop
    : pegtl::disable<tag_group, pegtl::plus<pegtl::one<'.', ',', ';', ':', '!', '?'>>,
                     pegtl::at<value_end>> {};
struct tail
    : pegtl::sor<tags, tags_missing, tags_unclosed, tags_ill_formed, tags_apart, tags_before_stop> {
};

// Values: slices of text, one a line. `tagged` ends in tags; in `plain`, braces are text. What most
// signs are stands first, for it needs no look ahead.
struct ordinary : pegtl::not_one<' ', '\t', '\n', '{', '\\'> {};
struct tagged_piece : pegtl::sor<ordinary, escape, pegtl::seq<pegtl::not_at<tail>, visible>> {};
template<typename Piece>
struct slice : pegtl::list<pegtl::plus<Piece>, pegtl::plus<space>> {};
template<typename Piece>
struct text : pegtl::star<pegtl::sor<slice<Piece>, pegtl::seq<fold, pegtl::opt<indented_bullet>>,
                                     pegtl::plus<space>>> {};
struct tagged : pegtl::seq<text<tagged_piece>, pegtl::opt<tail>> {};
struct plain : text<visible> {};

// A label: words of letters and digits and of the signs that names of skills have (`C/C++`). What
// is longer than a label, or goes on as an address does, is none.
struct label_space : pegtl::sor<space, pegtl::utf8::one<U'\u00A0', U'\u202F'>> {};
struct other_sign
    : pegtl::sor<pegtl::utf8::range<U'\u0080', U'\u00A9'>, pegtl::utf8::range<U'\u00AB', U'\u00B4'>,
                 pegtl::utf8::range<U'\u00B6', U'\u00B6'>, pegtl::utf8::range<U'\u00B8', U'\u00B9'>,
                 pegtl::utf8::range<U'\u00BB', U'\u00BF'>, pegtl::utf8::one<U'\u00D7', U'\u00F7'>,
                 pegtl::utf8::range<U'\u2000', U'\u2018'>, pegtl::utf8::range<U'\u201A', U'\u206F'>,
                 pegtl::utf8::range<U'\u2190', U'\u2BFF'>, pegtl::utf8::range<U'\u3000', U'\u3003'>,
                 pegtl::utf8::range<U'\uE000', U'\uF8FF'>, pegtl::utf8::range<U'\uFF00', U'\uFF0F'>,
                 pegtl::utf8::range<U'\uFF1A', U'\uFF20'>,
                 pegtl::utf8::one<U'\uA789', U'\uFE55', U'\uFEFF'>> {};
struct beyond_ascii : pegtl::utf8::range<U'\u0080', U'\U0010FFFF'> {};
struct other_letter : pegtl::seq<pegtl::at<beyond_ascii>, pegtl::not_at<other_sign>, beyond_ascii> {
};
struct label_start : pegtl::sor<pegtl::alnum, pegtl::one<'.'>, other_letter> {};
struct label_character
    : pegtl::sor<pegtl::alnum, pegtl::one<'-', '_', '&', '/', '+', '.', '\'', '(', ')', '#', ','>,
                 other_letter> {};
struct label_length : pegtl::rep_min_max<1, 60, pegtl::sor<label_character, label_space>> {};
struct time_of_day
    : pegtl::seq<pegtl::plus<pegtl::digit>, pegtl::star<label_space>, pegtl::one<':'>> {};
struct label
    : pegtl::seq<pegtl::at<label_start>, pegtl::at<label_length>, pegtl::not_at<time_of_day>,
                 pegtl::list<pegtl::plus<label_character>, pegtl::plus<label_space>>> {};
struct colon : pegtl::seq<pegtl::star<label_space>, pegtl::one<':'>,
                          pegtl::not_at<pegtl::string<'/', '/'>>> {};

// `section: TITLE`, `label: value`, `- text` and `-- text`
struct section_label : pegtl::seq<TAO_PEGTL_ISTRING("section"), pegtl::at<colon>> {};
struct field_label : pegtl::seq<label, pegtl::at<colon>> {};
struct dashes : pegtl::seq<pegtl::rep_min_max<1, 2, pegtl::one<'-'>>,
                           pegtl::at<pegtl::sor<space, line_end>>> {};
struct bullet_dashes : dashes {};
template<typename Value>
struct section : pegtl::seq<section_label, colon, Value, node_end> {};
template<typename Value>
struct field : pegtl::seq<field_label, colon, Value, node_end> {};
template<typename Value>
struct bullet : pegtl::seq<bullet_dashes, Value, node_end> {};

// Lines with nothing in them
struct section_without_title
    : pegtl::seq<TAO_PEGTL_ISTRING("section"), colon, pegtl::at<value_end>> {};
struct field_without_value : pegtl::seq<label, colon, pegtl::at<value_end>> {};
struct bullet_without_text : pegtl::seq<dashes, pegtl::at<value_end>> {};
struct nothing_tagged
    : pegtl::seq<pegtl::sor<pegtl::seq<label, colon>, dashes>, pegtl::at<pegtl::star<gap>, tail>> {
};

// Bullets mistyped
template<char Sign>
struct ruler : pegtl::seq<pegtl::rep<3, pegtl::one<Sign>>, pegtl::star<pegtl::one<Sign>>> {};
struct stars // `* * *`
    : pegtl::seq<pegtl::one<'*'>, pegtl::rep<2, pegtl::plus<space>, pegtl::one<'*'>>> {};
struct line_of_dashes
    : pegtl::seq<pegtl::sor<ruler<'-'>, ruler<'='>, ruler<'_'>, ruler<'*'>, ruler<'~'>, ruler<'`'>,
                            stars, pegtl::plus<pegtl::utf8::one<U'—', U'–'>>>,
                 pegtl::at<value_end>> {};
struct bullet_too_deep : pegtl::seq<pegtl::string<'-', '-', '-'>, pegtl::star<pegtl::one<'-'>>> {};
struct bullet_without_space
    : pegtl::seq<pegtl::rep_min_max<1, 2, pegtl::one<'-'>>, pegtl::at<visible>> {};
struct numeral // `1.`, `2)`
    : pegtl::seq<pegtl::rep_min_max<1, 2, pegtl::digit>, pegtl::one<'.', ')'>> {};
struct list_letter // `a. Checked in`; but `A. Okoro`
    : pegtl::seq<pegtl::range<'a', 'h'>, pegtl::one<'.', ')'>,
                 pegtl::at<label_space, pegtl::upper>> {};
struct round_letter : pegtl::seq<pegtl::one<'o'>, pegtl::at<label_space, pegtl::upper>> {};
struct behind_sign : pegtl::sor<label_space, pegtl::one<'{'>> {}; // `* text`, `*{lab}`
struct check_box : pegtl::seq<pegtl::one<'['>, pegtl::one<' ', 'x', 'X'>, pegtl::one<']'>,
                              pegtl::at<behind_sign>> {};
struct foreign_bullet
    : pegtl::sor<
          bullet_sign, pegtl::utf8::one<U'–', U'—'>, round_letter, list_letter, check_box,
          pegtl::seq<pegtl::sor<pegtl::one<'*', '+', '>', '~'>, numeral>, pegtl::at<behind_sign>>> {
};

// Fields mistyped
struct equals_for_colon : pegtl::seq<label, pegtl::star<label_space>, pegtl::one<'='>> {};
struct foreign_colon : pegtl::seq<label, pegtl::star<label_space>,
                                  pegtl::utf8::one<U'\uFF1A', U'\u2236', U'\uA789'>> {};
// `**Role:** Tutor`, `"role": "Tutor"`, `:role: Tutor`, as other formats have labels.
struct label_mark : pegtl::utf8::one<U'*', U'_', U'"', U'\'', U'`', U'“', U'”'> {};
struct marked_label
    : pegtl::seq<pegtl::sor<pegtl::plus<label_mark>, pegtl::one<':'>>, label,
                 pegtl::star<label_mark>, colon, pegtl::star<pegtl::one<'*', '_'>>> {};
struct foreign_comment // `// …`, `/* … */`, `<!-- … -->`, `; …`
    : pegtl::sor<pegtl::string<'/', '/'>, pegtl::string<'/', '*'>,
                 pegtl::string<'<', '!', '-', '-'>,
                 pegtl::seq<pegtl::one<';', '%'>, pegtl::at<pegtl::sor<behind_sign, line_end>>>> {};
struct fold_of_nothing : words {};
struct indented_line : pegtl::seq<pegtl::plus<space>, fold_of_nothing> {};
struct unknown_line : words {};
// What a version control system leaves where two drafts of one line met.
struct conflict_line
    : pegtl::seq<pegtl::sor<pegtl::seq<pegtl::rep<7, pegtl::one<'<'>>, pegtl::one<' '>>,
                            pegtl::seq<pegtl::rep<7, pegtl::one<'>'>>, pegtl::one<' '>>,
                            pegtl::seq<pegtl::rep<7, pegtl::one<'|'>>, pegtl::one<' '>>,
                            pegtl::seq<pegtl::rep<7, pegtl::one<'='>>, pegtl::at<value_end>>>,
                 pegtl::opt<words>> {};

// The rest of a wrong line, with what is folded under it, is skipped: it was reported already.
struct skipped : pegtl::disable<pegtl::star<pegtl::sor<gap, pegtl::plus<visible>>>, value_end> {};
template<typename... Wrong>
struct wrong : pegtl::seq<pegtl::sor<Wrong...>, skipped> {};
struct empty_or_ruler : wrong<section_without_title, field_without_value, bullet_without_text,
                              line_of_dashes, bullet_too_deep> {};
struct untagged_wrong
    : pegtl::sor<empty_or_ruler,
                 wrong<foreign_bullet, equals_for_colon, foreign_colon, indented_line>> {};
struct unlabelled_wrong : wrong<bullet_without_space, unknown_line> {};

// What is plainly a bullet or a field all the same is read as one, once it is reported.
template<typename Start>
struct mistyped : pegtl::seq<pegtl::at<Start, pegtl::not_at<value_end>>, Start, tagged, node_end> {
};
struct mistyped_bullet : mistyped<foreign_bullet> {};
struct close_bullet : mistyped<bullet_without_space> {};
struct mistyped_field
    : pegtl::sor<mistyped<equals_for_colon>, mistyped<foreign_colon>, mistyped<marked_label>> {};
struct tagged_wrong
    : pegtl::sor<empty_or_ruler, wrong<nothing_tagged, foreign_comment>, mistyped_bullet,
                 mistyped_field,
                 wrong<foreign_bullet, equals_for_colon, foreign_colon, indented_line>> {};

// A line of a résumé with neither label nor dash. What it is tells what stands around it.
struct bare_start : pegtl::at<visible> {};
struct bare_line
    : pegtl::sor<close_bullet,
                 pegtl::seq<pegtl::not_at<tail>, bare_start, slice<tagged_piece>, tagged, node_end>,
                 wrong<unknown_line>> {};

template<typename Value, typename Wrong, typename Other>
struct line : pegtl::sor<blank, comment, wrong<conflict_line>, Wrong, section<Value>, bullet<Value>,
                         field<Value>, Other> {};
template<typename Value, typename Wrong, typename Other>
struct lines : pegtl::seq<pegtl::opt<pegtl::utf8::bom>,
                          pegtl::until<pegtl::eof, line<Value, Wrong, Other>>> {};

struct tagged_file : lines<tagged, tagged_wrong, bare_line> {};        // a résumé
struct plain_file : lines<plain, untagged_wrong, unlabelled_wrong> {}; // a theme

}

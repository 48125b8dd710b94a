// How a line that is mistyped is mended, where that can be said from the line alone: a table keyed,
// as the messages are, by the rule that matches what is wrong (grammar/lines.hpp).
#pragma once

#include "compiler/base/edit.hpp"
#include "compiler/base/source.hpp"
#include "grammar/lines.hpp"

#include <string_view>

namespace quoin::syntax {

// Of what the rule matched, at its place.
using MakeMend = Edits (*)(std::string_view line, const Place& found);

Edits mend_foreign_bullet(std::string_view line, const Place& found);
Edits mend_indented_bullet(std::string_view line, const Place& found);
Edits mend_bullet_without_space(std::string_view line, const Place& found);
Edits mend_colon(std::string_view line, const Place& found);
Edits mend_marked_label(std::string_view line, const Place& found);
Edits mend_indentation(std::string_view line, const Place& found);
Edits mend_line_of_dashes(std::string_view line, const Place& found);
Edits mend_foreign_comment(std::string_view line, const Place& found);
Edits take_out_line(std::string_view line, const Place& found);

// The bytes of what other formats have around a label; one that is known is ASCII.
inline constexpr std::string_view around_label = "*_\"'`\u201C\u201D :";

template<typename Rule>
inline constexpr MakeMend make_mend = nullptr;

template<>
inline constexpr MakeMend make_mend<grammar::lines::foreign_bullet> = mend_foreign_bullet;
template<>
inline constexpr MakeMend make_mend<grammar::lines::indented_bullet> = mend_indented_bullet;
template<>
inline constexpr MakeMend make_mend<grammar::lines::bullet_without_space> =
    mend_bullet_without_space;
template<>
inline constexpr MakeMend make_mend<grammar::lines::equals_for_colon> = mend_colon;
template<>
inline constexpr MakeMend make_mend<grammar::lines::foreign_colon> = mend_colon;
template<>
inline constexpr MakeMend make_mend<grammar::lines::marked_label> = mend_marked_label;
template<>
inline constexpr MakeMend make_mend<grammar::lines::bullet_without_text> = take_out_line;
template<>
inline constexpr MakeMend make_mend<grammar::lines::foreign_comment> = mend_foreign_comment;
template<>
inline constexpr MakeMend make_mend<grammar::lines::fold_of_nothing> = mend_indentation;
template<>
inline constexpr MakeMend make_mend<grammar::lines::line_of_dashes> = mend_line_of_dashes;

}

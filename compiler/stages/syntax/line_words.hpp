// What the words of a line say, whatever stands around them: its label as tables have it, and the
// title that it may be.
#pragma once

#include <string>
#include <string_view>

namespace quoin::syntax {

// ASCII letters in lower case, runs of spaces and of `_` made one `-`.
std::string folded_label(std::string_view spelled);

// Folded: whether it is one, or is typed for one.
bool is_label_or_guess(std::string_view label);

// `section Education`, without its colon
bool says_section(std::string_view line);

// Shop Assistant, of `### Shop Assistant`, which other markup takes for a heading; empty of all
// else
std::string_view foreign_title(std::string_view line);

// Without the quotes or the brackets around the whole of it
std::string_view unenclosed(std::string_view value);

// The picture at the front that stands for a dash, as in `✅ Logged 40 samples`; empty if none does.
std::string_view picture_of_bullet(std::string_view line);

// A label with a sign before or behind it that no label has; empty if the line has none.
std::string_view label_amid_signs(std::string_view line);

// A line that can be nothing but the value of the label above it.
bool is_value_alone(std::string_view line);

// Of `# Education`, `**Education**`, `EDUCATION:`, `section Education` the title alone.
std::string_view bare_title(std::string_view line);

}

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

// Of `# Education`, `**Education**`, `EDUCATION:`, `section Education` the title alone.
std::string_view bare_title(std::string_view line);

}

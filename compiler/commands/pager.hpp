// Long text for a reader at a terminal: a page at a time.
#pragma once

#include <string_view>

namespace quoin::commands {

// To standard output: on a terminal by way of the program that the environment's PAGER names,
// `less` where it names none, as git has it; `cat` or an empty PAGER is as good as none. False if
// it could not be written, which is said for the verb.
bool show_text(std::string_view verb, std::string_view text);

}

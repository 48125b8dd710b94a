// Diagnostics as a verb prints them.
#pragma once

#include "compiler/base/diagnostics.hpp"
#include "compiler/base/source.hpp"
#include "compiler/commands/command_line.hpp"

#include <string>
#include <string_view>

namespace quoin::commands {

// One a line, in the order they are in; of very many the first, and how many more there are.
std::string all_messages(const Diagnostics& diagnostics, const Sources& sources, bool excerpts);

// To standard error, as a terminal may have them; with excerpts of the sources where it is one.
void print_messages(std::string_view messages);
void print_all(const Diagnostics& diagnostics, const Sources& sources);
bool shows_excerpts();
void tell_of(std::string_view verb, std::string_view text); // one, of what the verb met

// To standard output, at once; what steers a terminal, not to one. False if it could not be
// written, which is said for the verb.
bool print_output(std::string_view verb, std::string_view text);
bool print_report(std::string_view verb, std::string_view text); // as a terminal may have it

// Said to standard error, for the verb.
ExitCode wrong_use(std::string_view verb, std::string_view text);

}

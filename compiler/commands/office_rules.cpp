#include "compiler/commands/office_rules.hpp"

#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <unistd.h>

namespace quoin::commands {

const office::Office* office_of(advice::Offices* offices, const std::string& input) {
    if (!offices) return nullptr;
    return offices->of(input == "-" ? std::filesystem::path{} : std::filesystem::path(input));
}

bool read_offices(advice::Offices& offices, const std::vector<std::string>& inputs,
                  std::string_view verb) {
    for (const std::string& input : inputs)
        office_of(&offices, input);
    const Diagnostics& told = offices.diagnostics();
    print_messages(all_messages(told, offices.sources(), isatty(STDERR_FILENO) == 1));
    if (!told.has_errors()) return true;
    fmt::print(stderr, "quoin {}: {}\n", verb, fill<messages::office_at_fault>());
    return false;
}

}

#include "compiler/commands/office_rules.hpp"

#include "compiler/commands/messages.hpp"
#include "compiler/commands/printing.hpp"

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
    print_all(told, offices.sources());
    if (told.has_errors()) tell_of(verb, fill<messages::office_at_fault>());
    return !told.has_errors();
}

}

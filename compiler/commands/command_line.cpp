#include "compiler/commands/command_line.hpp"

#include "compiler/base/module.hpp"
#include "compiler/commands/colour.hpp"
#include "compiler/commands/printing.hpp"
#include "compiler/commands/read_command_line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <exception>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

namespace quoin::commands {

namespace {

ExitCode print_asked(std::string_view option, const std::string& text) {
    return print_output(option, text) ? ExitCode::done : ExitCode::errors;
}

ExitCode read_and_run(int argc, char** argv) {
    CommandLine line(argc > 1 ? argv[1] : "");
    const Asked asked = line.read({argv + std::min(argc, 1), argv + argc});
    switch (asked.what) {
    case Asked::What::help:
        return print_asked("--help", asked.text);
    case Asked::What::version:
        return print_asked("--version", asked.text);
    case Asked::What::nothing_right:
        print_messages(asked.text);
        return ExitCode::wrong_use;
    case Asked::What::verb:
        break;
    }
    choose_colours(line.given().text("color"));
    return asked.text.empty() ? asked.verb->run(line.given())
                              : wrong_use(asked.verb->name, asked.text);
}

}

std::string help_on(std::string_view verb) {
    return CommandLine().help_on(verb);
}

int run_command_line(int argc, char** argv) {
    try {
        return static_cast<int>(read_and_run(argc, argv));
    } catch (const ModuleFault& fault) {
        print_messages(fmt::format("quoin: {}\n", fault.what()));
    } catch (const std::system_error& fault) { // the system refused what a run needs
        print_messages(fmt::format("quoin: {}\n", fault.what()));
    } catch (const std::exception& fault) {
        print_messages(fmt::format("quoin: internal error: {}\nThis is a fault in quoin; please "
                                   "report it.\n",
                                   fault.what()));
    }
    return static_cast<int>(ExitCode::errors);
}

}

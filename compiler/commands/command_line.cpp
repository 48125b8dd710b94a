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

int read_and_run(int argc, char** argv) {
    CommandLine line(argc > 1 ? argv[1] : "");
    Asked asked = line.read({argv + std::min(argc, 1), argv + argc});
    switch (asked.what) {
    case Asked::What::help:
    case Asked::What::version: {
        const bool help = asked.what == Asked::What::help;
        const bool said = print_output(help ? "--help" : "--version", std::move(asked.text));
        return static_cast<int>(said ? ExitCode::done : ExitCode::errors);
    }
    case Asked::What::nothing_right:
        print_messages(asked.text);
        return static_cast<int>(ExitCode::wrong_use);
    case Asked::What::verb:
        break;
    }
    choose_colours(line.given().text("color"));
    return static_cast<int>(asked.text.empty() ? asked.verb->run(line.given())
                                               : wrong_use(asked.verb->name, asked.text));
}

}

std::string help_on(std::string_view verb) {
    return CommandLine().help_on(verb);
}

int run_command_line(int argc, char** argv) {
    try {
        return read_and_run(argc, argv);
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

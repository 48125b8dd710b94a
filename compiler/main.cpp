// The program: arguments in, exit code out.
#include "compiler/base/part_file.hpp"
#include "compiler/commands/command_line.hpp"

#include <csignal>

int main(int argc, char** argv) {
    quoin::take_parts_away_when_stopped();
    std::signal(SIGXFSZ, SIG_IGN); // a write then says that the file would be too large
    return quoin::commands::run_command_line(argc, argv);
}

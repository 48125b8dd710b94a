// The program: arguments in, exit code out.
#include "compiler/base/part_file.hpp"
#include "compiler/commands/command_line.hpp"

int main(int argc, char** argv) {
    quoin::take_parts_away_when_stopped();
    return quoin::commands::run_command_line(argc, argv);
}

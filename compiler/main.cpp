// The program: arguments in, exit code out.
#include "compiler/commands/command_line.hpp"

int main(int argc, char** argv) {
    return quoin::commands::run_command_line(argc, argv);
}

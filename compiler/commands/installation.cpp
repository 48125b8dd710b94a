#include "compiler/commands/installation.hpp"

#include "compiler/commands/command_line.hpp"
#include "compiler/commands/printing.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>

namespace quoin::commands {

std::filesystem::path data_folder() {
    if (const char* named = std::getenv("QUOIN_DATA"); named != nullptr && *named != '\0')
        return named;
    const auto program = std::filesystem::read_symlink("/proc/self/exe");
    return program.parent_path().parent_path() / "share" / "quoin";
}

std::string this_build() {
    struct Program {
        std::uintmax_t size = 0;
        std::int64_t written = 0;
    } program;
    std::error_code fault;
    const auto path = std::filesystem::read_symlink("/proc/self/exe", fault);
    program.size = std::filesystem::file_size(path, fault);
    program.written = std::filesystem::last_write_time(path, fault).time_since_epoch().count();
    return fmt::format("{} {} {} {}", version(), program.size, program.written,
                       data_folder().string());
}

std::filesystem::path font_configuration(const std::filesystem::path& data) {
    return data / "fonts" / "readers.conf";
}

std::unique_ptr<fonts::Fonts> open_fonts(const std::filesystem::path& data) {
    Sources sources;
    Diagnostics diagnostics;
    auto fonts = fonts::Fonts::open(sources, data / "fonts", diagnostics);
    diagnostics.sort();
    if (!fonts) print_messages(all_messages(diagnostics, sources, false));
    return fonts;
}

}

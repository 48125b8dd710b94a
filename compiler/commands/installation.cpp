#include "compiler/commands/installation.hpp"

#include "compiler/commands/printing.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>
#include <system_error>

namespace quoin::commands {

std::filesystem::path data_folder() {
    if (const char* named = std::getenv("QUOIN_DATA"); named != nullptr && *named != '\0')
        return named;
    std::error_code fault;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", fault);
    return program.parent_path().parent_path() / "share" / "quoin";
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

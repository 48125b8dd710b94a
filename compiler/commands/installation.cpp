#include "compiler/commands/installation.hpp"

#include <cstdlib>
#include <system_error>

namespace quoin {

std::filesystem::path data_folder() {
    if (const char* named = std::getenv("QUOIN_DATA"); named != nullptr && *named != '\0')
        return named;
    std::error_code fault;
    const auto program = std::filesystem::read_symlink("/proc/self/exe", fault);
    return program.parent_path().parent_path() / "share" / "quoin";
}

}

#include "compiler/base/programs.hpp"

#include <unistd.h>

#include <algorithm>
#include <cstdlib>

namespace quoin {

namespace {

// The first folder of such a path, which is taken off.
std::string_view take_folder(std::string_view& path) {
    const std::size_t end = std::min(path.find(':'), path.size());
    const std::string_view folder = path.substr(0, end);
    path.remove_prefix(std::min(end + 1, path.size()));
    return folder;
}

}

std::string program_path() {
    const char* given = std::getenv("PATH");
    std::string_view path = given ? given : "/usr/bin:/bin";
    std::string absolute;
    while (!path.empty()) {
        const std::string_view folder = take_folder(path);
        if (folder.starts_with('/')) (absolute += absolute.empty() ? "" : ":") += folder;
    }
    return absolute;
}

std::string find_program(std::string_view name) {
    const std::string folders = program_path();
    std::string_view path = folders;
    while (!path.empty()) {
        std::string program(take_folder(path));
        (program += '/') += name;
        if (::access(program.c_str(), X_OK) == 0) return program;
    }
    return {};
}

}

#include "compiler/office/find.hpp"

#include <sys/stat.h>

#include <system_error>

namespace quoin::office {

namespace {

namespace fs = std::filesystem;

std::optional<dev_t> device_of(const fs::path& folder) {
    struct stat about {};
    if (stat(folder.c_str(), &about) != 0) return std::nullopt;
    return about.st_dev;
}

bool stands(const fs::path& path) {
    std::error_code fault;
    return fs::exists(path, fault);
}

}

std::optional<fs::path> find_rules(const fs::path& resume) {
    std::error_code fault;
    const fs::path start = resume.empty() ? fs::path(".") : resume.parent_path();
    fs::path shown = start.empty() ? fs::path(".") : start; // as messages name it
    fs::path folder = fs::absolute(shown, fault).lexically_normal();
    if (fault) return std::nullopt;
    if (!folder.has_filename()) folder = folder.parent_path();
    const auto device = device_of(folder);
    while (device_of(folder) == device) {
        if (stands(folder / file_name))
            return shown == "." ? fs::path(file_name) : (shown / file_name).lexically_normal();
        if (stands(folder / ".git") || folder == folder.parent_path()) return std::nullopt;
        folder = folder.parent_path();
        shown = (shown / "..").lexically_normal();
    }
    return std::nullopt;
}

}

// The folder that a file lies in.
#pragma once

#include <filesystem>

namespace quoin {

inline std::filesystem::path folder_of(const std::filesystem::path& file) {
    return file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
}

}

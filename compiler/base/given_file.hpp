// A file that somebody named, which may be anything: its bytes, or what is to be said of it.
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace quoin {

struct GivenFile {
    const std::filesystem::path& path;
    std::size_t most;              // bytes
    std::string_view not_a_folder; // what is to be named in its place: "a PDF file"
    std::string_view not_a_device;
};

// None if all is well; no file without a byte is.
std::optional<std::string> fault_reading(const GivenFile& file, std::string& bytes);

}

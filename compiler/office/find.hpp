// Where the rules of the office are that a résumé belongs to.
#pragma once

#include <filesystem>
#include <optional>

namespace quoin::office {

constexpr const char* file_name = "office.rules";

// The file of that name in the folder of `resume` or in the nearest above it: no further than to a
// folder that holds `.git`, nor to another file system. An empty path stands for standard input,
// and the search begins in the working folder.
std::optional<std::filesystem::path> find_rules(const std::filesystem::path& resume);

}

// Whether a file may be seen by everyone: read from the text of git's own files, nothing is run.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace quoin::advice {

// The host that the repository of `file` is sent to, if git tracks the file and the host is one
// where anybody can look at public repositories. Silent wherever that cannot be told.
std::optional<std::string> public_host(const std::filesystem::path& file);

}

// Whether a file may be seen by everyone: read from the text of git's own files, nothing is run.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace quoin::advice {

// The host that the repository of `file` is sent to, if git tracks the file and the host is one
// where anybody can look at public repositories. Silent wherever that cannot be told.
std::optional<std::string> public_host(const std::filesystem::path& file);

struct SentTo {
    std::filesystem::path repository;   // its folder
    std::vector<std::string> addresses; // of other machines, as git has them but for passwords
};

// Where the repository that holds `file` is sent to. None if there is no repository; no addresses
// if it stays on this machine.
std::optional<SentTo> sent_to(const std::filesystem::path& file);

}
